package geometry

import (
	"math/rand/v2"
	"testing"
)

// TestClearOf: outlines are clear of each other where they are as far apart as Distance says.
func TestClearOf(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	faces := []Outline{
		RectOutline(RectAround(Point{}, Size{40, 24})), CircleOutline(Point{}, 15), HexagonOutline(RectAround(Point{}, Size{30, 35})),
		PolygonOutline(Polygon{{-20, -15}, {20, -15}, {20, 15}, {5, 15}, {0, -5}, {-6, 15}, {-20, 15}}),
	}
	for range 20000 {
		a := faces[r.IntN(4)].Turn(Angle(r.IntN(360))).Move(Pt(Length(r.Float64()*60), Length(r.Float64()*60)))
		b := faces[r.IntN(4)].Turn(Angle(r.IntN(360)))
		gap := []Length{0, 0.5, 4, 10}[r.IntN(4)]
		d := a.Distance(b)
		if (d - gap).Abs() < 3*Tolerance {
			continue
		}
		if got := a.ClearOf(b, gap); got != (d > gap) {
			t.Fatalf("%v and %v, %v apart: clear by %v is %v", a, b, d, gap, got)
		}
	}
	square := RectOutline(RectAt(Point{}, Size{10, 10}))
	if !square.ClearOf(square.Move(Pt(10+2*Tolerance, 0)), 0) || square.ClearOf(square.Move(Pt(10-2*Tolerance, 0)), 0) {
		t.Error("squares that touch")
	}
	if !square.ClearOf(Outline{}, 5) {
		t.Error("no outline is in the way")
	}
}
