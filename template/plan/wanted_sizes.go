package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// sized is the layout with an item of another size.
func (w wish) sized(size geometry.Size) layout {
	now, m := w.l.item.Size, w.l
	if d := size.W - now.W; d != 0 && w.l.item.Shape != job.Round {
		m = m.changed(moreCloth, false, d)
	}
	if d := size.H - now.H; d != 0 {
		m = m.changed(moreCloth, true, d)
	}
	return m
}

// cloth is the smallest item with so many prints; nil: none has, or it is a cone, of which more
// than one thing could be made larger.
func (w wish) cloth() *geometry.Size {
	it := w.l.item
	if it.Shape == job.Cone {
		return nil
	}
	size, gap := it.Size, w.l.leastGap()
	guess := size
	if w.n.Across > 0 {
		a, _ := w.axis(false)
		guess.W = w.room(w.n.Across, gap.Across, false)
		if w.l.area.around == 0 {
			guess.W += a.around()
		}
	}
	if w.n.Down > 0 {
		a, _ := w.axis(true)
		guess.H = w.room(w.n.Down, gap.Down, true) + a.around()
	}
	round := it.Shape == job.Round
	if round {
		// So many across and so many down come with one diameter, or with none.
		if !w.likely() {
			return nil
		}
		x, ok := lookFor(max(guess.W, guess.H)/2, 2*max(guess.W, guess.H), w.l.step(false)/24, func(x geometry.Length) bool {
			return w.met(w.sized(geometry.Size{W: x, H: x}))
		})
		x = rounded(math.Ceil, x)
		return sizeOr(geometry.Size{W: x, H: x}, ok)
	}
	// Where one way bears on the other, a second round settles it.
	size = guess
	for range 3 {
		for _, down := range []bool{false, true} {
			n := along(w.n, down)
			if n == 0 {
				continue
			}
			g, step := *side(&guess, down), w.l.step(down)
			x, ok := w.best(g, max(step/4, g-2*step), g+4*step, step/24, func(x geometry.Length) bool {
				s := size
				*side(&s, down) = x
				return along(w.sized(s).counted(), down) == n
			})
			if !ok {
				return nil
			}
			*side(&size, down) = x
		}
		size = geometry.Size{W: rounded(math.Ceil, size.W), H: rounded(math.Ceil, size.H)}
		if w.met(w.sized(size)) {
			return &size
		}
	}
	return nil
}

func sizeOr(s geometry.Size, ok bool) *geometry.Size {
	if !ok {
		return nil
	}
	return &s
}

// faced is the layout with another block: its place so wide and so high.
func (w wish) faced(size geometry.Size) layout {
	m := w.l
	if d := w.l.cell.W - size.W; d != 0 {
		m = m.changed(smallerBlock, false, d)
	}
	if d := w.l.cell.H - size.H; d != 0 && !w.alike() {
		m = m.changed(smallerBlock, true, d)
	}
	return m
}

// carved is the face of a block whose place is so wide and so high, rounded down.
func (w wish) carved(size geometry.Size) *geometry.Size {
	face := w.faced(size).pass.Block.Size
	return &geometry.Size{W: rounded(math.Floor, face.W), H: rounded(math.Floor, face.H)}
}

// rounded brings a length to a millionth of a millimetre, which is what is told of it.
func rounded(by func(float64) float64, l geometry.Length) geometry.Length {
	if near := math.Round(float64(l)*1e6) / 1e6; math.Abs(near-float64(l)) < 1e-9 {
		return geometry.Length(near)
	}
	return geometry.Length(by(float64(l)*1e6) / 1e6)
}

// alike tells whether a block that is narrower is lower too.
func (w wish) alike() bool { return w.l.pass.Block.Shape.Regular() || w.l.pass.Turns.Mixed() }

// block is the largest carved face with which so many prints fit; nil: there is none.
func (w wish) block() *geometry.Size {
	if !w.l.pass.Mix.None() {
		return nil // each of several would be another
	}
	least := job.LeastFace
	size := w.l.cell
	guess := size
	for _, down := range []bool{false, true} {
		a, _ := w.axis(down)
		n, gap := geometry.Length(along(w.n, down)), w.l.leastGap().Across
		if down {
			gap = w.l.leastGap().Down
		}
		switch {
		case n == 0:
		case !down && w.l.area.around > 0:
			guess.W = w.l.area.around/n - gap
		default:
			*side(&guess, down) = (a.room - (n-1)*gap) / n
		}
	}
	if guess.W < least || guess.H < least {
		return nil
	}
	largest := func(down bool, does func(geometry.Length) bool) (geometry.Length, bool) {
		g, n := *side(&guess, down), geometry.Length(max(1, along(w.n, down)))
		return w.best(g, 1.5*g, max(least, g/3), g/(n+1)/12, does)
	}
	if w.alike() {
		if w.n.Across == 0 || w.n.Down > 0 && guess.H < guess.W {
			guess.W = guess.H
		}
		x, ok := largest(false, func(x geometry.Length) bool { return w.met(w.faced(geometry.Size{W: x})) })
		if !ok {
			return nil
		}
		return w.carved(geometry.Size{W: x})
	}
	for range 3 {
		for _, down := range []bool{false, true} {
			n := along(w.n, down)
			if n == 0 {
				continue
			}
			x, ok := largest(down, func(x geometry.Length) bool {
				s := size
				*side(&s, down) = x
				return along(w.faced(s).counted(), down) == n
			})
			if !ok {
				return nil
			}
			*side(&size, down) = x
		}
		if w.met(w.faced(size)) {
			return w.carved(size)
		}
	}
	return nil
}

