package geometry_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb/planar"

	. "underlay/geometry"
)

// polygons returns a mixed lot of simple polygons.
func polygons(seed uint64, n int) []Polygon {
	rnd := seeded(seed)
	var all []Polygon
	for i := range n {
		switch i % 3 {
		case 0:
			all = append(all, star(rnd, within(rnd, RectAround(Pt(0, 0), Size{W: 300, H: 300})), 100, 3+rnd.IntN(15)))
		case 1:
			all = append(all, stairs(rnd, 2+rnd.IntN(6), 25))
		default:
			all = append(all, stairs(rnd, 2+rnd.IntN(6), 25).Turn(Angle(360*rnd.Float64())))
		}
	}
	return all
}

func TestPolygonAgainstOrb(t *testing.T) {
	rnd := seeded(3)
	for i, p := range polygons(4, 90) {
		r := ring(p)
		if got, want := p.Area(), math.Abs(planar.Area(r)); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%d: area %v, orb has %v", i, got, want)
		}
		back := slices.Clone(p)
		slices.Reverse(back)
		if back.Area() != p.Area() && math.Abs(back.Area()-p.Area()) > 1e-9 {
			t.Errorf("%d: area %v the other way round, %v", i, back.Area(), p.Area())
		}
		if got, b := p.Bounds(), r.Bound(); got != (Rect{Pt(Length(b.Min[0]), Length(b.Min[1])), Pt(Length(b.Max[0]), Length(b.Max[1]))}) {
			t.Errorf("%d: bounds %v, orb has %v", i, got, b)
		}
		for range 100 {
			q := within(rnd, p.Bounds().Grow(20))
			far := planar.DistanceFrom(r, orbPoint(q))
			if got := p.EdgeDistance(q); math.Abs(float64(got)-far) > 1e-9 {
				t.Errorf("%d: %v is %v from the edge, orb has %v", i, q, got, far)
			}
			if got, want := p.Contains(q), planar.RingContains(r, orbPoint(q)); got != want && far > float64(Tolerance) {
				t.Errorf("%d: contains %v: %v, orb says %v", i, q, got, want)
			}
		}
	}
}

func TestPolygonContainsItsEdge(t *testing.T) {
	for i, p := range polygons(5, 60) {
		for k, a := range p {
			b := p[(k+1)%len(p)]
			u := b.Sub(a).Mul(1 / float64(b.Distance(a)))
			middle, out := a.Add(b).Mul(0.5), Pt(-u.Y, u.X)
			if !p.Contains(a) || !p.Contains(middle) || !p.Contains(middle.Add(out.Mul(0.9e-6))) || !p.Contains(middle.Sub(out.Mul(0.9e-6))) {
				t.Errorf("%d: side %d is not in the polygon", i, k)
			}
			// One of the two points 2 millionths off the side is outside.
			if p.Contains(middle.Add(out.Mul(2e-6))) == p.Contains(middle.Sub(out.Mul(2e-6))) {
				t.Errorf("%d: side %d has the same on both sides", i, k)
			}
		}
	}
}

func TestPolygonMoveAndTurnKeepShape(t *testing.T) {
	for i, p := range polygons(6, 30) {
		q := p.Turn(37).Move(Pt(12, -7))
		if math.Abs(q.Area()-p.Area()) > 1e-8 {
			t.Errorf("%d: area %v became %v", i, p.Area(), q.Area())
		}
		for k := range p {
			j := (k + 1) % len(p)
			if !near(p[k].Distance(p[j]), q[k].Distance(q[j])) {
				t.Errorf("%d: side %d changed", i, k)
			}
		}
	}
}

