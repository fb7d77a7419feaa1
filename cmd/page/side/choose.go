package side

import (
	"slices"

	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/keys"
)

// Choose returns the text with a value as Set does, and with what goes with it, so that a job that
// works goes on working: keys that mean nothing with it are taken away, and those that it needs are
// added, as large as what was there. It is for what is chosen in a sentence: a shape, a repeat, a gap
// in place of a lap. Errors as those of Set.
func (s *Side) Choose(text, path, value string) (string, error) {
	p, err := edit.ParsePath(path)
	if err != nil {
		return text, err
	}
	was, _ := treeOf(text)
	_, broken := s.plan(text)
	out, err := s.Set(text, path, value)
	if err != nil {
		return text, err
	}
	c := &chooser{side: s, was: was, text: out}
	c.follow(p, value)
	if c.err != nil {
		return text, c.err
	}
	if broken == nil {
		c.mend(p)
	}
	return c.text, nil
}

// chooser makes the edits that go with one.
type chooser struct {
	side *Side
	was  tree   // as the text was before
	text string // as it is now
	err  error  // of the first edit that failed
}

// now reads the text as it is.
func (c *chooser) now() valueReader { return readerOf(c.text) }

// readerOf reads what stands in a text that is TOML.
func readerOf(text string) valueReader {
	t, err := treeOf(text)
	if err != nil {
		t, _ = treeOf("")
	}
	return valueReader{text: string(t.data), root: t.Root, keys: keys.NewKeyTree()}
}

func (c *chooser) set(p edit.Path, value string) {
	if c.err == nil {
		c.text, c.err = c.side.Set(c.text, p.String(), value)
	}
}

// drop takes keys of a table away, those that are there.
func (c *chooser) drop(table edit.Path, names ...string) {
	for _, name := range names {
		if p := table.Sub(name); c.err == nil && c.has(p) {
			c.text, c.err = c.side.Remove(c.text, p.String())
		}
	}
}

func (c *chooser) has(p edit.Path) bool { return edit.Find(c.now().root, p) != nil }

// need adds a key of a table that is not there.
func (c *chooser) need(table edit.Path, name, value string) {
	if p := table.Sub(name); !c.has(p) {
		c.set(p, value)
	}
}

// follow makes the edits that go with a key set to a value.
func (c *chooser) follow(p edit.Path, value string) {
	if value == "" || len(p) < 3 {
		c.without(p)
		return
	}
	table, name := p[:len(p)-1], p[len(p)-1]
	switch {
	case p[0] == "block" && len(p) == 3 && name == "shape":
		c.blockShape(table)
	case p[0] == "item" && len(p) == 3:
		c.itemKey(table, name)
	case p[0] == "item" && len(p) == 5 && p[2] == "pass":
		c.passKey(table, name)
	}
}

// without makes the edits that go with a key that was taken away.
func (c *chooser) without(p edit.Path) {
	if len(p) != 5 || p[2] != "pass" {
		return
	}
	pass := p[:4]
	switch p[4] {
	case "between":
		c.drop(pass, "open-edges")
		c.setOut(pass)
	case "on":
		c.drop(pass, "offset")
		c.setOut(pass)
	}
}

// instead says which keys another takes the place of.
func instead(name string) []string {
	switch name {
	case "gap":
		return []string{"lap"}
	case "lap":
		return []string{"gap", "gap-across", "gap-down"}
	case "block":
		return []string{"blocks"}
	case "blocks":
		return []string{"block"}
	case "colours":
		return []string{"colours-in-turn", "dabs"}
	case "colours-in-turn":
		return []string{"colours", "dabs"}
	case "dabs":
		return []string{"colours", "colours-in-turn"}
	case "between":
		return []string{"on", "offset"}
	case "on":
		return []string{"between", "open-edges"}
	case "diameter":
		return []string{"around"}
	case "around":
		return []string{"diameter"}
	}
	return nil
}

