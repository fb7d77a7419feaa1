package guide

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// lapMark is how far the edges of two prints that lap are drawn beyond the lap's corner.
const lapMark = 4 * geometry.Millimetre

// laps is how the prints of a pass are drawn whose straight edges lie in one another: where two
// meet, one line in the middle of the lap, and of the two edges only their ends, which show how wide
// the lap is and keep every corner in its place. What no other print covers is drawn as it is.
type laps struct {
	hidden map[lapSide][]extent // along sides: what is not drawn of them
	meets  []geometry.Path
}

// lapSide is a side of one of several outlines.
type lapSide struct{ outline, side int }

// straightSide is a side of an outline: where it begins, the unit vectors along it and into the
// outline, and how long it is.
type straightSide struct {
	from, along, in geometry.Point
	long            geometry.Length
}

// lapping tells whether the prints of a pass lie in one another.
func lapping(p plan.FacePass) bool {
	gap := p.Choice().Gap
	return !p.Pass.Seated() && min(gap.Across, gap.Down) < 0
}

// newLaps finds where outlines lap. Round ones have no side to share, and are drawn whole.
func newLaps(outlines []geometry.Outline) laps {
	l := laps{hidden: map[lapSide][]extent{}}
	sides := make([][]straightSide, len(outlines))
	var cell geometry.Length
	for i, o := range outlines {
		sides[i] = sidesOf(o)
		cell = max(cell, o.Bounds().W(), o.Bounds().H())
	}
	near := map[[2]int][]int{} // outlines by the cell their middle lies in
	for i, o := range outlines {
		c := o.Bounds().Centre()
		x, y := int(math.Floor(float64(c.X/cell))), int(math.Floor(float64(c.Y/cell)))
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				for _, k := range near[[2]int{x + dx, y + dy}] {
					l.meet(i, k, sides)
				}
			}
		}
		near[[2]int{x, y}] = append(near[[2]int{x, y}], i)
	}
	return l
}

// sidesOf returns the sides of an outline; of a round one none.
func sidesOf(o geometry.Outline) []straightSide {
	corners := o.Corners()
	var sides []straightSide
	for i, a := range corners {
		side := corners[(i+1)%len(corners)].Sub(a)
		s := straightSide{from: a, long: side.Norm()}
		s.along = side.Mul(1 / float64(s.long))
		s.in = geometry.Pt(-s.along.Y, s.along.X)
		const probe = 0.001 * geometry.Millimetre
		if !corners.Contains(a.Add(side.Mul(0.5)).Add(s.in.Mul(float64(probe)))) {
			s.in = s.in.Mul(-1)
		}
		sides = append(sides, s)
	}
	return sides
}

// meet finds the sides of two outlines that lie in each other, face to face.
func (l *laps) meet(i, k int, sides [][]straightSide) {
	for m, s := range sides[i] {
		for n, t := range sides[k] {
			if dot(s.in, t.in) > -1+1e-9 {
				continue
			}
			lap := dot(t.from.Sub(s.from), s.in)
			a, b := dot(t.from.Sub(s.from), s.along), dot(t.from.Add(t.along.Mul(float64(t.long))).Sub(s.from), s.along)
			shared := extent{max(0, min(a, b)), min(s.long, max(a, b))}
			// At a corner that two prints share there is nothing to draw but their ends.
			if lap <= geometry.Tolerance || shared.hi-shared.lo < 3*lap {
				continue
			}
			end := min(lap+lapMark, (shared.hi-shared.lo)/4)
			shared = extent{shared.lo + end, shared.hi - end}
			from := s.at(shared.lo).Add(s.in.Mul(float64(lap / 2)))
			to := s.at(shared.hi).Add(s.in.Mul(float64(lap / 2)))
			l.meets = append(l.meets, geometry.Line(from, to))
			l.hide(lapSide{i, m}, shared)
			u, v := dot(s.at(shared.lo).Sub(t.from), t.along), dot(s.at(shared.hi).Sub(t.from), t.along)
			l.hide(lapSide{k, n}, extent{min(u, v), max(u, v)})
		}
	}
}

func (l *laps) hide(s lapSide, e extent) { l.hidden[s] = append(l.hidden[s], e) }

// at returns the point of a side so far along it.
func (s straightSide) at(l geometry.Length) geometry.Point {
	return s.from.Add(s.along.Mul(float64(l)))
}

func dot(a, b geometry.Point) geometry.Length { return a.X*b.X + a.Y*b.Y }

// path returns what is drawn of the i-th outline; false: all of it.
func (l *laps) path(i int, o geometry.Outline) (geometry.Path, bool) {
	var path geometry.Path
	some := false
	for m, s := range sidesOf(o) {
		hidden := l.hidden[lapSide{i, m}]
		some = some || len(hidden) > 0
		slices.SortFunc(hidden, func(a, b extent) int {
			if a.lo < b.lo {
				return -1
			}
			return 1
		})
		var from geometry.Length
		for _, h := range append(hidden, extent{s.long, s.long}) {
			if h.lo > from+geometry.Tolerance {
				path = append(path, geometry.Line(s.at(from), s.at(h.lo))...)
			}
			from = max(from, h.hi)
		}
	}
	return path, some
}

// drawLapped draws the outlines of a pass whose prints lap.
func (g *guide) drawLapped(p plan.FacePass, pen paper.Pen) {
	var outlines []geometry.Outline
	var places []paper.Place
	var roles []paper.Role
	for i, print := range p.Prints {
		for _, o := range g.face.Item.Area.Again(print, print.Outline) {
			outlines = append(outlines, o)
			places = append(places, paper.Place{At: o.Bounds().Centre()})
			roles = append(roles, paper.Role{Kind: RolePrint, Number: p.First + i})
		}
	}
	l := newLaps(outlines)
	shapes := stamps{g, map[string]*paper.Shape{}}
	for i, o := range outlines {
		path, some := l.path(i, o)
		if !some {
			path = o.Path()
		}
		shapes.put(path, places[i].At, pen, roles[i])
		g.takeLines(path)
	}
	for _, meet := range l.meets {
		shapes.put(meet, meet.Bounds().Centre(), pen, paper.Role{Kind: RoleLap})
		g.takeLines(meet)
	}
}

// stamps are shapes by their form, so that what is drawn often is kept once.
type stamps struct {
	*guide
	shapes map[string]*paper.Shape
}

// put draws a path that lies round a point.
func (s stamps) put(path geometry.Path, at geometry.Point, pen paper.Pen, role paper.Role) {
	round := path.Map(func(q geometry.Point) geometry.Point { return q.Sub(at) })
	var form strings.Builder
	for _, piece := range round {
		fmt.Fprintf(&form, "%.6f", piece.Start)
		for _, step := range piece.Steps {
			fmt.Fprintf(&form, " %.6f", step.To)
		}
	}
	shape := s.shapes[form.String()]
	if shape == nil {
		shape = paper.NewShape(round)
		s.shapes[form.String()] = shape
	}
	s.Stamp(shape, paper.Place{At: at}, pen, role)
}
