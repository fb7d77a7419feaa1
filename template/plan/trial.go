package plan

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// trial is a repeat with moved rows or columns, tried on other sizes: how many prints the best
// way of centring allowed would hold on a plain rectangle, without setting them out.
type trial struct {
	lattice
	pass *job.Pass
	room geometry.Size // of the printable area
	cell geometry.Size
	gap  job.Spacing
}

// best returns the most prints of any way of centring the job allows.
func (t trial) best() int {
	most := 0
	pitch := t.pitch(layout{cell: t.cell}, t.gap)
	for _, across := range []job.Centring{job.OnPrint, job.OnJoint} {
		for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
			if c := (Choice{Across: across, Down: down}); c.allowed(t.pass) {
				most = max(most, t.count(c, pitch))
			}
		}
	}
	return most
}

// count adds up the lines of prints, rows or columns. Along a line the origins are at
// (i + shift) pitch from the centre, and half the room less half the face is what they may
// be away from it.
func (t trial) count(c Choice, pitch job.Spacing) int {
	joint := func(on job.Centring) float64 {
		if on == job.OnJoint {
			return 0.5
		}
		return 0
	}
	along := reachLine{float64((t.room.W - t.cell.W) / 2 / pitch.Across), joint(c.Across)}
	over := reachLine{float64((t.room.H - t.cell.H) / 2 / pitch.Down), joint(c.Down)}
	if t.columns {
		along, over = over, along
	}
	share, n := t.share(t.pass), 0
	first, last := over.fit(0)
	for k := first; k <= last; k++ {
		part := float64(k)*share - math.Floor(float64(k)*share+1e-9)
		if low, high := along.fit(part); low <= high {
			n += high - low + 1
		}
	}
	return n
}

// reachLine is a line of places i + shift, of which those up to reach from 0 fit.
type reachLine struct{ reach, shift float64 }

// fit returns the least and the greatest i that fit where the line is moved on by a part. It
// takes what fits but for rounding, and nothing more: a change is to be large enough.
func (l reachLine) fit(part float64) (low, high int) {
	const rounding = 1e-11
	if l.reach < -rounding {
		return 1, 0
	}
	s := l.shift + part
	return int(math.Ceil(-l.reach - s - rounding)), int(math.Floor(l.reach - s + rounding))
}

// sizes works out, by trying, what other cloths the guide of a lattice serves, and what more
// prints would take: on a plain rectangle by counting lines of prints, on anything else by
// setting them out.
func (t lattice) sizes(l layout, c Choice, sites []Site) otherSizes {
	if l.pass.Exactly != (job.Counts{}) {
		return l.fixedSizes(sites)
	}
	if !l.pass.Mix.None() {
		return l.triedSizes(c, sites, false, t.mostMixed)
	}
	if !t.exact(l) {
		return l.triedSizes(c, sites, l.uniform() && l.convex() && l.item.Shape != job.Outline && l.item.Shape != job.FourSided, t.most)
	}
	return sizeTrial{l: l, c: c, steady: true, exact: true, most: t.mostInLines}.sizes(sites)
}

// mostInLines is how many prints the best way of centring allowed holds on a plain rectangle.
func (t lattice) mostInLines(l layout) int {
	return trial{t, l.pass, l.area.Rect.Size(), l.cell, l.leastGap()}.best()
}

// most is how many prints the best way of centring allowed holds with the least gap.
func (t lattice) most(l layout) int {
	if l.area.Rect.W() <= 0 || l.area.Rect.H() <= 0 {
		return 0
	}
	if l.roughCount() > 2*mostPrints {
		return 2 * mostPrints
	}
	gap := l.leastGap()
	if l.area.around > 0 {
		n, _, err := t.closing(l, l.mostRoundDrum())
		if err != nil || n == 0 {
			return 0
		}
		gap.Across = l.area.around/geometry.Length(n) - l.cell.W
		if t.oneGap {
			gap.Down = gap.Across
		}
	}
	same := l.uniform()
	most, h := 0, newHolder(l, t.turnOf(l.pass))
	for _, across := range []job.Centring{job.OnPrint, job.OnJoint} {
		for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
			c := Choice{Across: across, Down: down, Gap: gap, Pitch: t.pitch(l, gap)}
			if !c.allowed(l.pass) {
				continue
			}
			if !same {
				most = max(most, len(t.place(l, c)))
				continue
			}
			n, lat := 0, t.spots(l, c)
			for _, k := range t.candidates(l, lat) {
				if h.holds(lat.At(k)) {
					n++
				}
			}
			most = max(most, n)
		}
	}
	return most
}

// holder tells which prints of a face that covers the same cloth in all its turns lie on an
// area. It is quick with those well inside.
type holder struct {
	area   Area
	face   geometry.Outline
	bounds geometry.Rect
	reach  geometry.Length // of the face from its origin
}

// newHolder makes the holder of a layout that is uniform, on top of a turn of the whole.
func newHolder(l layout, turn geometry.Angle) holder {
	face := l.pass.Block.Face.Turn((geometry.Angle(l.pass.Turns[0][0]) + turn).Normal())
	h := holder{area: l.area, face: face, bounds: face.Bounds()}
	if _, r, round := face.Round(); round {
		h.reach = r
	}
	for _, c := range face.Corners() {
		h.reach = max(h.reach, c.Norm())
	}
	return h
}

func (h holder) holds(p geometry.Point) bool {
	a, b := h.area, h.bounds.Move(p)
	if a.surface.closes() || slices.ContainsFunc(a.zones, func(z job.Zone) bool { return z.Rect.Overlaps(b) }) {
		return a.surface.holds(a, h.face.Move(p))
	}
	return a.Rect.Holds(b) && (a.upright || h.wellInside(p) || a.surface.holds(a, h.face.Move(p)))
}

// wellInside tells whether a whole circle round p as large as the face reaches lies on the area.
func (h holder) wellInside(p geometry.Point) bool {
	return h.area.ground.Holds(geometry.CircleOutline(p, h.reach))
}

// uniform tells whether the face covers the same cloth however it is turned here.
func (l layout) uniform() bool {
	if !l.pass.Mix.None() {
		return false
	}
	b, turns := l.pass.Block, l.pass.Turns
	same := func(turn int) bool { return turn == turns[0][0] }
	switch b.Shape {
	case job.RoundFace:
		return true
	case job.RectangleFace, job.HexagonFace:
		square := b.Shape == job.RectangleFace && b.Size.W == b.Size.H
		same = func(turn int) bool { return square || (turn-turns[0][0])%180 == 0 }
	}
	for _, row := range turns {
		for _, turn := range row {
			if !same(turn) {
				return false
			}
		}
	}
	return true
}

// convex tells whether the area has neither a corner that points inwards nor a zone in it.
func (l layout) convex() bool {
	corners := l.item.Outline.Corners()
	return len(l.area.zones) == 0 && len(corners.Jutting()) == len(corners)
}
