package guide

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// The signs of the first corner, one for each pass of a face in turn.
const (
	dotSign = iota
	ringSign
	triangleSign
	openTriangleSign
	squareSign
	signKinds
)

// sign is the mark in the corner of a print that is put down first.
type sign struct {
	kind   int
	radius geometry.Length // of the circle it fills
	shape  *paper.Shape
	pen    paper.Pen // of an open one
}

// open tells whether the sign is drawn in outline.
func (s sign) open() bool { return s.kind == ringSign || s.kind == openTriangleSign }

// newSign returns the sign of a pass, for a block of the size.
func newSign(pass int, block geometry.Size) sign {
	side := min(block.W, block.H)
	r := 0.65 * geometry.Millimetre
	switch {
	case side >= largeSide:
		r = 1.1
	case side >= middleSide:
		r = 0.85
	}
	s := sign{kind: pass % signKinds, radius: min(r, side/6)}
	s.pen = paper.Pen{Width: 0.35}
	if s.radius < 0.8 {
		s.pen.Width = 0.25
	}
	inner := s.radius - s.pen.Width/2
	ring := geometry.CircleOutline(geometry.Point{}, inner)
	var corners geometry.Polygon
	turned := func(n int, r geometry.Length, first geometry.Angle) {
		for i := range n {
			corners = append(corners, geometry.Pt(0, -r).Turn(first+geometry.Angle(i*360/n)))
		}
	}
	switch s.kind {
	case dotSign:
		s.shape = paper.Disc(s.radius)
		return s
	case ringSign:
		s.shape = paper.NewShape(ring.Path())
		return s
	case triangleSign:
		turned(3, s.radius*1.25, 0)
	case openTriangleSign:
		turned(3, s.radius*1.25-s.pen.Width, 0)
	case squareSign:
		turned(4, s.radius*1.2, 45)
	}
	s.shape = paper.NewShape(corners.Path())
	return s
}

// draw puts the sign down.
func (s sign) draw(d *paper.Drawing, at geometry.Point, role paper.Role) {
	if s.open() {
		d.Stamp(s.shape, paper.Place{At: at}, s.pen, role)
		return
	}
	d.StampFill(s.shape, paper.Place{At: at}, paper.Ink{}, role)
}

// DrawSign draws the sign of a face's i-th pass, as it is on prints of a block of the size.
func DrawSign(d *paper.Drawing, i int, block geometry.Size, at geometry.Point) {
	newSign(i, block).draw(d, at, paper.Role{Kind: RoleSign})
}

// box returns what the sign takes up.
func (s sign) box(at geometry.Point) geometry.Rect {
	r := s.radius * 1.3
	return geometry.RectAround(at, geometry.Size{W: 2 * r, H: 2 * r})
}

// signClear is the paper left between a sign and the edges it stands by.
const signClear = 0.35 * geometry.Millimetre

// drawSigns puts the pass's sign in the first corner of every print, inside the footprint and
// clear of its edges; farther in where an earlier pass has its own there.
func (g *guide) drawSigns(p plan.FacePass, pass int) {
	type cornerOf struct {
		block  *job.Block
		corner geometry.Point
	}
	corners := map[cornerOf][]geometry.Point{} // in the block's frame: the places for each corner
	signs := map[*job.Block]sign{}
	for _, b := range p.Blocks() {
		signs[b] = newSign(pass, b.Size)
	}
	for _, print := range p.Prints {
		s := signs[print.Block]
		corner := print.TouchDown.Sub(print.Origin).Turn(-print.Turn)
		key := cornerOf{print.Block, geometry.Pt(geometry.Length(math.Round(float64(corner.X)*1e3)), geometry.Length(math.Round(float64(corner.Y)*1e3)))}
		places, known := corners[key]
		if !known {
			places = signPlaces(print.Block, corner, s.radius)
			corners[key] = places
		}
		at := places[0].Turn(print.Turn).Add(print.Origin)
		for _, q := range places {
			if q = q.Turn(print.Turn).Add(print.Origin); g.crowd.Free(s.box(q)) {
				at = q
				break
			}
		}
		s.draw(g.Drawing, at, paper.Role{Kind: RoleSign})
		g.crowd.Take(s.box(at))
	}
}

// signPlaces returns places for a sign by a corner of a face, the best first, all in the block's
// frame: on the line that halves the corner, as near to it as both edges allow, then farther in.
// Of a corner too sharp for the sign it is the place near by on that line farthest from all edges.
func signPlaces(b *job.Block, corner geometry.Point, r geometry.Length) []geometry.Point {
	in := geometry.Point{}.Sub(corner)
	clear := func(p geometry.Point) geometry.Length { return b.Size.W/2 - p.Norm() }
	if corners := b.Face.Corners(); len(corners) > 0 {
		in = inward(corners, corner)
		clear = func(p geometry.Point) geometry.Length {
			if !corners.Contains(p) {
				return -1
			}
			return corners.EdgeDistance(p)
		}
	}
	if in.Norm() <= geometry.Tolerance {
		return []geometry.Point{corner}
	}
	in = in.Mul(1 / float64(in.Norm()))
	best, most := corner, clear(corner)
	var places []geometry.Point
	far := max(4.8, min(8.8, 0.48*min(b.Size.W, b.Size.H)))
	for t := r; t <= far; t += r / 10 {
		p := corner.Add(in.Mul(float64(t)))
		c := clear(p)
		if c > most+0.01 {
			best, most = p, c
		}
		apart := len(places) == 0 || p.Distance(places[len(places)-1]) >= 2.6*r
		if c >= r+signClear && apart {
			if places = append(places, p); len(places) == 5 {
				break
			}
		}
	}
	if len(places) == 0 {
		places = append(places, best)
	}
	return places
}

// inward returns the direction that halves a corner of a polygon, into it.
func inward(corners geometry.Polygon, corner geometry.Point) geometry.Point {
	i := 0
	for k, c := range corners {
		if c.Distance(corner) < corners[i].Distance(corner) {
			i = k
		}
	}
	n := len(corners)
	unit := func(p geometry.Point) geometry.Point { return p.Mul(1 / float64(p.Norm())) }
	a, b := unit(corners[(i+1)%n].Sub(corners[i])), unit(corners[(i+n-1)%n].Sub(corners[i]))
	half := a.Add(b)
	if half.Norm() <= 1e-6 { // the edges go straight on
		half = geometry.Pt(-a.Y, a.X)
	}
	half = unit(half)
	near := 0.01 * min(corners[(i+1)%n].Distance(corners[i]), corners[(i+n-1)%n].Distance(corners[i]))
	if !corners.Contains(corners[i].Add(half.Mul(float64(near)))) {
		half = half.Mul(-1)
	}
	return half
}
