package geometry_test

import (
	"math"
	"math/rand/v2"

	"github.com/paulmach/orb"

	. "underlay/geometry"
)

// star returns a random polygon whose corners go once round the centre, so that no side
// crosses another; about half of its corners point inwards.
func star(rnd *rand.Rand, centre Point, radius Length, n int) Polygon {
	p := make(Polygon, n)
	for i := range p {
		turn := Angle((float64(i) + 0.8*rnd.Float64()) * 360 / float64(n))
		r := float64(radius) * (0.25 + 0.75*rnd.Float64())
		p[i] = Pt(1, 0).Turn(turn).Mul(r).Add(centre)
	}
	return p
}

// stairs returns a random polygon of upright sides on a whole-number grid: a row of columns
// of random top and bottom. Many sides lie in line, and many are equally far apart.
func stairs(rnd *rand.Rand, columns int, step Length) Polygon {
	var top, bottom Polygon
	for i := range columns {
		x := step * Length(i)
		y := -step * Length(1+rnd.IntN(4))
		z := step * Length(1+rnd.IntN(4))
		top = append(top, Pt(x, y), Pt(x+step, y))
		bottom = append(bottom, Pt(x, z), Pt(x+step, z))
	}
	for i := range bottom {
		top = append(top, bottom[len(bottom)-1-i])
	}
	var p Polygon
	for i, c := range top {
		if c != top[(i+1)%len(top)] {
			p = append(p, c)
		}
	}
	return p
}

// convex returns a random polygon all corners of which point outwards: corners on a circle,
// squeezed and turned.
func convex(rnd *rand.Rand, radius Length, n int) Polygon {
	p := make(Polygon, n)
	lean, flat := Angle(360*rnd.Float64()), Length(0.3+0.7*rnd.Float64())
	for i := range p {
		c := Pt(radius, 0).Turn(Angle((float64(i) + 0.9*rnd.Float64()) * 360 / float64(n)))
		p[i] = Pt(c.X, c.Y*flat).Turn(lean)
	}
	return p
}

// ring returns p for the library orb.
func ring(p Polygon) orb.Ring {
	r := make(orb.Ring, 0, len(p)+1)
	for _, c := range p {
		r = append(r, orb.Point{float64(c.X), float64(c.Y)})
	}
	return append(r, r[0])
}

func orbPoint(p Point) orb.Point { return orb.Point{float64(p.X), float64(p.Y)} }

// flat returns a piece of a path as a polygon, each curve cut into n.
func flat(p Piece, n int) Polygon {
	points, at := Polygon{p.Start}, p.Start
	for _, s := range p.Steps {
		if s.Curved {
			for k := 1; k < n; k++ {
				points = append(points, bezier(at, s, float64(k)/float64(n)))
			}
		}
		points = append(points, s.To)
		at = s.To
	}
	if p.Closed && len(points) > 1 && points[len(points)-1] == p.Start {
		points = points[:len(points)-1]
	}
	return points
}

// bezier returns the point t along the curve of s from a (Bernstein's form).
func bezier(a Point, s Step, t float64) Point {
	u := 1 - t
	return a.Mul(u * u * u).Add(s.C1.Mul(3 * u * u * t)).Add(s.C2.Mul(3 * u * t * t)).Add(s.To.Mul(t * t * t))
}

// within picks a point of r.
func within(rnd *rand.Rand, r Rect) Point {
	return Pt(r.Min.X+r.W()*Length(rnd.Float64()), r.Min.Y+r.H()*Length(rnd.Float64()))
}

// near tells whether a and b are the same to a millionth of a millimetre.
func near(a, b Length) bool { return math.Abs(float64(a-b)) <= 1e-6 }

// seeded returns random numbers that are the same on every run.
func seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1)) }
