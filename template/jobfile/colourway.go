package jobfile

import (
	"slices"

	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// checkColourways reads every [[item.colourway]], once the passes and their colours are known.
func checkColourways(s section, it *job.Item) {
	lines := map[string]int{}
	for _, t := range s.run("colourway") {
		t, name := t.named("colourway", "evening", lines)
		c := job.Colourway{Name: name, Quantity: 1}
		c.Face = checkFaceName(t, it.Faces)
		if c.Face != "" {
			c.Quantity = it.Quantity
		}
		quantity := t.key("quantity")
		n, ok := quantity.count("3", mostItems)
		if ok {
			c.Quantity = n
		}
		c.Swap = checkSwap(t, it, c.Face)
		if quantity.given() && !ok || t.faulty("face") {
			continue
		}
		if s.faulty("quantity") || enoughPieces(t, it, c) {
			it.Colourways = append(it.Colourways, c)
		}
	}
}

// enoughPieces refuses more pieces in colourways than the item has.
func enoughPieces(s section, it *job.Item, c job.Colourway) bool {
	taken := 0
	for _, f := range it.Faces {
		if c.Face != "" && c.Face != f {
			continue
		}
		on := 0
		for _, d := range append(slices.Clone(it.Colourways), c) {
			if d.Face == "" || d.Face == f {
				on += d.Quantity
			}
		}
		taken = max(taken, on)
	}
	if taken <= it.Quantity {
		return true
	}
	e := s.key("quantity")
	less := ""
	if n := c.Quantity - (taken - it.Quantity); n > 0 {
		less = ", or quantity = " + words.PlainNumber(float64(n)) + " here"
	}
	e.say("with this the colourways take %s, and the item has %d; write quantity = %d for the item%s",
		words.Counted(taken, "piece", "pieces"), it.Quantity, taken, less)
	return false
}

// checkSwap reads which colours take the place of which.
func checkSwap(s section, it *job.Item, face string) map[string]string {
	const example = `{ moss = "teal" }`
	s.needs("swap", example)
	e := s.key("swap")
	if !e.given() {
		return nil
	}
	if e.node.Form != toml.Table {
		e.wrongKind(example)
		return nil
	}
	if len(e.node.Order) == 0 {
		e.say("swaps nothing; write which colour takes the place of which, such as swap = %s", example)
		return nil
	}
	var known []string
	for _, p := range it.Passes {
		if face != "" && p.Face != "" && p.Face != face {
			continue
		}
		for _, part := range p.Parts() {
			for _, c := range part.Colours {
				if !slices.Contains(known, c) {
					known = append(known, c)
				}
			}
		}
	}
	where := "the passes"
	if face != "" {
		where += " on the " + words.Shown(face)
	}
	swap := map[string]string{}
	in := section{r: s.r, node: e.node, label: "swap"}
	for _, colour := range e.node.Order {
		at := in.key(colour)
		other, ok := at.name("teal")
		switch {
		case len(known) == 0:
			at.say(`no pass here names colours; add colours = [%s] to one`, words.Quote(colour))
		case !slices.Contains(known, colour):
			at.say("there is no colour %s in %s; write %s", words.Quote(colour), where, keys.Instead(colour, known))
		case ok && other == colour:
			at.say("%s takes its own place; write another colour, or take it out", words.Quote(colour))
		case ok:
			swap[colour] = other
		}
	}
	return swap
}
