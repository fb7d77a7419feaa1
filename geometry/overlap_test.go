package geometry

import "testing"

func TestOverlaps(t *testing.T) {
	square := func(x, y, side Length) Outline { return RectOutline(RectAt(Pt(x, y), Size{side, side})) }
	ell := PolygonOutline(Polygon{{0, 0}, {40, 0}, {40, 20}, {20, 20}, {20, 40}, {0, 40}})
	circle := func(x, y, r Length) Outline { return CircleOutline(Pt(x, y), r) }
	for _, c := range []struct {
		name string
		a, b Outline
		want bool
	}{
		{"edge along edge", square(0, 0, 10), square(10, 0, 10), false},
		{"corner at corner", square(0, 0, 10), square(10, 10, 10), false},
		{"within the tolerance", square(0, 0, 10), square(10-Tolerance/2, 0, 10), false},
		{"a hair deep", square(0, 0, 10), square(10-1e-4, 0, 10), true},
		{"apart", square(0, 0, 10), square(10.1, 0, 10), false},
		{"one in the other", square(0, 0, 10), square(4, 4, 1), true},
		{"the same", square(0, 0, 10), square(0, 0, 10), true},
		{"as a cross", square(0, 0, 30), RectOutline(RectAt(Pt(10, -10), Size{5, 60})), true},
		{"corner in the dent, touching", ell, square(20, 20, 20), false},
		{"corner over the dent", ell, square(19.9, 19.9, 20), true},
		{"in the dent", ell, square(25, 25, 10), false},
		{"L along L", ell, PolygonOutline(Polygon{{40, 20}, {40, 40}, {20, 40}, {20, 20}}), false},
		{"circles that touch", circle(0, 0, 5), circle(10, 0, 5), false},
		{"circles", circle(0, 0, 5), circle(9.99, 0, 5), true},
		{"circle against a side", circle(-5, 5, 5), square(0, 0, 10), false},
		{"circle over a side", circle(-4.99, 5, 5), square(0, 0, 10), true},
		{"circle in a square", circle(5, 5, 1), square(0, 0, 10), true},
		{"square in a circle", circle(5, 5, 50), square(0, 0, 10), true},
		// The dent has its corner at (20, 20); the sides of the L are 7 and 5 from the centres.
		{"circle in the dent", circle(27, 27, 6.9), ell, false},
		{"circle over the dent", circle(25, 25, 7.1), ell, true},
		{"none", Outline{}, square(0, 0, 10), false},
	} {
		for _, swap := range []bool{false, true} {
			a, b := c.a, c.b
			if swap {
				a, b = b, a
			}
			for _, turn := range []Angle{0, 90, 33} {
				if got := a.Turn(turn).Overlaps(b.Turn(turn)); got != c.want {
					t.Errorf("%s, turned %v, swapped %v: %v", c.name, turn, swap, got)
				}
			}
		}
	}
}
