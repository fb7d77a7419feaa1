package trace

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

var near = cmpopts.EquateApprox(0, 1e-9)

// TestProjectionWorkedByHand maps the unit square to the trapezium (0,0), (4,0), (3,2), (1,2). Heckbert's
// formulas for a square and a quadrilateral (Fundamentals of Texture Mapping and Image Warping, 1989,
// from memory), worked by hand: sums (-2, 0), g = 0, h = 1, so x = (4u + 2v)/(v + 1), y = 4v/(v + 1). The
// square's middle goes where the trapezium's diagonals cross, (2, 4/3).
func TestProjectionWorkedByHand(t *testing.T) {
	from := []point{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	h, ok := fitted(from, []point{{0, 0}, {4, 0}, {3, 2}, {1, 2}})
	if !ok {
		t.Fatal("no map")
	}
	if d := cmp.Diff(projection{4, 2, 0, 0, 4, 0, 0, 1, 1}, h, near); d != "" {
		t.Error(d)
	}
	middle := h.apply(point{0.5, 0.5})
	if d := cmp.Diff([]float64{2, 4.0 / 3}, []float64{middle.x, middle.y}, near); d != "" {
		t.Error(d)
	}
	if _, ok := fitted([]point{{0, 0}, {1, 1}, {2, 2}, {3, 3}}, from); ok {
		t.Error("four points in a line are no square")
	}
}

// TestProjectionOfMorePoints: with 20 points that a map moved, the least squares are that map.
func TestProjectionOfMorePoints(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		want := projection{1, r.Float64() / 3, r.Float64(), r.Float64() / 3, 1, r.Float64(), r.Float64() / 4, r.Float64() / 4, 1}
		var from, to []point
		for range 20 {
			p := point{2*r.Float64() - 1, 2*r.Float64() - 1}
			from, to = append(from, p), append(to, want.apply(p))
		}
		got, ok := fitted(from, to)
		if d := cmp.Diff(want, got, near); d != "" || !ok {
			t.Error(d)
		}
	}
}

// TestMiddleOfADisc holds the formula against the centroid of many points of the rim.
func TestMiddleOfADisc(t *testing.T) {
	h := projection{1.1, 0.2, 3, -0.1, 0.9, 1, 0.12, -0.07, 1}
	c, radius := point{0.4, -0.3}, 0.8
	const n = 20000
	var area, sx, sy float64
	rim := func(i int) point {
		s, k := math.Sincos(2 * math.Pi * float64(i) / n)
		return h.apply(point{c.x + radius*k, c.y + radius*s})
	}
	for i := range n {
		p, q := rim(i), rim(i+1)
		a := cross(p, q)
		area, sx, sy = area+a/2, sx+(p.x+q.x)*a/6, sy+(p.y+q.y)*a/6
	}
	got := h.disc(c, radius)
	if d := cmp.Diff([]float64{sx / area, sy / area}, []float64{got.x, got.y}, cmpopts.EquateApprox(0, 1e-6)); d != "" {
		t.Error(d)
	}
	if plain := h.apply(c); plain.distance(got) < 0.01 {
		t.Error("the middle of a disc is where its picture has its own: the test says nothing")
	}
}

// TestViewComesBack: what a view with a bent lens shows of the window is fitted by that view.
func TestViewComesBack(t *testing.T) {
	want := newView(&grey{w: 1500, h: 2000})
	want.h = projection{0.7, 0.05, 0.02, -0.03, 0.72, -0.04, 0.05, 0.11, 1}
	f := Window()
	for _, bend := range []float64{-0.04, 0, 0.03} {
		want.bend = bend
		var sights []sight
		for _, m := range f.Marks {
			sights = append(sights, sight{pt(m.Centre), float64(f.MarkRadius), want.disc(pt(m.Centre), float64(f.MarkRadius))})
			for _, hole := range m.Holes {
				sights = append(sights, sight{pt(hole), float64(f.HoleRadius), want.disc(pt(hole), float64(f.HoleRadius))})
			}
		}
		got, ok := newView(&grey{w: 1500, h: 2000}).fitted(sights)
		if d := cmp.Diff(want.h, got.h, cmpopts.EquateApprox(0, 1e-6)); d != "" || !ok || math.Abs(got.bend-bend) > 1e-6 {
			t.Errorf("bend %v becomes %v: %s", bend, got.bend, d)
		}
		least, most := got.stretch(point{75, 100}).scales()
		if least < 5 || most > 12 || least > most {
			t.Errorf("%v to %v pixels a millimetre", least, most)
		}
		p := point{3, -2}
		s := got.stretch(point{10, 190})
		if back := s.undo(s.across.mul(p.x).add(s.down.mul(p.y))); back.distance(p) > 1e-9 {
			t.Errorf("%v comes back as %v", p, back)
		}
	}
}

func TestSolve(t *testing.T) {
	// x + y + z = 6, 2y + 5z = -4, 2x + 5y - z = 27: x = 5, y = 3, z = -2, a textbook's.
	x, ok := solve([][]float64{{1, 1, 1}, {0, 2, 5}, {2, 5, -1}}, []float64{6, -4, 27})
	if d := cmp.Diff([]float64{5, 3, -2}, x, near); d != "" || !ok {
		t.Error(d)
	}
	if _, ok := solve([][]float64{{1, 2}, {2, 4}}, []float64{1, 2}); ok {
		t.Error("a system with many answers has one")
	}
	if _, ok := solve([][]float64{{math.NaN(), 2}, {2, 4}}, []float64{1, 2}); ok {
		t.Error("a system of no numbers has an answer")
	}
}
