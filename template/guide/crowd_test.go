package guide

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"

	"underlay/geometry"
)

// TestCrowdAgainstLookingAtEveryBox asks for room in all kinds of places.
func TestCrowdAgainstLookingAtEveryBox(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	box := func(most float64) geometry.Rect {
		at := geometry.Pt(geometry.Length(r.Float64()*400-200), geometry.Length(r.Float64()*400-200))
		return geometry.RectAt(at, geometry.Size{W: geometry.Length(r.Float64() * most), H: geometry.Length(r.Float64() * most)})
	}
	c := NewCrowd(geometry.RectAround(geometry.Pt(20, -10), geometry.Size{W: 300, H: 200})) // boxes go beyond it
	var taken []geometry.Rect
	answers := map[bool]int{}
	for range 3000 {
		b := box(60)
		free := true
		for _, other := range taken {
			free = free && !other.Overlaps(b)
		}
		if got := c.Free(b); got != free {
			t.Fatalf("%v among %d boxes is free: %v", b, len(taken), got)
		}
		answers[free]++
		if b = box(12); len(taken) < 500 {
			c.Take(b)
			taken = append(taken, b)
		}
	}
	if min(answers[true], answers[false]) < 100 {
		t.Errorf("the boxes are too easy: %v", answers)
	}
	// Side by side is no crowd.
	c = NewCrowd(geometry.Rect{})
	c.Take(geometry.RectAt(geometry.Pt(0, 0), geometry.Size{W: 20, H: 5}))
	if !c.Free(geometry.RectAt(geometry.Pt(20, 0), geometry.Size{W: 5, H: 5})) || c.Free(geometry.RectAt(geometry.Pt(19.9, 0), geometry.Size{W: 5, H: 5})) {
		t.Error("boxes that only touch are in each other's way, or ones that overlap are not")
	}
}

// TestNumbersKeepOffTheEdgesOfOtherPasses sets a second block across a part of every print, over
// all its width or where the number alone would be: no number is struck by an edge of a print
// or of its wood.
func TestNumbersKeepOffTheEdgesOfOtherPasses(t *testing.T) {
	checkNumberEdges(t, "60 x 30 mm", "70 x 40 mm", "0 x -25 mm")
	checkNumberEdges(t, "24 x 30 mm", "26 x 32 mm", "-14 x -25 mm")
}

func checkNumberEdges(t *testing.T, size, wood, offset string) {
	t.Helper()
	plan := planOf(t, fmt.Sprintf(`
[[block]]
name = "acorn"
print = "60 x 80 mm"
wood = "70 x 90 mm"
[[block]]
name = "cup"
print = %q
wood = %q
[[item]]
name = "book bag"
size = "300 x 400 mm"
border = "20 mm"
  [[item.pass]]
  name = "ground"
  block = "acorn"
  gap = "6 mm"
  [[item.pass]]
  block = "cup"
  on = "ground"
  offset = %q
`, size, wood, offset))
	face := plan.Items[0].Faces()[0]
	drawing := Draw(plan.Job, face)
	numbers := 0
	for _, l := range drawing.Labels {
		if _, err := strconv.Atoi(l.Text); err != nil || !face.Item.Area.Cloth.Holds(l.Extent()) {
			continue
		}
		numbers++
		box := l.Extent()
		for _, p := range face.Passes {
			for _, print := range p.Prints {
				// An upright rectangle's edge meets the box where they overlap and it does not hold it.
				if r := print.Outline.Bounds(); r.Overlaps(box) && !r.Holds(box) {
					t.Errorf("the number %s, %v, is struck by the edge of %v", l.Text, box, r)
				}
				for _, piece := range Brackets(print.Block.Wood.Place(print.Origin, print.Turn)) {
					if b := (geometry.Path{piece}).Bounds(); b.Grow(0.1).Overlaps(box) {
						t.Errorf("the number %s, %v, is struck by the wood's corner, %v", l.Text, box, b)
					}
				}
			}
		}
	}
	if want := 32; numbers != want {
		t.Errorf("%d numbers, want %d", numbers, want)
	}
}
