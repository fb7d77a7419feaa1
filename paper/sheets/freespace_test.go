package sheets

import (
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

// What find takes for free is free, by looking at every line and box again; and it finds a
// place wherever one has a cell and more to spare.
func TestFindAgainstLookingAtEverything(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	area := geometry.RectAt(geometry.Pt(7, 7), geometry.Size{W: 120, H: 90})
	anywhere := func() geometry.Point {
		return geometry.Pt(geometry.Length(140*r.Float64()), geometry.Length(110*r.Float64()))
	}
	same := func(p geometry.Point) geometry.Point { return p }
	found, missed := 0, 0
	for range 50 {
		s := newSpace(area)
		var lines [][2]geometry.Point
		var boxes []geometry.Rect
		for range 1 + r.IntN(12) {
			p := geometry.Chain(anywhere(), anywhere(), anywhere())
			if r.IntN(4) == 0 {
				p = geometry.Arc(anywhere(), 10, 0, 270)
			}
			corners := paper.Flatten(p[0])
			for i, q := range corners[1:] {
				lines = append(lines, [2]geometry.Point{corners[i], q})
			}
			s.markPath(p, same)
		}
		for range r.IntN(6) {
			b := geometry.RectAt(anywhere(), geometry.Size{W: 12, H: 4})
			boxes = append(boxes, b)
			s.markText(b)
		}
		free := func(b geometry.Rect) bool {
			for _, l := range lines {
				if _, _, ok := paper.ClipLine(l[0], l[1], b); ok {
					return false
				}
			}
			for _, x := range boxes {
				if b.Overlaps(x) {
					return false
				}
			}
			return true
		}
		size := geometry.Size{W: geometry.Length(4 + r.IntN(70)), H: geometry.Length(3 + r.IntN(30))}
		w := wish{area, area.Min}
		got, ok := s.find(size, w, breath, false)
		if ok {
			found++
			// Marking goes by steps of half a cell: a line may cut a corner of a cell unmarked.
			if b := geometry.RectAt(got.at, size); !area.Holds(b) || !free(b.Grow(breath/2).Intersect(area)) {
				t.Fatalf("%v is not free", b)
			}
		}
		least := geometry.Length(math.Inf(1))
		roomy := breath + 2*s.cell
		for x := area.Min.X; x+size.W <= area.Max.X; x++ {
			for y := area.Min.Y; y+size.H <= area.Max.Y; y++ {
				if b := geometry.RectAt(geometry.Pt(x, y), size); free(b.Grow(roomy)) {
					least = min(least, x-area.Min.X+y-area.Min.Y)
				}
			}
		}
		switch {
		case !ok && !math.IsInf(float64(least), 1):
			t.Fatalf("%v has a place %g mm from the corner that was not found", size, least)
		case !ok:
			missed++
		case got.far > least+geometry.Tolerance:
			t.Fatalf("%v was put %g mm from the corner, and has a place at %g", size, got.far, least)
		}
	}
	if found < 12 || missed < 5 {
		t.Errorf("%d found, %d not: too easy or too hard to tell", found, missed)
	}
}

func TestFindCrossesFewestLinesAndNoText(t *testing.T) {
	area := geometry.RectAt(geometry.Point{}, geometry.Size{W: 100, H: 60})
	s := newSpace(area)
	same := func(p geometry.Point) geometry.Point { return p }
	// Lines every 4 mm, but every 8 between 60 and 84; text over the right part of that.
	for x := geometry.Length(2); x < 100; x += 4 {
		if x < 62 || x > 84 || int(x)%8 == 2 {
			s.markPath(geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, 60)), same)
		}
	}
	s.markText(geometry.RectAt(geometry.Pt(75, 0), geometry.Size{W: 25, H: 60}))
	if _, ok := s.find(geometry.Size{W: 12, H: 5}, wish{area, area.Min}, 0, false); ok {
		t.Error("a free place where there is none")
	}
	got, ok := s.find(geometry.Size{W: 12, H: 5}, wish{area, area.Min}, 0, true)
	if !ok || got.at.X < 56 || got.at.X > 63 || got.at.Y != 0 {
		t.Errorf("put at %v, %v", got, ok)
	}
	s.signs = append(s.signs, geometry.RectAt(geometry.Pt(50, 0), geometry.Size{W: 20, H: 30}))
	if got, ok = s.find(geometry.Size{W: 12, H: 5}, wish{area, area.Min}, 0, true); !ok || got.at.Y < 30 {
		t.Errorf("put at %v, %v, on a sign", got, ok)
	}
}

// The last place along a row may lie on a cell less than the others, and what is beyond it does not
// matter.
func TestFindTheLastPlaceOfARow(t *testing.T) {
	s := newSpace(geometry.RectAt(geometry.Point{}, geometry.Size{W: 100, H: 60}))
	for _, x := range []geometry.Length{74.5, 91.5} {
		s.markLine(geometry.Pt(x, 0), geometry.Pt(x, 60))
	}
	within := geometry.Rect{Min: geometry.Pt(0.9, 10), Max: geometry.Pt(90, 30)}
	got, ok := s.find(geometry.Size{W: 13.2, H: 5}, wish{within, geometry.Pt(90, 20)}, breath, false)
	if want := geometry.Pt(76.8, 17); !ok || math.Abs(float64(got.at.X-want.X)) > 1e-9 {
		t.Errorf("put at %v, %v; there is room at %v", got.at, ok, want)
	}
}
