package geometry

import "math"

// Polygon is a closed figure given by its corners; the last joins the first.
// Simple polygons only (no side crosses another): see Crossing.
type Polygon []Point

// Bounds returns the least upright rectangle that holds p.
func (p Polygon) Bounds() Rect {
	if len(p) == 0 {
		return Rect{}
	}
	r := Rect{p[0], p[0]}
	for _, q := range p[1:] {
		r = r.Union(Rect{q, q})
	}
	return r
}

// Area returns the area in square millimetres, whichever way round the corners run
// (the shoelace formula).
func (p Polygon) Area() float64 {
	var sum float64
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += float64(a.X*b.Y - b.X*a.Y)
	}
	return math.Abs(sum) / 2
}

// Move returns p moved by d.
func (p Polygon) Move(d Point) Polygon {
	q := make(Polygon, len(p))
	for i, a := range p {
		q[i] = a.Add(d)
	}
	return q
}

// Turn returns p turned by a about (0, 0).
func (p Polygon) Turn(a Angle) Polygon {
	q := make(Polygon, len(p))
	for i, c := range p {
		q[i] = c.Turn(a)
	}
	return q
}

// Contains tells whether q lies in p; a point within Tolerance of a side does.
func (p Polygon) Contains(q Point) bool {
	in := false
	for i, a := range p {
		b := p[(i+1)%len(p)]
		if segmentDistance(q, a, b) <= Tolerance {
			return true
		}
		if (a.Y > q.Y) != (b.Y > q.Y) &&
			q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// EdgeDistance returns the distance of q from the nearest side of p, inside or out.
func (p Polygon) EdgeDistance(q Point) Length {
	d := Length(math.Inf(1))
	for i, a := range p {
		d = min(d, segmentDistance(q, a, p[(i+1)%len(p)]))
	}
	return d
}

// sidesDistance returns the least distance between a side of p and a side of q; 0 where
// two of them cross.
func (p Polygon) sidesDistance(q Polygon) Length {
	d := Length(math.Inf(1))
	for i, a := range p {
		b := p[(i+1)%len(p)]
		for j, c := range q {
			e := q[(j+1)%len(q)]
			if cross(a, b, c, e) {
				return 0
			}
			d = min(d, segmentDistance(a, c, e), segmentDistance(b, c, e),
				segmentDistance(c, a, b), segmentDistance(e, a, b))
		}
	}
	return d
}

// Crossing returns the first two sides that cross or touch without being neighbours,
// each named by the index of its first corner; ok is false for a simple polygon.
func (p Polygon) Crossing() (i, j int, ok bool) {
	n := len(p)
	for i := range p {
		a, b := p[i], p[(i+1)%n]
		for j := i + 1; j < n; j++ {
			c, d := p[j], p[(j+1)%n]
			switch {
			case j == i+1:
				if foldsBack(a, b, d) {
					return i, j, true
				}
			case (j+1)%n == i:
				if foldsBack(c, d, b) {
					return i, j, true
				}
			default:
				if cross(a, b, c, d) || segmentDistance(a, c, d) <= Tolerance ||
					segmentDistance(b, c, d) <= Tolerance || segmentDistance(c, a, b) <= Tolerance ||
					segmentDistance(d, a, b) <= Tolerance {
					return i, j, true
				}
			}
		}
	}
	return 0, 0, false
}

// foldsBack tells whether the side b to c lies back along the side a to b.
func foldsBack(a, b, c Point) bool {
	return segmentDistance(c, a, b) <= Tolerance || segmentDistance(a, b, c) <= Tolerance
}

// cross tells whether the open pieces a-b and c-d cut each other.
func cross(a, b, c, d Point) bool {
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// side tells on which side of the line a to b the point c lies: -1, 0 (on it, within
// Tolerance) or 1.
func side(a, b, c Point) int {
	ab, ac := b.Sub(a), c.Sub(a)
	cr := float64(ab.X*ac.Y - ab.Y*ac.X)
	t := float64(Tolerance) * math.Max(1e-9, float64(ab.Norm()))
	switch {
	case cr > t:
		return 1
	case cr < -t:
		return -1
	}
	return 0
}
