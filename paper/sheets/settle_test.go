package sheets

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/paper"
)

// twoSheets share 4 mm.
func twoSheets() []geometry.Rect {
	return []geometry.Rect{
		geometry.RectAt(geometry.Pt(0, 0), geometry.Size{W: 100, H: 80}),
		geometry.RectAt(geometry.Pt(96, 0), geometry.Size{W: 100, H: 80}),
	}
}

func TestLabelsAcrossAJoinMoveOntoASheet(t *testing.T) {
	width := paper.TextWidth("Heron", 5, true)
	if width < 8 || width > 40 {
		t.Fatalf("the word is %v wide: no good for this", width)
	}
	for _, c := range []struct {
		name string
		at   geometry.Point
		want geometry.Point // of its middle
	}{
		{"well on the first", geometry.Pt(50, 40), geometry.Pt(50, 40)},
		{"well on the second", geometry.Pt(150, 40), geometry.Pt(150, 40)},
		{"middle on the first", geometry.Pt(95, 40), geometry.Pt(100-width/2, 40)},
		{"middle on the second", geometry.Pt(101, 40), geometry.Pt(96+width/2, 40)},
		{"middle on both, nearer to the first", geometry.Pt(97.5, 40), geometry.Pt(100-width/2, 40)},
		{"middle on both, nearer to the second", geometry.Pt(98.5, 40), geometry.Pt(96+width/2, 40)},
		{"over the upper edge", geometry.Pt(50, 1), geometry.Pt(50, 2.5)},
		{"over a corner", geometry.Pt(195, 79), geometry.Pt(196-width/2, 77.5)},
		{"middle on no sheet", geometry.Pt(50, 90), geometry.Pt(50, 90)},
	} {
		// Capitals and letters without tails, on the line they stand on: the box is the ink's.
		d := &paper.Drawing{Labels: []paper.Label{
			{Text: "before", At: geometry.Pt(20, 20), Height: 5},
			{Text: "Heron", At: c.at, Height: 5, Bold: true},
		}}
		got, _ := settle(d, twoSheets())
		if d.Labels[1].At != c.at {
			t.Errorf("%s: the drawing given was changed", c.name)
		}
		if got.Labels[0] != d.Labels[0] {
			t.Errorf("%s: a label that was well placed is now %v", c.name, got.Labels[0])
		}
		// Round letters reach a little beyond the capitals.
		if l := got.Labels[1]; l.At.Distance(c.want) > 0.3 {
			t.Errorf("%s: moved to %v, want %v", c.name, l.At, c.want)
		}
	}
}

func TestLabelsDoNotMoveOntoOthers(t *testing.T) {
	moving := paper.Label{Text: "column moved 12", At: geometry.Pt(97, 40), Height: 3.5, Bold: true}
	w := paper.TextWidth(moving.Text, 3.5, true)
	beside := func(x, y geometry.Length) paper.Label {
		return paper.Label{Text: "312.75", At: geometry.Pt(x, y), Height: 2.5}
	}
	for name, others := range map[string][]paper.Label{
		"nothing":                   nil,
		"something on the left":     {beside(100-w, 40)},
		"something on both":         {beside(100-w, 40), beside(96+w, 40)},
		"something above and below": {beside(100-w, 40), beside(96+w, 40), beside(100-w, 36), beside(96+w, 36)},
		"another that moves":        {{Text: "column moved 11", At: geometry.Pt(98, 41), Height: 3.5}},
	} {
		got, _ := settle(&paper.Drawing{Labels: append([]paper.Label{moving}, others...)}, twoSheets())
		for i, l := range got.Labels {
			if lost := paper.Lost(got, paper.Split(got, twoSheets())); len(lost) > 0 {
				t.Errorf("%s: %v are on no sheet", name, lost)
			}
			for _, m := range got.Labels[:i] {
				if l.Extent().Overlaps(m.Extent()) {
					t.Errorf("%s: %q at %v stands on %q at %v", name, l.Text, l.Extent(), m.Text, m.Extent())
				}
			}
		}
	}
}

// TestSettledAgainstEverySheet lays words anywhere over a grid of sheets: each then lies wholly
// on one, moved no farther than takes it onto the nearest of those that held its middle, or a
// few rows farther where other words stand there; unless it is larger than a sheet.
func TestSettledAgainstEverySheet(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for _, overlap := range []geometry.Length{0, 3, 12} {
		var areas []geometry.Rect
		for y := range 4 {
			for x := range 4 {
				areas = append(areas, geometry.RectAt(
					geometry.Pt((40-overlap)*geometry.Length(x), (30-overlap)*geometry.Length(y)), geometry.Size{W: 40, H: 30}))
			}
		}
		d := &paper.Drawing{}
		for i := range 400 {
			words := fmt.Sprintf("fern %d", i)
			if i%20 == 0 {
				words = "a word much longer than any sheet of paper is wide"
			}
			d.Write(paper.Label{Text: words, At: randomPoint(r, 4*30-2*overlap), Height: 2.5, Bold: i%2 == 0, Anchor: paper.Anchor(i % 9)})
		}
		got, _ := settle(d, areas)
		moved := 0
		for i, l := range d.Labels {
			box := l.Extent()
			least, inside := geometry.Length(-1), false
			var nearest geometry.Rect
			for _, a := range areas {
				inside = inside || a.Holds(box)
				if !a.Contains(box.Centre()) || box.W() > a.W() || box.H() > a.H() {
					continue
				}
				// The way onto a sheet is how far the box sticks out of it.
				way := geometry.Pt(max(a.Min.X-box.Min.X, 0)-max(box.Max.X-a.Max.X, 0), max(a.Min.Y-box.Min.Y, 0)-max(box.Max.Y-a.Max.Y, 0))
				if n := way.Norm(); least < 0 || n < least {
					least, nearest = n, box.Move(way)
				}
			}
			want := least
			if inside || least < 0 {
				want = 0
			}
			way := got.Labels[i].At.Distance(l.At)
			taken := false
			for j, other := range got.Labels {
				taken = taken || j != i && (nearest.Overlaps(other.Extent()) || nearest.Overlaps(d.Labels[j].Extent()))
			}
			if way < want-geometry.Tolerance || way > want+geometry.Tolerance && (want == 0 || !taken || way > box.W()+3*box.H()) {
				t.Errorf("overlap %v: %q at %v moved %v, want %v", overlap, l.Text, box, way, want)
			}
			held := false
			for _, a := range areas {
				held = held || a.Holds(got.Labels[i].Extent())
			}
			if least >= 0 && !held {
				t.Errorf("overlap %v: %q is at %v, on no sheet", overlap, l.Text, got.Labels[i].Extent())
			}
			if way > 0 {
				moved++
			}
		}
		for i, l := range d.Labels {
			got.Labels[i].At = l.At
		}
		if diff := cmp.Diff(d.Labels, got.Labels); diff != "" {
			t.Errorf("more than places changed: %s", diff)
		}
		if overlap < 12 && moved < 20 {
			t.Errorf("overlap %v: %d moved: nothing was tried", overlap, moved)
		}
	}
}
