package geometry

import (
	"cmp"
	"math"
	"slices"
)

// Inset returns the edge of the points that lie in o at least d from its edge: o drawn in by
// d, with an arc round each corner that points inwards. Every piece of the path is closed and
// runs clockwise as seen; there are several where drawing in cuts o apart. The bounds are
// those of the true edge, not of control points. A d of 0 or less gives o itself. Where no
// area is left, ok is false.
func (o Outline) Inset(d Length) (path Path, bounds Rect, ok bool) {
	if o.None() || math.IsNaN(float64(d)) {
		return nil, Rect{}, false
	}
	if d <= 0 {
		return o.Path(), o.Bounds(), true
	}
	// What is left is narrower than o by d on either side.
	if b := o.Bounds(); min(b.W(), b.H())-2*d <= Tolerance {
		return nil, Rect{}, false
	}
	if o.radius > 0 {
		c := CircleOutline(o.centre, o.radius-d)
		return c.Path(), c.Bounds(), true
	}
	if r, upright := o.Upright(); upright {
		r = r.Grow(-d)
		return r.Polygon().Path(), r, true
	}
	for _, chain := range chains(o.corners.drawnIn(d)) {
		if chain.area() <= float64(Tolerance*chain.length()) {
			continue
		}
		path = append(path, chain.piece())
		if !ok {
			bounds = chain.bounds()
		}
		bounds, ok = bounds.Union(chain.bounds()), true
	}
	return path, bounds, ok
}

// drawnIn returns the parts of the edge of p drawn in by d, in no order. They are looked for
// on the sides moved inwards by d and on the arcs of radius d about the corners that point
// inwards, for every point at d from the edge of p is at d from a side or from a corner.
// What remains of these is what no other side is nearer to than d.
func (p Polygon) drawnIn(d Length) []curve {
	sides := p.sides()
	slack := 1e-9*Millimetre + 1e-12*max(p.Bounds().W(), p.Bounds().H())
	var parts []curve
	for i, s := range sides {
		in := s.normal().Mul(float64(d))
		parts = append(parts, line(s.a.Add(in), s.b.Add(in)).clear(sides, d, slack)...)
		u, v := s.u, sides[(i+1)%len(sides)].u
		if turn := math.Atan2(float64(u.X*v.Y-u.Y*v.X), float64(u.X*v.X+u.Y*v.Y)); turn < 0 {
			start := math.Atan2(float64(in.Y), float64(in.X))
			parts = append(parts, arc(s.b, d, start, turn).clear(sides, d, slack)...)
		}
	}
	return parts
}

// edgeSide is a side of a polygon from a to b, in the direction u of length 1, with the
// inside on its right as seen.
type edgeSide struct {
	a, b, u Point
	box     Rect
}

// normal points inwards, at right angles to the side, with length 1.
func (s edgeSide) normal() Point { return Point{-s.u.Y, s.u.X} }

// sides returns the sides of p, clockwise as seen, those without length left out.
func (p Polygon) sides() []edgeSide {
	if p.signedArea() < 0 {
		p = slices.Clone(p)
		slices.Reverse(p)
	}
	var sides []edgeSide
	for i, a := range p {
		b := p[(i+1)%len(p)]
		if l := a.Distance(b); l > 0 {
			box := Rect{a, a}.Union(Rect{b, b})
			sides = append(sides, edgeSide{a, b, b.Sub(a).Mul(float64(1 / l)), box})
		}
	}
	return sides
}

// span is a stretch of a curve.
type span struct{ from, to float64 }

// clear returns the parts of c that keep d from every side. How near c comes is judged less
// slack, so that it is left whole along the side it belongs to, and where it only touches;
// where it is cut is worked out without, so that cut ends meet.
func (c curve) clear(sides []edgeSide, d, slack Length) []curve {
	var near []span
	var places []float64
	box := c.bounds().Grow(d)
	for _, s := range sides {
		if !box.Touches(s.box) {
			continue
		}
		in := s.normal().Mul(float64(d))
		places = c.meetLine(places[:0], s.a.Add(in), s.u)
		places = c.meetLine(places, s.a.Sub(in), s.u)
		places = c.meetCircle(places, s.a, d)
		places = c.meetCircle(places, s.b, d)
		places = slices.DeleteFunc(places, func(t float64) bool { return !(t > 0 && t < 1) })
		places = append(places, 0, 1)
		slices.Sort(places)
		for i, to := range places[1:] {
			from := places[i]
			if segmentDistance(c.at((from+to)/2), s.a, s.b) < d-slack {
				near = append(near, span{from, to})
				if from == 0 && to == 1 {
					return nil
				}
			}
		}
	}
	slices.SortFunc(near, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	var parts []curve
	at := 0.0
	for _, n := range append(near, span{1, 1}) {
		if part := c.part(at, n.from); n.from > at && part.length() > Tolerance {
			parts = append(parts, part)
		}
		at = max(at, n.to)
	}
	return parts
}
