package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// Wanted is what exactly so many prints across and down would take, each thing alone and the job
// otherwise as it is. What cannot do it is nil. Put into the job, each gives just as many.
type Wanted struct {
	job.Counts
	Cloth *geometry.Size // the smallest item; of a drum the way round x its height
	// GapAcross and GapDown are the gaps on the cloth there is; nil where none from 0 up does.
	GapAcross, GapDown *GapSpan
	Block              *geometry.Size // the largest carved face
}

// GapSpan are the gaps from the least to the most with which so many prints fit. Of one print the
// gap may be any: Most is then infinite.
type GapSpan struct{ Least, Most geometry.Length }

// Endless tells whether any larger gap will do too.
func (g GapSpan) Endless() bool { return math.IsInf(float64(g.Most), 1) }

// Wanted works out what exactly n prints across and down would take; false for a repeat that has
// no such counts, or that is set out by another pass.
func (p *PassPlan) Wanted(n job.Counts) (Wanted, bool) {
	if p.Pass.Seated() || !p.Pass.Repeat.Lattice() {
		return Wanted{}, false
	}
	return p.layout.wanted(n), true
}

// wanted tries one thing after the other.
func (l layout) wanted(n job.Counts) Wanted {
	w := wish{l: l.free(), n: n}
	out := Wanted{Counts: n, Cloth: w.cloth(), Block: w.block()}
	out.GapAcross, out.GapDown = w.gaps()
	return out
}

// free is the layout without the number of prints its job asks for.
func (l layout) free() layout {
	pass := *l.pass
	pass.Exactly = job.Counts{}
	l.pass = &pass
	return l
}

// along is one of two counts.
func along(n job.Counts, down bool) int {
	if down {
		return n.Down
	}
	return n.Across
}

// counted is how many prints a layout has across and down; none where it cannot be set out.
func (l layout) counted() job.Counts {
	if l.area.Rect.W() <= 0 || l.area.Rect.H() <= 0 || l.roughCount() > mostPrints {
		return job.Counts{}
	}
	ways, err := repeatOf(l).ways(l)
	if err != nil {
		return job.Counts{}
	}
	choices := make([]Choice, len(ways))
	for i, w := range ways {
		choices[i] = w.Choice
	}
	taken := take(choices, l.pass)
	if taken < 0 {
		return job.Counts{}
	}
	return choices[taken].counts()
}

// wish is a number of prints that a layout may not have, and that another size of something would
// give. A count of 0 is one that does not matter.
type wish struct {
	l layout
	n job.Counts
}

// hair is less than a maker can measure, and more than arithmetic is out.
const hair = 1e-4 * geometry.Millimetre

// met tells whether a layout has as many prints as are wished for.
func (w wish) met(l layout) bool { return l.counted().Meet(w.n) }

// likely tells whether as many prints are few enough to look for by planning.
func (w wish) likely() bool { return max(1, w.n.Across)*max(1, w.n.Down) <= 400 }

// axis returns the direction, and the step from face to face that a gap adds to.
func (w wish) axis(down bool) (a axis, pitch func(gap geometry.Length) geometry.Length) {
	across, downwards := w.l.axes()
	set := repeatOf(w.l).pitch
	if set == nil {
		set = facePitch
	}
	if down {
		return downwards, func(g geometry.Length) geometry.Length { return set(w.l, job.Spacing{Across: g, Down: g}).Down }
	}
	return across, func(g geometry.Length) geometry.Length { return set(w.l, job.Spacing{Across: g, Down: g}).Across }
}

// room is what n prints with a gap take up along an axis: with a gap after the last, where they
// close round a shade.
func (w wish) room(n int, gap geometry.Length, down bool) geometry.Length {
	a, pitch := w.axis(down)
	if !down && w.l.area.around > 0 {
		return geometry.Length(n) * pitch(gap)
	}
	return geometry.Length(n-1)*pitch(gap) + a.face
}

// best returns the length nearest to a guess that does: the guess, where it does, and a hair more of
// it the way things get worse no longer; else it is looked for, from worse to better.
func (w wish) best(guess, worse, better, step geometry.Length, does func(geometry.Length) bool) (geometry.Length, bool) {
	beyond := guess + hair
	if worse < better {
		beyond = guess - hair
	}
	if does(guess) && !does(beyond) {
		return guess, true
	}
	if !w.likely() {
		return 0, false
	}
	return lookFor(worse, better, step, does)
}

// lookFor returns the first length on the way from one to another that does: found in steps, and
// then by halving.
func lookFor(from, to, step geometry.Length, does func(geometry.Length) bool) (geometry.Length, bool) {
	if to < from {
		step = -step
	}
	for no, yes := from-step, from; (to-yes)*step >= 0; no, yes = yes, yes+step {
		if !does(yes) {
			continue
		}
		for (yes - no).Abs() > hair/100 {
			if mid := (yes + no) / 2; does(mid) {
				yes = mid
			} else {
				no = mid
			}
		}
		return yes, true
	}
	return 0, false
}