func TestCrossing(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		i, j int
		ok   bool
	}{
		{"triangle", Polygon{{0, 0}, {10, 0}, {5, 8}}, 0, 0, false},
		{"square", Polygon{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, 0, 0, false},
		{"square, the other way", Polygon{{0, 10}, {10, 10}, {10, 0}, {0, 0}}, 0, 0, false},
		{"inward corner", ell, 0, 0, false},
		{"corner in a straight side", Polygon{{0, 0}, {5, 0}, {10, 0}, {10, 10}, {0, 10}}, 0, 0, false},
		{"comb", comb, 0, 0, false},
		{"bow tie", Polygon{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, 0, 2, true},
		{"five-pointed star in one stroke", Polygon{{0, -10}, {6, 8}, {-9.5, -3}, {9.5, -3}, {-6, 8}}, 0, 2, true},
		{"corner on a side", Polygon{{0, 0}, {20, 0}, {20, 10}, {10, 0}, {0, 10}}, 0, 2, true},
		{"corner on a corner", Polygon{{0, 0}, {10, 5}, {20, 0}, {20, 10}, {10, 5}, {0, 10}}, 0, 3, true},
		{"corner a hair off a side", Polygon{{0, 0}, {20, 0}, {20, 10}, {10, 0.5e-6}, {0, 10}}, 0, 2, true},
		{"corner more than a hair off", Polygon{{0, 0}, {20, 0}, {20, 10}, {10, 2e-6}, {0, 10}}, 0, 0, false},
		{"folds back", Polygon{{0, 0}, {20, 0}, {10, 0}, {10, 10}}, 0, 1, true},
		{"folds back at the end", Polygon{{10, 0}, {10, 10}, {0, 0}, {20, 0}}, 0, 2, true},
		{"folds back where it closes", Polygon{{0, 0}, {20, 0}, {20, 10}, {5, 0}}, 0, 2, true},
		{"same corner twice", Polygon{{0, 0}, {10, 0}, {10, 0}, {5, 8}}, 0, 1, true},
		{"side over a side", Polygon{{0, 0}, {30, 0}, {30, 10}, {20, 10}, {20, 0}, {10, 0}, {10, 10}, {0, 10}}, 0, 3, true},
		{"two corners", Polygon{{0, 0}, {10, 0}}, 0, 1, true},
		{"all in one line", Polygon{{0, 0}, {10, 0}, {20, 0}}, 0, 2, true},
	} {
		i, j, ok := c.p.Crossing()
		if ok != c.ok || c.ok && (i != c.i || j != c.j) {
			t.Errorf("%s: sides %d and %d, %v; want %d and %d, %v", c.name, i, j, ok, c.i, c.j, c.ok)
		}
	}
	for i, p := range polygons(7, 60) {
		if a, b, crossed := p.Crossing(); crossed {
			t.Errorf("polygon %d is simple, but sides %d and %d are said to cross", i, a, b)
		}
		// Two corners that change places make a side cross another, unless it was a triangle.
		if n := len(p); n > 3 && i%3 == 0 {
			q := slices.Clone(p)
			q[0], q[1] = q[1], q[0]
			want := false
			for a := range q {
				for b := a + 2; b < n; b++ {
					if (b+1)%n != a && apart(q[a], q[a+1], q[b], q[(b+1)%n]) == 0 {
						want = true
					}
				}
			}
			if _, _, crossed := q.Crossing(); crossed != want {
				t.Errorf("polygon %d with two corners swapped: crossing %v, want %v", i, crossed, want)
			}
		}
	}
}

// apart returns 0 where the straight pieces a-b and c-d cross, else a number above 0: each
// is on both sides of the other where the areas of triangles change sign.
func apart(a, b, c, d Point) float64 {
	area := func(p, q, r Point) float64 {
		return float64(p.X*(q.Y-r.Y) + q.X*(r.Y-p.Y) + r.X*(p.Y-q.Y))
	}
	if area(a, b, c)*area(a, b, d) < 0 && area(c, d, a)*area(c, d, b) < 0 {
		return 0
	}
	return 1
}

// TestJutting: of an L, whichever way round its corners run, all corners but the inner one jut
// out, and one on a straight side does not.
func TestJutting(t *testing.T) {
	ell := Polygon{{0, 0}, {20, 0}, {20, 10}, {10, 10}, {10, 20}, {0, 20}, {0, 7}}
	want := Polygon{{0, 0}, {20, 0}, {20, 10}, {10, 20}, {0, 20}}
	if d := cmp.Diff(want, ell.Jutting()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	slices.Reverse(ell)
	slices.Reverse(want)
	if d := cmp.Diff(want, ell.Jutting()); d != "" {
		t.Errorf("the other way round (-want +got):\n%s", d)
	}
}