// passKey makes the edits that go with a key of a pass.
func (c *chooser) passKey(pass edit.Path, name string) {
	c.drop(pass, instead(name)...)
	switch name {
	case "repeat":
		c.drop(pass, "between", "open-edges", "on", "offset")
		c.setOut(pass)
	case "between", "on":
		c.suit(pass)
	case "gap":
		if c.has(pass.Sub("gap-across")) && c.has(pass.Sub("gap-down")) {
			c.drop(pass, "gap-across", "gap-down")
		}
	case "gap-across", "gap-down":
		c.oneWay(pass, name)
	}
}

// oneWay makes room for a gap one way: what was both ways is now the other's.
func (c *chooser) oneWay(pass edit.Path, name string) {
	other := map[string]string{"gap-across": "gap-down", "gap-down": "gap-across"}[name]
	if lap := c.now().word(pass.Sub("lap"), ""); lap != "" {
		c.drop(pass, "lap")
		c.set(pass.Sub(other), "-"+lap)
	}
	if c.has(pass.Sub("gap")) && c.has(pass.Sub(other)) {
		c.drop(pass, "gap")
	}
}

// suit takes those keys of a pass away that mean nothing with how it is set out now.
func (c *chooser) suit(pass edit.Path) {
	r := c.now()
	repeat, seat := r.word(pass.Sub("repeat"), string(job.Straight)), r.seat(pass)
	tree := edit.Tree(r.keys, pass)
	for _, name := range tree.Order {
		if !tree.Keys[name].SuitsPass(repeat, seat) {
			c.drop(pass, name)
		}
	}
}

// setOut sees to it that a pass which is not seated has what its repeat needs, and nothing else.
func (c *chooser) setOut(pass edit.Path) {
	before := c.now()
	gap := ""
	for _, name := range []string{"gap", "gap-across", "gap-down"} {
		if gap = before.word(pass.Sub(name), ""); gap != "" {
			break
		}
	}
	c.suit(pass)
	r := c.now()
	repeat := job.Repeat(r.word(pass.Sub("repeat"), string(job.Straight)))
	if !c.has(pass.Sub("block")) && !c.has(pass.Sub("blocks")) {
		if names := before.texts(pass.Sub("blocks", "0")); len(names) > 0 {
			c.set(pass.Sub("block"), names[0])
		}
	}
	if repeat.Gapped() && !c.has(pass.Sub("gap")) && !c.has(pass.Sub("lap")) && !(c.has(pass.Sub("gap-across")) && c.has(pass.Sub("gap-down"))) {
		if gap == "" {
			gap = "1 mm"
		}
		c.drop(pass, "gap-across", "gap-down")
		c.set(pass.Sub("gap"), gap)
	}
	if repeat == job.Tossed {
		c.leastGap(pass)
	}
	if repeat == job.Placed {
		c.need(pass, "at", c.placeIn(pass))
	}
	if repeat == job.One && len(before.texts(pass.Sub("turns"))) > 0 {
		c.drop(pass, "turns")
	}
}

// mend takes those keys away that the choice has made wrong, and that can be left out; what was
// wrong before is for the maker.
func (c *chooser) mend(chosen edit.Path) {
	for range 8 {
		_, err := c.side.plan(c.text)
		if err == nil {
			return
		}
		t, broken := treeOf(c.text)
		if broken != nil {
			return
		}
		r := c.now()
		found := false
		for _, problem := range problemsOf(err, t.TreeParser) {
			p, err := edit.ParsePath(problem.Path)
			if err != nil || slices.Equal(p, chosen) || len(p) < 3 {
				continue
			}
			tree := edit.Tree(r.keys, p[:len(p)-1])
			if tree == nil || slices.Index(tree.Order, p[len(p)-1]) < 0 || tree.Keys[p[len(p)-1]].Must() || essential(p[len(p)-1]) {
				continue
			}
			c.drop(p[:len(p)-1], p[len(p)-1])
			found = true
			break
		}
		if !found {
			return
		}
	}
}

// essential tells the keys that say what a thing is, and are not taken away for the sake of another.
func essential(name string) bool {
	return slices.Contains([]string{"repeat", "shape", "size", "gap", "at", "outline", "sides", "diagonal", "diameter", "around", "height", "top", "bottom", "block", "blocks", "between", "on", "colours", "dabs"}, name)
}
