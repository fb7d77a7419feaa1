package geometry_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	. "underlay/geometry"
)

// Every site with indices within reach is tried, row by row.
func tried(l Lattice, r Rect, reach int) []Site {
	var sites []Site
	for j := -reach; j <= reach; j++ {
		for i := -reach; i <= reach; i++ {
			p := Pt(l.Origin.X+Length(i)*l.Across.X+Length(j)*l.Down.X, l.Origin.Y+Length(i)*l.Across.Y+Length(j)*l.Down.Y)
			if p.X >= r.Min.X-1e-6 && p.X <= r.Max.X+1e-6 && p.Y >= r.Min.Y-1e-6 && p.Y <= r.Max.Y+1e-6 {
				sites = append(sites, Site{I: i, J: j})
			}
		}
	}
	return sites
}

func TestLatticeInAgainstTryingAll(t *testing.T) {
	turned := func(l Lattice, a Angle) Lattice {
		return Lattice{Origin: l.Origin, Across: l.Across.Turn(a), Down: l.Down.Turn(a)}
	}
	straight := Lattice{Origin: Pt(3, -2), Across: Pt(11, 0), Down: Pt(0, 7)}
	lattices := map[string]Lattice{
		"straight":      straight,
		"brick":         {Origin: Pt(0, 0), Across: Pt(10, 0), Down: Pt(5, 10)},
		"half-drop":     {Origin: Pt(0, 0), Across: Pt(10, 5), Down: Pt(0, 10)},
		"third step":    {Origin: Pt(1, 1), Across: Pt(12, 0), Down: Pt(4, 9)},
		"honeycomb":     {Origin: Pt(0, 0), Across: Pt(10, 0), Down: Pt(5, 10*Length(math.Sqrt(3)/2))},
		"diagonal":      turned(straight, 45),
		"at 30":         turned(straight, 30),
		"right to left": {Origin: Pt(40, 0), Across: Pt(-9, 0), Down: Pt(0, -8)},
		"upside down":   {Origin: Pt(0, 0), Across: Pt(0, 9), Down: Pt(8, 0)},
	}
	rnd := seeded(10)
	for name, l := range lattices {
		rects := []Rect{
			{Pt(0, 0), Pt(55, 70)},      // sites on its edges
			{Pt(-50, -50), Pt(-50, 50)}, // no width
			{Pt(3, -2), Pt(3, -2)},      // a point
			{Pt(0, 0), Pt(-5, 20)},      // turned inside out
			{Pt(100, 100), Pt(100.5, 100.5)},
		}
		for range 20 {
			a, b := within(rnd, RectAround(Pt(0, 0), Size{W: 200, H: 200})), Size{W: Length(80 * rnd.Float64()), H: Length(80 * rnd.Float64())}
			rects = append(rects, RectAt(a, b))
		}
		for _, r := range rects {
			got, want := l.In(r), tried(l, r, 80)
			if d := cmp.Diff(want, got, cmpopts.EquateEmpty()); d != "" {
				t.Errorf("%s in %v:\n%s", name, r, d)
			}
		}
	}
}

func TestLatticeWithoutTwoDirectionsHoldsNothing(t *testing.T) {
	for _, l := range []Lattice{{}, {Across: Pt(1, 0)}, {Across: Pt(1, 2), Down: Pt(2, 4)}} {
		if got := l.In(Rect{Pt(-9, -9), Pt(9, 9)}); got != nil {
			t.Errorf("%v: %v", l, got)
		}
	}
}

// A site within a millionth of a millimetre of the edge counts: 4 x 100 + 3 x 1 fits in 403.
func TestLatticeInAtTheEdge(t *testing.T) {
	l := Lattice{Across: Pt(101, 0), Down: Pt(0, 101)}
	for over, want := range map[Length]int{0: 4, 0.9e-6: 4, 1.1e-6: 3} {
		if got := l.In(Rect{Pt(0, 0), Pt(303-over, 0)}); len(got) != want {
			t.Errorf("short by %v: %d sites, want %d", over.Millimetres(), len(got), want)
		}
	}
}

// Plane group cm of the centred rectangular lattice has two points a cell, at (0,0) and
// (1/2,1/2): International Tables for Crystallography, Volume A. Brick by a half is one.
func TestBrickIsCentredRectangular(t *testing.T) {
	l := Lattice{Across: Pt(10, 0), Down: Pt(5, 8)}
	var got []Point
	for _, s := range l.In(Rect{Pt(0, 0), Pt(9.9, 15.9)}) {
		got = append(got, l.At(s))
	}
	if d := cmp.Diff([]Point{{X: 0, Y: 0}, {X: 5, Y: 8}}, got); d != "" {
		t.Error(d)
	}
}
