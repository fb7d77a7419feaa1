package geometry_test

import (
	"testing"

	. "underlay/geometry"
)

func TestRectShapes(t *testing.T) {
	r := RectAt(Pt(10, 20), Size{W: 30, H: 40})
	if r != (Rect{Pt(10, 20), Pt(40, 60)}) || r.Size() != (Size{W: 30, H: 40}) || r.Centre() != Pt(25, 40) {
		t.Errorf("%v", r)
	}
	if got := RectAround(Pt(25, 40), Size{W: 30, H: 40}); got != r {
		t.Errorf("%v", got)
	}
	if got := r.In(Edges{Top: 1, Right: 2, Bottom: 3, Left: 4}); got != (Rect{Pt(14, 21), Pt(38, 57)}) {
		t.Errorf("drawn in: %v", got)
	}
	if got := r.Grow(2).Grow(-2); got != r {
		t.Errorf("grown and drawn in: %v", got)
	}
	if got := r.Move(Pt(-10, 1)); got != (Rect{Pt(0, 21), Pt(30, 61)}) {
		t.Errorf("moved: %v", got)
	}
	if got := r.Size().Swap(); got != (Size{W: 40, H: 30}) {
		t.Errorf("swapped: %v", got)
	}
	if r.Empty() || !r.Grow(-15).Empty() || !(Rect{}).Empty() {
		t.Error("empty")
	}
}

func TestRectsTogether(t *testing.T) {
	r := Rect{Max: Pt(10, 10)}
	for _, c := range []struct {
		name                     string
		s                        Rect
		overlaps, touches, holds bool
	}{
		{"the same", r, true, true, true},
		{"inside", Rect{Pt(1, 1), Pt(9, 9)}, true, true, true},
		{"over a side", Rect{Pt(5, 5), Pt(15, 8)}, true, true, false},
		{"edge on edge", Rect{Pt(10, 0), Pt(20, 10)}, false, true, false},
		{"corner on corner", Rect{Pt(10, 10), Pt(20, 20)}, false, true, false},
		{"over by a hair", Rect{Pt(10-0.9e-6, 0), Pt(20, 10)}, false, true, false},
		{"short of it by a hair", Rect{Pt(10+0.9e-6, 0), Pt(20, 10)}, false, true, false},
		{"apart", Rect{Pt(10+1.1e-6, 0), Pt(20, 10)}, false, false, false},
		{"out by a hair", Rect{Pt(-0.9e-6, 0), Pt(10, 10)}, true, true, true},
		{"out by more", Rect{Pt(-1.1e-6, 0), Pt(10, 10)}, true, true, false},
		{"a cross", Rect{Pt(-5, 4), Pt(15, 6)}, true, true, false},
	} {
		if r.Overlaps(c.s) != c.overlaps || c.s.Overlaps(r) != c.overlaps {
			t.Errorf("%s: overlaps %v", c.name, !c.overlaps)
		}
		if r.Touches(c.s) != c.touches || c.s.Touches(r) != c.touches {
			t.Errorf("%s: touches %v", c.name, !c.touches)
		}
		if r.Holds(c.s) != c.holds {
			t.Errorf("%s: holds %v", c.name, !c.holds)
		}
		u := r.Union(c.s)
		if !u.Holds(r) || !u.Holds(c.s) || u.W() > r.W()+c.s.W()+2e-6 && c.touches {
			t.Errorf("%s: union %v", c.name, u)
		}
	}
	if got := r.Intersect(Rect{Pt(5, -5), Pt(15, 8)}); got != (Rect{Pt(5, 0), Pt(10, 8)}) {
		t.Errorf("shared: %v", got)
	}
}

func TestEdges(t *testing.T) {
	e := Edges{Top: 4, Right: 3, Bottom: 5, Left: 6}
	if e.Least() != 3 || e.Even() || !EvenEdges(7).Even() || EvenEdges(7).Least() != 7 {
		t.Errorf("%v", e)
	}
	if !(Edges{Top: 1, Right: 1 + 0.9e-6, Bottom: 1, Left: 1}).Even() {
		t.Error("a hair of rounding makes edges uneven")
	}
}
