package geometry

import "math"

// Outline is the edge of a block's face, of its wood, or of an item: a circle or a simple
// polygon. The zero Outline is no outline at all.
type Outline struct {
	centre  Point
	radius  Length
	corners Polygon
}

// RectOutline returns the outline of an upright rectangle.
func RectOutline(r Rect) Outline { return Outline{corners: r.Polygon()} }

// CircleOutline returns a circle; no outline where the radius is not above 0.
func CircleOutline(centre Point, radius Length) Outline {
	if !(radius > 0) {
		return Outline{}
	}
	return Outline{centre: centre, radius: radius}
}

// PolygonOutline returns the outline of a simple polygon.
func PolygonOutline(p Polygon) Outline { return Outline{corners: p} }

// HexagonOutline returns a hexagon that fills r: flat sides left and right, a point at the
// top and at the bottom. It is regular where the height is 2/sqrt(3) of the width.
func HexagonOutline(r Rect) Outline {
	x, y, q := r.Centre().X, r.Min.Y, r.H()/4
	return Outline{corners: Polygon{
		{x, y}, {r.Max.X, y + q}, {r.Max.X, y + 3*q}, {x, r.Max.Y}, {r.Min.X, y + 3*q}, {r.Min.X, y + q},
	}}
}

// None tells whether there is no outline. No outline has no bounds, holds nothing, and is
// held by all.
func (o Outline) None() bool { return o.radius == 0 && len(o.corners) == 0 }

// Round tells whether o is a circle, and gives its centre and radius.
func (o Outline) Round() (centre Point, radius Length, ok bool) {
	return o.centre, o.radius, o.radius > 0
}

// Corners returns the corners; a circle has none.
func (o Outline) Corners() Polygon { return o.corners }

// Upright tells whether o is an upright rectangle, and which.
func (o Outline) Upright() (Rect, bool) {
	if len(o.corners) != 4 {
		return Rect{}, false
	}
	b := o.corners.Bounds()
	for _, c := range o.corners {
		if !((c.X-b.Min.X).Abs() <= Tolerance || (c.X-b.Max.X).Abs() <= Tolerance) ||
			!((c.Y-b.Min.Y).Abs() <= Tolerance || (c.Y-b.Max.Y).Abs() <= Tolerance) {
			return Rect{}, false
		}
	}
	return b, math.Abs(o.corners.Area()-float64(b.W()*b.H())) <= float64(Tolerance)*float64(b.W()+b.H())
}

// Bounds returns the least upright rectangle that holds o.
func (o Outline) Bounds() Rect {
	if o.radius > 0 {
		return RectAround(o.centre, Size{2 * o.radius, 2 * o.radius})
	}
	return o.corners.Bounds()
}

// Area returns the area in square millimetres.
func (o Outline) Area() float64 {
	if o.radius > 0 {
		return math.Pi * float64(o.radius*o.radius)
	}
	return o.corners.Area()
}

// Move returns o moved by d.
func (o Outline) Move(d Point) Outline {
	return Outline{o.centre.Add(d), o.radius, o.corners.Move(d)}
}

// Turn returns o turned by a about (0, 0).
func (o Outline) Turn(a Angle) Outline {
	if a == 0 {
		return o
	}
	return Outline{o.centre.Turn(a), o.radius, o.corners.Turn(a)}
}

// Contains tells whether p lies in o or on its edge, within Tolerance.
func (o Outline) Contains(p Point) bool {
	if o.radius > 0 {
		return p.Distance(o.centre) <= o.radius+Tolerance
	}
	return o.corners.Contains(p)
}

// HoldsClear tells whether inner lies wholly in o and keeps at least clear from its edge,
// within Tolerance. A clear below 0 counts as 0.
func (o Outline) HoldsClear(inner Outline, clear Length) bool {
	clear = max(clear, 0)
	if o.radius > 0 {
		if inner.radius > 0 {
			return inner.centre.Distance(o.centre)+inner.radius <= o.radius-clear+Tolerance
		}
		for _, c := range inner.corners {
			if c.Distance(o.centre) > o.radius-clear+Tolerance {
				return false
			}
		}
		return true
	}
	if inner.radius > 0 {
		return o.corners.Contains(inner.centre) &&
			o.corners.EdgeDistance(inner.centre)-inner.radius >= clear-Tolerance
	}
	for _, c := range inner.corners {
		if !o.corners.Contains(c) {
			return false
		}
	}
	if clear <= Tolerance {
		return o.corners.holdsEdge(inner.corners)
	}
	return o.corners.sidesDistance(inner.corners) >= clear-Tolerance
}

// Distance returns the plain cloth between two outlines: 0 where they touch or overlap,
// without end where one is no outline.
func (o Outline) Distance(p Outline) Length {
	switch {
	case o.None() || p.None():
		return Length(math.Inf(1))
	case o.radius > 0 && p.radius > 0:
		return max(0, o.centre.Distance(p.centre)-o.radius-p.radius)
	case o.radius > 0:
		if p.corners.Contains(o.centre) {
			return 0
		}
		return max(0, p.corners.EdgeDistance(o.centre)-o.radius)
	case p.radius > 0:
		return p.Distance(o)
	}
	if o.corners.Contains(p.corners[0]) || p.corners.Contains(o.corners[0]) {
		return 0
	}
	return o.corners.sidesDistance(p.corners)
}

// Stretch returns o drawn out from (0, 0), by kx across and ky down. A circle stays one: it is
// stretched by the lesser of the two.
func (o Outline) Stretch(kx, ky float64) Outline {
	p := make(Polygon, len(o.corners))
	for i, c := range o.corners {
		p[i] = Point{c.X * Length(kx), c.Y * Length(ky)}
	}
	centre := Point{o.centre.X * Length(kx), o.centre.Y * Length(ky)}
	return Outline{centre, o.radius * Length(math.Min(kx, ky)), p}
}
