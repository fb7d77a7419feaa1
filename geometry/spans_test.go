package geometry

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestSpans(t *testing.T) {
	a, b := Spans{{0, 4}, {6, 10}}, Spans{{1, 2}, {3, 7}, {10, 12}}
	for name, c := range map[string]struct{ got, want Spans }{
		"and":          {a.And(b), Spans{{1, 2}, {3, 4}, {6, 7}}},
		"and, changed": {b.And(a), Spans{{1, 2}, {3, 4}, {6, 7}}},
		"less":         {a.Less(b), Spans{{0, 1}, {2, 3}, {7, 10}}},
		"less, other":  {b.Less(a), Spans{{4, 6}, {10, 12}}},
		"less none":    {a.Less(nil), a},
		"less itself":  {a.Less(a), nil},
		"and none":     {a.And(nil), nil},
		"made":         {spansOf([]Span{{5, 6}, {0, 1}, {3, 3}, {0.5, 2}, {2, 3}, {4, 2}}), Spans{{0, 3}, {5, 6}}},
	} {
		if d := cmp.Diff(c.want, c.got); d != "" {
			t.Errorf("%s (-want +got):\n%s", name, d)
		}
	}
	if got := b.Length(); got != 7 {
		t.Errorf("%v long, want 7", got)
	}
}

// TestAcross asks for single points whether they lie in an outline, near its corners and near its edge,
// by the ways that tell it of a point, and of level lines through them.
func TestAcross(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	outlines := map[string]Outline{
		"rectangle": RectOutline(Rect{Pt(-45, -30), Pt(45, 30)}),
		"circle":    CircleOutline(Pt(3, -2), 25),
		"hexagon":   HexagonOutline(RectAround(Point{}, Size{60, Length(120 / math.Sqrt(3))})),
		"L":         PolygonOutline(Polygon{{-30, -30}, {0, -30}, {0, 0}, {30, 0}, {30, 30}, {-30, 30}}),
		"star":      PolygonOutline(Polygon{{0, -40}, {10, -12}, {38, -12}, {16, 6}, {24, 32}, {0, 16}, {-24, 32}, {-16, 6}, {-38, -12}, {-10, -12}}),
	}
	for name, o := range outlines {
		o = o.Turn(Angle(r.Float64() * 360))
		for range 2000 {
			p, d := Pt(Length(r.Float64()*120-60), Length(r.Float64()*120-60)), Length(r.Float64()*30)
			on := func(s Spans) bool { return len(s.And(Spans{{p.X - 1e-9, p.X + 1e-9}})) > 0 }
			off := o.Corners().EdgeDistance(p)
			if centre, radius, round := o.Round(); round {
				off = (radius - p.Distance(centre)).Abs()
			}
			if off > 1e-3 && on(o.Across(p.Y)) != o.Contains(p) {
				t.Fatalf("%s: %v is in it: %v by its line, %v by itself", name, p, on(o.Across(p.Y)), o.Contains(p))
			}
			if (off-d).Abs() > 1e-3 && on(o.NearEdge(d, p.Y)) != (off < d) {
				t.Fatalf("%s: %v is %v from its edge, and within %v: %v", name, p, off, d, on(o.NearEdge(d, p.Y)))
			}
			nearest := Length(math.Inf(1))
			for _, c := range o.Corners() {
				nearest = min(nearest, c.Distance(p))
			}
			if (nearest-d).Abs() > 1e-3 && on(o.Corners().Near(d, p.Y)) != (nearest < d) {
				t.Fatalf("%s: %v is %v from a corner, and within %v: %v", name, p, nearest, d, on(o.Corners().Near(d, p.Y)))
			}
		}
	}
}
