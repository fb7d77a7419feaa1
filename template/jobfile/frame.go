package jobfile

import (
	"maps"
	"slices"

	"underlay/template/job"
	"underlay/template/words"
)

// checkFrameAndRings reads what belongs to those two repeats.
func (p *passReader) checkFrameAndRings(s section, pass *job.Pass) {
	list, _ := s.key("sides").list(`["bottom"]`)
	for _, e := range list {
		text, ok := e.text("bottom")
		switch side := job.Side(text); {
		case !ok || !e.knows(text, words.Texts(job.AllSides())):
		case slices.Contains(pass.Sides, side):
			e.say("%s is there twice; take one of them out", words.Quote(text))
		default:
			pass.Sides = append(pass.Sides, side)
		}
	}
	tops, _ := s.word("tops")
	pass.Tops = job.Tops(tops)
	p.checkCorner(s, pass)
	if n, ok := s.key("rings").count("2", 1000); ok {
		pass.Rings = n
	}
}

// checkCorner finds the block of a frame's corners, which it has only where all sides meet.
func (p *passReader) checkCorner(s section, pass *job.Pass) {
	e := s.key("corner")
	name, ok := e.text("acorn")
	if !ok {
		return
	}
	block, known := p.blocks[name]
	switch {
	case !known && len(p.blocks) > 0:
		e.unknownName(name, "block", slices.Sorted(maps.Keys(p.blocks)))
	case s.key("sides").given() && len(pass.Sides) < len(job.AllSides()):
		e.say("only a frame along all four sides has four corners; take sides out, or corner")
	default:
		pass.Corner = block
	}
}

// checkRingGap refuses a range for the gap of rings: the outermost lies on the border as it is,
// and each spreads its prints evenly, so that there is nothing to open.
func checkRingGap(s section, pass *job.Pass) {
	if g := pass.Gap.Across; pass.Repeat.Ringed() && g.Most > g.Least {
		s.key("gap").say("rings spread their prints evenly and reach out to the border, so a range has nothing to open; write the least gap alone, gap = %s", words.Quote(s.r.show(g.Least)))
	}
}
