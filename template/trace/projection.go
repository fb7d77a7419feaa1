package trace

import "math"

// point is a point of the photograph, in pixels, or of the window's frame, in millimetres, where sums
// are done on it.
type point struct{ x, y float64 }

func (p point) sub(q point) point        { return point{p.x - q.x, p.y - q.y} }
func (p point) add(q point) point        { return point{p.x + q.x, p.y + q.y} }
func (p point) mul(k float64) point      { return point{p.x * k, p.y * k} }
func (p point) norm() float64            { return math.Hypot(p.x, p.y) }
func (p point) distance(q point) float64 { return p.sub(q).norm() }
func cross(a, b point) float64           { return a.x*b.y - a.y*b.x }

// projection is a plane projective map, row by row.
type projection [9]float64

// apply returns where a point goes.
func (h projection) apply(p point) point {
	w := h[6]*p.x + h[7]*p.y + h[8]
	return point{(h[0]*p.x + h[1]*p.y + h[2]) / w, (h[3]*p.x + h[4]*p.y + h[5]) / w}
}

// disc returns where the middle of the ellipse lies that a disc becomes: not quite where the
// disc's middle goes. The map takes the disc's dual conic D to H D Hᵀ, whose last column is the
// middle (Hartley and Zisserman, Multiple View Geometry, 2nd ed., 2.2.3 and result 2.14).
func (h projection) disc(c point, radius float64) point {
	r2 := radius * radius
	// D times the last row of H.
	v := [3]float64{
		(r2-c.x*c.x)*h[6] - c.x*c.y*h[7] - c.x*h[8],
		-c.x*c.y*h[6] + (r2-c.y*c.y)*h[7] - c.y*h[8],
		-c.x*h[6] - c.y*h[7] - h[8],
	}
	row := func(i int) float64 { return h[i]*v[0] + h[i+1]*v[1] + h[i+2]*v[2] }
	return point{row(0) / row(6), row(3) / row(6)}
}

// scaling is a change of frame: the point mid becomes the origin, and 1 is scale long.
type scaling struct {
	mid   point
	scale float64
}

func (s scaling) apply(p point) point   { return p.sub(s.mid).mul(1 / s.scale) }
func (s scaling) unapply(p point) point { return p.mul(s.scale).add(s.mid) }

// fitted returns the map that takes each point of from to that of to: four points exactly, more
// with the least squares of the linear equations (direct linear transformation: Hartley and
// Zisserman, algorithm 4.1, in frames scaled as in 4.2, the last entry of the matrix 1: the origin
// lies amid the points and so never on the vanishing line). ok is false where they say nothing: three in
// a line.
func fitted(from, to []point) (h projection, ok bool) {
	n := newNormal(8)
	for i, p := range from {
		q := to[i]
		n.add([]float64{p.x, p.y, 1, 0, 0, 0, -q.x * p.x, -q.x * p.y}, q.x, 1)
		n.add([]float64{0, 0, 0, p.x, p.y, 1, -q.y * p.x, -q.y * p.y}, q.y, 1)
	}
	x, ok := n.solve()
	if !ok {
		return h, false
	}
	copy(h[:], x)
	h[8] = 1
	return h, true
}
