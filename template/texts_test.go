package template

import (
	"testing"

	"underlay/geometry"
	"underlay/testdata/pdfread"
)

// checkTexts holds the strings of every page against each other: none stands on another or
// leaves its page.
func checkTexts(t *testing.T, p *papers) {
	const hair = 0.05 * geometry.Millimetre
	for i, page := range p.pages {
		whole := geometry.RectAt(geometry.Point{}, page.size)
		// pdfium takes letters for higher and wider by a 64th than they are.
		ink := func(w pdfread.Text) geometry.Rect {
			return w.Box.In(geometry.Edges{Top: w.Size / 64, Right: w.Size / 64})
		}
		for j, a := range page.texts {
			if !whole.Holds(a.Box) {
				t.Errorf("page %d: %q at %v leaves the page", i+1, a.Text, a.Box)
			}
			for _, b := range page.texts[:j] {
				if both := ink(a).Intersect(ink(b)); both.W() > hair && both.H() > hair {
					t.Errorf("page %d: %q at %v and %q at %v stand on each other", i+1, a.Text, a.Box, b.Text, b.Box)
				}
			}
		}
	}
}
