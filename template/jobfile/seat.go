package jobfile

import (
	"slices"

	"underlay/template/job"
	"underlay/template/words"
)

// checkTargets resolves between and on, once all passes are read. i is the pass's index.
func (p *passReader) checkTargets(s section, i int) {
	pass := p.item.Passes[i]
	between, on := s.key("between"), s.key("on")
	if open, ok := s.key("open-edges").yes(); ok {
		pass.OpenEdges = open
	}
	if at, ok := s.key("offset").point("0 x 0 mm"); ok {
		pass.Offset = at
	}
	if target, ok := p.target(between, i); ok {
		pass.Between = target
		if !target.Repeat.Opens() || target.Seated() {
			between.say("%s is not a straight repeat, and only that has openings where four prints meet; "+
				"name a pass with repeat = \"straight\"", words.Quote(target.Name))
		}
	}
	if target, ok := p.target(on, i); ok {
		pass.On = target
	}
}

// target finds the earlier pass that a pass names.
func (p *passReader) target(e entry, i int) (*job.Pass, bool) {
	name, ok := e.text("fern ground")
	if !ok {
		return nil, false
	}
	pass, target := p.item.Passes[i], p.passes[name]
	var earlier []string
	for _, q := range p.item.Passes[:i] {
		if q.Name != "" && !slices.Contains(earlier, q.Name) {
			earlier = append(earlier, q.Name)
		}
	}
	switch j := slices.Index(p.item.Passes, target); {
	case len(earlier) == 0:
		e.say("there is no pass before this one; move it below the pass it is to be seated by")
	case target == pass:
		e.say("a pass cannot be seated by itself; write %s", words.OneOf(earlier))
	case target == nil:
		e.unknownName(name, "earlier pass", earlier)
	case j > i:
		e.say("%s comes after this pass; move this one below it", words.Quote(name))
	case e.s.faulty("face"):
		return target, true
	case target.Face != "" && target.Face != pass.Face && len(p.item.Faces) > 1:
		if pass.Face == "" {
			e.say("%s is on the face %s only; add face = %s to this pass", words.Quote(name), words.Quote(target.Face), words.Quote(target.Face))
		} else {
			e.say("%s is on the face %s, and this pass on %s; name a pass on the same face",
				words.Quote(name), words.Quote(target.Face), words.Quote(pass.Face))
		}
	default:
		return target, true
	}
	return nil, false
}
