package readback

import (
	"math"

	"underlay/geometry"
	"underlay/testdata/pdfread"
)

// Corners returns the points of straight steps along a piece; of a curve enough of them that
// the steps leave it by much less than Off.
func Corners(p geometry.Piece) []geometry.Point {
	points := []geometry.Point{p.Start}
	for _, s := range p.Steps {
		a := points[len(points)-1]
		n := 1.0
		if s.Curved { // an eighth of a circle at most, so the bend is a tenth of the chord
			n = math.Ceil(math.Sqrt(50 * float64(s.To.Distance(a))))
		}
		for i := 1.0; i < n; i++ {
			t := i / n
			u := 1 - t
			points = append(points, a.Mul(u*u*u).Add(s.C1.Mul(3*u*u*t)).Add(s.C2.Mul(3*u*t*t)).Add(s.To.Mul(t*t*t)))
		}
		points = append(points, s.To)
	}
	// pdfium ends a closed piece where it began.
	if n := len(points); p.Closed && n > 2 && points[n-1].Distance(points[0]) <= Off {
		points = points[:n-1]
	}
	return points
}

// Line is a straight piece of a drawn line, and the path it belongs to.
type Line struct {
	A, B geometry.Point
	Of   *pdfread.Path
}

// Distance returns how far p is from the nearest point of the line.
func (l Line) Distance(p geometry.Point) geometry.Length {
	d, q := l.B.Sub(l.A), p.Sub(l.A)
	n := float64(d.X*d.X + d.Y*d.Y)
	t := 0.0
	if n > 0 {
		t = math.Max(0, math.Min(1, float64(q.X*d.X+q.Y*d.Y)/n))
	}
	return q.Sub(d.Mul(t)).Norm()
}

// Lines are drawn lines, found by where they run.
type Lines struct {
	All   []Line
	cells map[[2]int][]int
}

func newLines() *Lines { return &Lines{cells: map[[2]int][]int{}} }

func cellOf(l geometry.Length) int {
	const side = 10 * geometry.Millimetre
	return int(math.Floor(float64(l / side)))
}

func (x *Lines) add(l Line) {
	x.All = append(x.All, l)
	b := geometry.Rect{Min: l.A, Max: l.A}.Union(geometry.Rect{Min: l.B, Max: l.B}).Grow(Off)
	for i := cellOf(b.Min.X); i <= cellOf(b.Max.X); i++ {
		for j := cellOf(b.Min.Y); j <= cellOf(b.Max.Y); j++ {
			x.cells[[2]int{i, j}] = append(x.cells[[2]int{i, j}], len(x.All)-1)
		}
	}
}

// On tells whether a drawn line runs through p.
func (x *Lines) On(p geometry.Point) bool {
	for _, i := range x.cells[[2]int{cellOf(p.X), cellOf(p.Y)}] {
		if x.All[i].Distance(p) <= Off {
			return true
		}
	}
	return false
}
