package geometry

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestQuadrilateral: the triangle of 13, 14 and 15 has area 84 (any handbook: Heron's formula), and
// two of them on one diagonal 168; sides and diagonal measure as given.
func TestQuadrilateral(t *testing.T) {
	corners, ok := Quadrilateral([4]Length{13, 14, 13, 14}, 15)
	if area := Polygon(corners[:]).Area(); !ok || math.Abs(area-168) > 1e-9 {
		t.Errorf("two triangles of 84: %v", area)
	}
	corners, ok = Quadrilateral([4]Length{13, 14, 12, 9}, 15) // 9, 12, 15: a right angle, area 54
	if area := Polygon(corners[:]).Area(); !ok || math.Abs(area-84-54) > 1e-9 {
		t.Errorf("84 and 54: %v", area)
	}
	random := rand.New(rand.NewPCG(3, 9))
	closed := 0
	for range 2000 {
		var sides [4]Length
		for i := range sides {
			sides[i] = Length(300 + random.Float64()*300)
		}
		diagonal := Length(random.Float64() * 1300)
		c, ok := Quadrilateral(sides, diagonal)
		above, below := min(sides[0]+sides[1], sides[2]+sides[3]), max((sides[0]-sides[1]).Abs(), (sides[2]-sides[3]).Abs())
		if (above-diagonal).Abs() > 1 && (below-diagonal).Abs() > 1 && ok != (diagonal < above && diagonal > below) {
			t.Fatalf("%v with %v: closes is %v", sides, diagonal, ok)
		}
		if !ok {
			continue
		}
		closed++
		for i, side := range sides {
			if d := c[i].Distance(c[(i+1)%4]); (d - side).Abs() > 1e-9 {
				t.Fatalf("%v: side %d is %v", sides, i, d)
			}
		}
		if d := c[0].Distance(c[2]); (d - diagonal).Abs() > 1e-9 {
			t.Fatalf("%v: the diagonal is %v, not %v", sides, d, diagonal)
		}
		left, right := c[0].Add(c[3]), c[1].Add(c[2])
		if b := Polygon(c[:]).Bounds(); b.Min.Norm() > 1e-9 || (left.Y-right.Y).Abs() > 1e-9 || left.X >= right.X {
			t.Fatalf("%v, %v: bounds %v, the crease from %v to %v", sides, diagonal, b, left, right)
		}
	}
	if closed < 500 {
		t.Errorf("%d of them close", closed)
	}
}

// TestDrawnIn: what is drawn in keeps from each side what that side is given, and touches it.
func TestDrawnIn(t *testing.T) {
	square := Polygon{{0, 0}, {100, 0}, {100, 80}, {0, 80}}
	in := square.DrawnIn([]Length{10, 5, 20, 1})
	if b := in.Bounds(); b != (Rect{Point{1, 10}, Point{95, 60}}) || len(in) != 4 {
		t.Errorf("%v", in)
	}
	if in := square.DrawnIn([]Length{50, 0, 31, 0}); in != nil {
		t.Errorf("more than there is leaves %v", in)
	}
}
