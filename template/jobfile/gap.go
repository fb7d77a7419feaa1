package jobfile

import (
	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// leastPitch is the least step from print to print of a pass that is meant to print over itself;
// any other laps by less than half its block.
const leastPitch = 0.5 * geometry.Millimetre

// checkGaps reads the one way in which the gap is given: gap, lap, or gap-across with
// gap-down; gap-across or gap-down may also overrule gap one way. It tells whether the
// gaps are good.
func checkGaps(s section, pass *job.Pass) bool {
	if s.has("between") || s.has("on") || !pass.Repeat.Gapped() {
		return true
	}
	gap, lap := s.key("gap"), s.key("lap")
	across, down := s.key("gap-across"), s.key("gap-down")
	both, okG := gap.gap()
	a, okA := across.gap()
	d, okD := down.gap()
	l, okL := lap.lap()
	if gapsClash(gap, lap, across, down) {
		return false
	}
	if lap.given() {
		both = l
	}
	pass.Gap = job.Gaps{Across: both, Down: both}
	if across.given() {
		pass.Gap.Across = a
	}
	if down.given() {
		pass.Gap.Down = d
	}
	if !gap.given() && !lap.given() && !(across.given() && down.given()) {
		gapMissing(s, across, down)
		return false
	}
	return (okG || !gap.given()) && (okA || !across.given()) && (okD || !down.given()) && (okL || !lap.given())
}

// gapsClash refuses more ways than one of giving the gap.
func gapsClash(gap, lap, across, down entry) bool {
	switch {
	case gap.given() && lap.given():
		lap.say("gap is given too, in line %d; keep one of them", gap.node.Line)
	case lap.given() && (across.given() || down.given()):
		lap.say("a gap is given too, across or down; keep one of them, and write a lap across as gap-across = \"-0.5 mm\"")
	case gap.given() && across.given() && down.given():
		gap.say("gap-across and gap-down are both given, so gap has no use; take one of the three out")
	default:
		return false
	}
	return true
}

// gapMissing asks for the gap, or for what goes with the one that is given.
func gapMissing(s section, across, down entry) {
	missing := "gap"
	switch {
	case s.has("lap") || s.has("gap"):
		return // misspelt, and told so
	case across.given():
		missing = "gap-down"
	case down.given():
		missing = "gap-across"
	}
	s.needs(missing, `"1 mm"`)
}

// gap reads the plain cloth between prints: one length, or a range.
func (e entry) gap() (job.Gap, bool) {
	g, ok := parsed(e, "1 mm", func(s string) (job.Gap, error) {
		least, most, err := geometry.ParseRange(s)
		return job.Gap{Least: least, Most: most}, err
	})
	return g, ok && e.inRange(g.Least, g.Most)
}

// lap reads the overlap of prints, and returns it as a negative gap.
func (e entry) lap() (job.Gap, bool) {
	l, ok := e.length("0.5 mm")
	if ok && l < 0 {
		e.say("a lap below nothing is a gap; write gap = %s", words.Quote(e.s.r.show(-l)))
		return job.Gap{}, false
	}
	return job.Gap{Least: -l, Most: -l}, ok
}

// checkLaps refuses a lap of half the block or more, which is most often a wrong key or unit;
// of a pass that is to print over what is there, one that leaves no step from print to print.
func checkLaps(s section, pass *job.Pass) bool {
	if pass.Repeat.Single() {
		return true
	}
	w, h := pass.Block.Size.W, pass.Block.Size.H
	if pass.Repeat.Lattice() {
		place := pass.Place()
		w, h = place.W, place.H
		if !pass.Mix.None() {
			for _, part := range pass.Mix.Parts {
				least := min(part.Block.Size.W, part.Block.Size.H)
				w, h = min(w, least), min(h, least)
			}
		}
	} else {
		w, h = min(w, h), min(w, h)
	}
	show := s.r.show
	fits := func(way string, gap, size geometry.Length) bool {
		if -gap < size/2-geometry.Tolerance || pass.Over && size+gap >= leastPitch-geometry.Tolerance {
			return true
		}
		e := s.key("gap-" + way)
		for _, key := range []string{"gap", "lap"} {
			if other := s.key(key); !e.given() {
				e = other
			}
		}
		what, example := "half on each other or more", min(0.5, size/4)
		if pass.Over {
			what = "on each other"
		}
		advice := words.Quote(show(example))
		if e.key != "lap" {
			advice = e.key + " = " + words.Quote(show(-example))
		}
		e.say("prints that lap by %s, with a face of %s %s, would lie %s; write a smaller lap, such as %s",
			show(-gap), show(size), way, what, advice)
		return false
	}
	okAcross := fits("across", pass.Gap.Across.Least, w)
	return fits("down", pass.Gap.Down.Least, h) && okAcross
}

// mostAsked is the most prints across, or down, that a job may ask for.
const mostAsked = 10_000

// checkExactly reads how many prints there are to be across and down, and whether a gap opens as much
// one way as the other.
func checkExactly(s section, pass *job.Pass) {
	for _, way := range []struct {
		key string
		to  *int
	}{{"across", &pass.Exactly.Across}, {"down", &pass.Exactly.Down}} {
		if n, ok := s.key(way.key).count("4", mostAsked); ok {
			*way.to = n
		}
	}
	e := s.key("gap-even")
	even, ok := e.yes()
	if !ok {
		return
	}
	pass.GapEven = even
	for _, key := range []string{"gap-across", "gap-down"} {
		if even && s.has(key) {
			e.say("is one gap for both ways, and %s is given too; take one of the two out", key)
			return
		}
	}
}
