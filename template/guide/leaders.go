package guide

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// Leaders, from a number that has no room in its print.
const (
	leaderPen = 0.25 * geometry.Millimetre
	leaderDot = 0.3 * geometry.Millimetre // at its end in the print (ISO 128-2)
	leaderIn  = 0.9 * geometry.Millimetre // how far it goes into the print
)

// lead writes a number beside the prints, joined to its own by a leader; where there is no room
// near by it is left out, and counted.
func (n numbering) lead(f field, text string) {
	if n.covered == nil {
		n.guide.covered = covered(n.face, n.Bounds)
	}
	o := f.outlines[0]
	bounds := o.Bounds()
	reach := max(bounds.W(), bounds.H())/2 + 14
	for out := max(1.2, min(bounds.W(), bounds.H())/4); out <= reach; out += 1.6 {
		for k := range 16 {
			way := geometry.Pt(1, 0).Turn(geometry.Angle(k)*22.5 + 11.25*geometry.Angle(n.pass))
			middle := f.centre.Add(way.Mul(float64(out)))
			label := n.label(text, middle)
			box := label.Extent()
			// The leader ends a little inside the print's edge.
			end := middle
			for !o.Contains(end) {
				end = end.Sub(way.Mul(0.1))
			}
			if end == middle {
				continue
			}
			for in := leaderIn; in > 0; in -= leaderIn / 4 {
				if p := end.Sub(way.Mul(float64(in))); o.Contains(p) {
					end = p
					break
				}
			}
			start := leave(box.Grow(0.4), middle, end)
			if !n.vacant(box.Grow(0.3), start, end) {
				continue
			}
			role := paper.Role{Kind: RoleLeader}
			n.Stamp(paper.NewShape(geometry.Line(start, end)), paper.Place{}, paper.Pen{Width: leaderPen}, role)
			n.StampFill(paper.Disc(leaderDot), paper.Place{At: end}, paper.Ink{}, role)
			n.write(label)
			n.crowd.Take(geometry.RectAround(end, geometry.Size{W: 2 * leaderDot, H: 2 * leaderDot}))
			for t := 0.0; t < 1; t += 0.1 {
				n.crowd.Take(geometry.Line(start.Add(end.Sub(start).Mul(t)), start.Add(end.Sub(start).Mul(t+0.1))).Bounds().Grow(0.2))
			}
			return
		}
	}
}

// vacant tells whether a number may stand in a box on the cloth, no print or line there, and its
// leader run to its print without crossing another mark.
func (n numbering) vacant(box geometry.Rect, start, end geometry.Point) bool {
	if !n.cloth.Holds(box) || !n.crowd.Free(box) || !n.lines.Free(box) {
		return false
	}
	for _, prints := range n.covered {
		if !prints.Free(box) {
			return false
		}
	}
	steps := math.Ceil(float64(start.Distance(end) / 0.5))
	for i := 0.0; i < steps; i++ {
		p := start.Add(end.Sub(start).Mul((i + 0.5) / steps))
		if !n.crowd.Free(geometry.RectAround(p, geometry.Size{W: 0.5, H: 0.5})) {
			return false
		}
	}
	return true
}

// leave returns where the way from the middle of a box to a point leaves the box.
func leave(box geometry.Rect, middle, to geometry.Point) geometry.Point {
	d := to.Sub(middle)
	t := 1.0
	if d.X != 0 {
		t = min(t, math.Abs(float64(box.W()/2/d.X)))
	}
	if d.Y != 0 {
		t = min(t, math.Abs(float64(box.H()/2/d.Y)))
	}
	return middle.Add(d.Mul(t))
}