// gapped is the layout with other gaps.
func (w wish) gapped(gap job.Spacing) layout {
	pass := *w.l.pass
	pass.Gap = job.Gaps{Across: job.Gap{Least: gap.Across, Most: gap.Across}, Down: job.Gap{Least: gap.Down, Most: gap.Down}}
	m := newLayout(newArea(w.l.item), &pass)
	m.item, m.units, m.target, m.before = w.l.item, w.l.units, w.l.target, w.l.before
	m.area, _ = m.insideFrames(w.l.before)
	return m
}

// gaps are those with which so many prints fit on the cloth there is, from 0 up. Where one gap rules
// both ways, or only gaps the same both ways do, both are the same.
func (w wish) gaps() (across, down *GapSpan) {
	now := w.l.leastGap()
	if !w.l.pass.Repeat.OneGap() && !w.l.pass.GapEven {
		across = w.gapsAlong(false, func(g geometry.Length) bool {
			return along(w.gapped(job.Spacing{Across: g, Down: now.Down}).counted(), false) == w.n.Across
		})
		down = w.gapsAlong(true, func(g geometry.Length) bool {
			return along(w.gapped(job.Spacing{Across: now.Across, Down: g}).counted(), true) == w.n.Down
		})
		if w.together(across, down) {
			return across, down
		}
	}
	both := func(g geometry.Length) bool { return w.met(w.gapped(job.Spacing{Across: g, Down: g})) }
	even := w.gapsAlong(w.n.Across == 0 || w.n.Down > 0 && w.upTo(w.n.Down, true) < w.upTo(w.n.Across, false), both)
	across, down = even, even
	if w.n.Across == 0 {
		across = nil
	}
	if w.n.Down == 0 {
		down = nil
	}
	return across, down
}

// together tells whether gaps across and down that were found one by one do for both; where one is
// missing that is told as it is.
func (w wish) together(across, down *GapSpan) bool {
	if across == nil || down == nil {
		// The other may stay as it is, and its count be another.
		return (across != nil || w.n.Across == 0 || w.l.area.plain()) && (down != nil || w.n.Down == 0 || w.l.area.plain())
	}
	end := func(g GapSpan) geometry.Length {
		if g.Endless() {
			return g.Least
		}
		return g.Most
	}
	return w.met(w.gapped(job.Spacing{Across: across.Least, Down: down.Least})) && w.met(w.gapped(job.Spacing{Across: end(*across), Down: end(*down)}))
}

// upTo is the most gap with which n prints fit, if they stand in straight rows: (A - n w)/(n - 1).
func (w wish) upTo(n int, down bool) geometry.Length {
	a, pitch := w.axis(down)
	room, gaps := a.room-a.face, geometry.Length(n-1)
	if !down && w.l.area.around > 0 {
		room, gaps = w.l.area.around, geometry.Length(n)
	}
	if gaps == 0 {
		if room < -geometry.Tolerance {
			return -1
		}
		return geometry.Length(math.Inf(1))
	}
	return (room/gaps - pitch(0)) / (pitch(1) - pitch(0))
}

// gapsAlong are the gaps along an axis that do; nil: none does.
func (w wish) gapsAlong(down bool, does func(geometry.Length) bool) *GapSpan {
	n := along(w.n, down)
	if n == 0 {
		return nil
	}
	a, _ := w.axis(down)
	var span GapSpan
	far := a.room + 1
	step := a.room / geometry.Length(12*n*(n+1))
	if most := w.upTo(n, down); math.IsInf(float64(most), 1) {
		if !does(far) {
			return nil
		}
		span.Most = most
	} else {
		x, ok := w.best(most, min(far, max(0, most)+8*w.l.step(down)), 0, step, func(g geometry.Length) bool { return g >= 0 && does(g) })
		if !ok {
			return nil
		}
		x = rounded(math.Floor, x)
		span.Most, far = x, x
	}
	// What is written to a few places has to be well away from where one more fits.
	more := w.upTo(n+w.step(down), down)
	switch {
	case more < 0 && does(0):
		return &span
	case more >= 0 && more+2*hair < far && does(more+2*hair) && !does(more-hair):
	case far <= hair:
		return &span
	case !w.likely():
		return nil
	default:
		more, _ = lookFor(far, 0, step, func(g geometry.Length) bool { return !does(g) })
	}
	span.Least = min(far, geometry.Length(math.Ceil(float64(more/hair))+1)*hair)
	return &span
}

// step is by how many the count grows where there is room for more.
func (w wish) step(down bool) int {
	a, _ := w.axis(down)
	if !down && w.l.area.surface.closes() {
		return w.l.pass.Turns.Columns()
	}
	return a.step
}
