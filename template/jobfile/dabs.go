package jobfile

import (
	"math"
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// mostDabs is the most dabs a pass may have.
const mostDabs = 12

// dabParts are the parts of a face that a dab can name, each by its key.
var dabParts = []job.FacePart{job.TheMiddle, job.TheCorners, job.TheEdge}

// checkDabs reads the dabs of a pass; those of a list with a fault are none.
func checkDabs(s section) []job.Dab {
	e := s.key("dabs")
	if !e.given() {
		return nil
	}
	for _, other := range []string{"colours", "colours-in-turn"} {
		if o := s.key(other); o.given() {
			e.say("%s is given too, in line %d; keep one of them: dabs say which colours there are", other, o.node.Line)
			return nil
		}
	}
	run, ok := e.dabList()
	if !ok {
		return nil
	}
	var dabs []job.Dab
	for i, t := range run {
		d, good := checkDab(t)
		if good && d.Part == job.TheRest && i < len(run)-1 {
			e.at(t.node).say("%s names no part, so it is the rest and comes last; move it to the end, or give it middle, corners or edge", words.Quote(d.Colour))
			good = false
		}
		if ok = ok && good; good {
			dabs = append(dabs, d)
		}
	}
	if !ok || !e.severalDabs(dabs) {
		return nil
	}
	return dabs
}

// at is the entry at another place of the file.
func (e entry) at(n *toml.Node) entry { return entry{s: e.s, key: e.key, node: n, inList: true} }

// dabList reads the list of a pass's dabs, as the tables that are in it.
func (e entry) dabList() ([]section, bool) {
	text, single := e.value().(string)
	switch {
	case single && strings.TrimSpace(text) != "":
		e.wrong(words.Quote(text)+" is not a list of dabs", keys.DabsExample)
		return nil, false
	case e.node.Form == toml.Table:
		e.say("{...} is one dab, and here stands a list of them; write [ before it and ] after it")
		return nil, false
	}
	if e.node.Form != toml.Tables {
		list, ok := e.list(keys.DabsExample)
		if !ok {
			return nil, false
		}
		for _, i := range list {
			name, text := i.value().(string)
			if i.node.Form == toml.Table {
				continue
			}
			if text && strings.TrimSpace(name) != "" {
				i.wrong(words.Quote(name)+" is no dab", "{ colour = "+words.Quote(name)+` }, or with the part it goes on, { colour = `+words.Quote(name)+`, middle = "30 mm" }`)
			} else {
				i.wrongKind(`{ colour = "ochre", middle = "30 mm" }`)
			}
			return nil, false
		}
	}
	if len(e.node.Items) > mostDabs {
		e.say("more than %d dabs; write fewer", mostDabs)
		return nil, false
	}
	var run []section
	for _, n := range e.node.Items {
		run = append(run, section{r: e.s.r, node: n, keys: e.s.keys.Tables["dabs"], label: "this dab"})
	}
	return run, true
}

// checkDab reads one dab.
func checkDab(s section) (job.Dab, bool) {
	d := job.Dab{Part: job.TheRest}
	var ok bool
	if d.Colour, ok = s.key("colour").name("ochre"); !ok {
		s.needs("colour", `"ochre"`)
	} else {
		s.label = "dab " + words.Quote(d.Colour)
	}
	for _, n := range s.node.Keys {
		ok = ok && !n.Blamed
	}
	for _, part := range dabParts {
		e := s.key(string(part))
		if !e.given() {
			continue
		}
		if d.Part != job.TheRest {
			e.say("%s is given too, and a dab goes on one part; write two dabs, one for each", d.Part)
			return d, false
		}
		size, good := e.positive("30 mm")
		d.Part, d.Size = part, size
		ok = ok && good
	}
	return d, ok
}

// severalDabs refuses dabs that come to one colour on the whole face.
func (e entry) severalDabs(dabs []job.Dab) bool {
	last := dabs[len(dabs)-1]
	if last.Part != job.TheRest || slices.ContainsFunc(dabs, func(d job.Dab) bool { return d.Colour != last.Colour }) {
		return true
	}
	e.say("the whole face is in %s; write colours = [%[1]s] in place of dabs, or dab another colour too", words.Quote(last.Colour))
	return false
}

// checkDabbedFaces refuses dabs that the faces of a pass's blocks have no room for.
func checkDabbedFaces(s section, pass *job.Pass) {
	if len(pass.Dabs) == 0 {
		return
	}
	e := s.key("dabs")
	blocks := []*job.Block{}
	for _, part := range pass.Parts() {
		blocks = append(blocks, part.Block)
	}
	if pass.Corner != nil {
		blocks = append(blocks, pass.Corner)
	}
	seen := map[*job.Block]bool{}
	for _, b := range blocks {
		if !seen[b] && !e.dabsFit(pass.Dabs, b) {
			return
		}
		seen[b] = true
	}
}

// dabsFit holds each dab against a block's face: it must leave some of it, and get some of it.
func (e entry) dabsFit(dabs []job.Dab, b *job.Block) bool {
	shares := job.DabShares(dabs, b.Face)
	for i, d := range dabs {
		at := e.at(e.node.Items[i])
		if d.Part != job.TheRest {
			at = section{r: e.s.r, node: at.node}.key(string(d.Part))
		}
		if d.Part == job.TheCorners && b.Shape == job.RoundFace {
			at.say("the face of block %s is round and has no corners; write middle or edge", words.Quote(b.Name))
			return false
		}
		if d.Part != job.TheRest && leftBy(d, b.Face) < job.LeastDab {
			at.say("%s takes all of the face of block %s; write %s or less",
				e.s.r.show(d.Size), words.Quote(b.Name), words.Quote(e.s.r.showMost(mostDab(d, b.Face, e.s.r.units))))
			return false
		}
		if shares[i] < job.LeastDab {
			or := "put it before them"
			if d.Part == job.TheRest {
				or = "take it out"
			}
			at.say("%s gets nothing of the face of block %s: the dabs before it have all of that; make them smaller, or %s",
				words.Quote(d.Colour), words.Quote(b.Name), or)
			return false
		}
	}
	return true
}

// leftBy returns how much of a face a dab leaves, as a share.
func leftBy(d job.Dab, face geometry.Outline) float64 {
	return job.DabShares([]job.Dab{d, {Part: job.TheRest}}, face)[1]
}

// mostDab is about how large a dab may be and leave a tenth of the face.
func mostDab(d job.Dab, face geometry.Outline, units geometry.Unit) geometry.Length {
	least, most := geometry.Length(0), d.Size
	for range 20 {
		if d.Size = (least + most) / 2; leftBy(d, face) < 0.1 {
			most = d.Size
		} else {
			least = d.Size
		}
	}
	// In round figures, where it is large enough for them.
	step := geometry.Millimetre
	if units == geometry.UnitInch {
		step = geometry.Inch / 8
	}
	if least > 4*step {
		return geometry.Length(math.Floor(float64(least/step))) * step
	}
	return max(least, geometry.Tolerance)
}
