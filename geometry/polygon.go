package geometry

import (
	"math"
	"slices"
)

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
func (p Polygon) Area() float64 { return math.Abs(p.signedArea()) }

// signedArea returns the area, positive where the corners run clockwise as seen.
func (p Polygon) signedArea() float64 {
	var sum float64
	for i, a := range p {
		// From the first corner, so that a small figure far off loses no figures.
		b, c := a.Sub(p[0]), p[(i+1)%len(p)].Sub(p[0])
		sum += float64(b.X*c.Y - c.X*b.Y)
	}
	return sum / 2
}

// Jutting returns the corners of p that point outwards, in their order. A corner on a straight
// side is none.
func (p Polygon) Jutting() Polygon {
	out := make(Polygon, 0, len(p))
	way := 1
	if p.signedArea() < 0 {
		way = -1
	}
	for i, c := range p {
		if side(p[(i+len(p)-1)%len(p)], c, p[(i+1)%len(p)]) == way {
			out = append(out, c)
		}
	}
	return out
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
// two of them meet.
func (p Polygon) sidesDistance(q Polygon) Length {
	d := Length(math.Inf(1))
	for i, a := range p {
		b := p[(i+1)%len(p)]
		for j, c := range q {
			e := q[(j+1)%len(q)]
			if meet(a, b, c, e) {
				return 0
			}
			d = min(d, segmentDistance(a, c, e), segmentDistance(b, c, e),
				segmentDistance(c, a, b), segmentDistance(e, a, b))
		}
	}
	return d
}

// holdsEdge tells whether every side of q lies in p, given that its corners do; as p has no
// holes, it then holds all of q. Each side is judged by the middles of the stretches into
// which the sides of p cut it: a corner on a side of p may have the outside next to it.
func (p Polygon) holdsEdge(q Polygon) bool {
	for i, a := range q {
		b := q[(i+1)%len(q)]
		box := Polygon{a, b}.Bounds().Grow(Tolerance)
		places := []float64{0, 1}
		for j, c := range p {
			d := p[(j+1)%len(p)]
			if box.Touches(Polygon{c, d}.Bounds()) {
				places = line(a, b).meetLine(places, c, d.Sub(c))
			}
		}
		places = slices.DeleteFunc(places, func(t float64) bool { return !(t >= 0 && t <= 1) })
		slices.Sort(places)
		for k, to := range places[1:] {
			if !p.Contains(line(a, b).at((places[k] + to) / 2)) {
				return false
			}
		}
	}
	return true
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

// meet tells whether the pieces a-b and c-d, ends included, share a point. No slack: signs
// worked out from the same corners agree, so a way through a corner is not missed.
func meet(a, b, c, d Point) bool {
	turn := func(a, b, c Point) float64 {
		return float64((b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X))
	}
	// Of pieces in one line the signs say nothing, whether they are 0 or what rounding left.
	if i := (Polygon{a, b}).Bounds().Intersect(Polygon{c, d}.Bounds()); i.W() < 0 || i.H() < 0 {
		return false
	}
	return opposite(turn(a, b, c), turn(a, b, d)) && opposite(turn(c, d, a), turn(c, d, b))
}

// opposite tells whether a and b have not the same sign.
func opposite(a, b float64) bool { return a <= 0 && b >= 0 || a >= 0 && b <= 0 }

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
