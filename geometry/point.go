package geometry

import "math"

// Point is a place, or the step from one place to another.
type Point struct{ X, Y Length }

// Pt is shorthand for Point{x, y}.
func Pt(x, y Length) Point { return Point{x, y} }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns the step k times as long.
func (p Point) Mul(k float64) Point { return Point{p.X * Length(k), p.Y * Length(k)} }

// Turn returns p turned by a about (0, 0).
func (p Point) Turn(a Angle) Point { return a.Turner()(p) }

// Turner returns what turns points by a about (0, 0), for many of them.
func (a Angle) Turner() func(Point) Point {
	s, c := a.SinCos()
	sin, cos := Length(s), Length(c)
	return func(p Point) Point { return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos} }
}

// Norm returns the distance of p from (0, 0).
func (p Point) Norm() Length { return Length(math.Hypot(float64(p.X), float64(p.Y))) }

// Distance returns the distance between two points.
func (p Point) Distance(q Point) Length { return p.Sub(q).Norm() }

// Near tells whether two points are the same within Tolerance on both axes.
func (p Point) Near(q Point) bool {
	return (p.X-q.X).Abs() <= Tolerance && (p.Y-q.Y).Abs() <= Tolerance
}

// segmentDistance returns the distance of p from the straight piece a to b.
func segmentDistance(p, a, b Point) Length {
	d := b.Sub(a)
	n := float64(d.X*d.X + d.Y*d.Y)
	if n == 0 {
		return p.Distance(a)
	}
	q := p.Sub(a)
	t := float64(q.X*d.X+q.Y*d.Y) / n
	return p.Distance(a.Add(d.Mul(math.Max(0, math.Min(1, t)))))
}
