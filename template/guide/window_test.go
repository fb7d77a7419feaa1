package guide

import (
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/trace"
	"underlay/testdata/pdfread"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// TestWindowPageIsTrue reads the page back: the opening, marks, holes and stitches stand where
// package trace looks for them, the bars measure what they say, and the opening is empty.
func TestWindowPageIsTrue(t *testing.T) {
	near := cmpopts.EquateApprox(0, 0.01)
	for _, paper := range []string{"A4", "Letter", "Legal", "A3", "205 x 278.3 mm", "roll 610 mm", "one sheet"} {
		t.Run(paper, func(t *testing.T) {
			pages, err := WindowPage(stock(t, paper))
			if err != nil {
				t.Fatal(err)
			}
			page := readback.Drawn(t, pages)[0]
			readback.CheckTexts(t, "window page", page)
			readback.CheckMargin(t, "window page", page, RulerMargin)
			readback.CheckLinesClearOfText(t, "window page", page)
			across, down := bars(page)
			if d := cmp.Diff([][]float64{{150}, {200}}, [][]float64{across, down}, near); d != "" {
				t.Errorf("bars: %s", d)
			}

			// The opening is the one closed line; all else is told from its corner.
			var opening geometry.Rect
			type dot struct {
				X, Y, R float64
				White   bool
			}
			var got []dot
			for _, p := range page.Paths() {
				if p.Stroked && len(p.Lines) == 1 && p.Lines[0].Closed {
					opening = p.Lines.Bounds()
				}
			}
			for _, p := range page.Paths() {
				if p.Filled {
					b := p.Lines.Bounds()
					c := b.Centre().Sub(opening.Min)
					got = append(got, dot{float64(c.X), float64(c.Y), float64(b.W() / 2), p.Fill == pdfread.Colour{R: 255, G: 255, B: 255}})
				}
			}
			var want []dot
			f := trace.Window()
			for i, m := range f.Marks {
				if len(m.Holes) != i+2 {
					t.Errorf("mark %d has %d holes", i, len(m.Holes))
				}
				want = append(want, dot{float64(m.Centre.X), float64(m.Centre.Y), float64(f.MarkRadius), false})
				for _, h := range m.Holes {
					want = append(want, dot{float64(h.X), float64(h.Y), float64(f.HoleRadius), true})
				}
			}
			for _, s := range f.Stitches {
				want = append(want, dot{float64(s.X), float64(s.Y), float64(f.StitchRadius), false})
			}
			if d := cmp.Diff(want, got, near); d != "" {
				t.Errorf("dots: %s", d)
			}
			if d := cmp.Diff(geometry.Size{W: 150, H: 200}, opening.Size(), cmp.Comparer(func(a, b geometry.Length) bool { return math.Abs(float64(a-b)) < 0.01 })); d != "" {
				t.Errorf("opening: %s", d)
			}
			for _, p := range page.Paths() {
				if b := p.Lines.Bounds(); b.Overlaps(opening.Grow(-0.5)) && b.W() < 149 {
					t.Errorf("something stands in the window, at %v", b)
				}
			}
			for _, w := range page.Texts() {
				if w.Box.Overlaps(opening) {
					t.Errorf("%q stands in the window", w.Text)
				}
				// A threshold that is taken round a mark sees no text.
				for _, m := range f.Marks {
					if mark := (geometry.Rect{Min: m.Centre, Max: m.Centre}).Grow(f.MarkRadius + 1.5).Move(opening.Min); mark.Overlaps(w.Box) {
						t.Errorf("%q stands near the mark at the %s", w.Text, m.Corner)
					}
				}
			}
			for _, want := range []string{"100 %", "actual size", "away from the hand", "on a mat", "all four buttons", "even light", "underlay trace"} {
				if !strings.Contains(page.Text(), want) {
					t.Errorf("%q is not on the page: %s", want, page.Text())
				}
			}
		})
	}
}

func TestWindowPageNeedsRoom(t *testing.T) {
	for name, good := range map[string]bool{
		"A5": false, "roll 150 mm": false, "roll 205 mm": true, "204.9 x 400 mm": false, "205 x 278.2 mm": false, "205 x 278.3 mm": true,
	} {
		if _, err := WindowPage(stock(t, name)); good != (err == nil) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
