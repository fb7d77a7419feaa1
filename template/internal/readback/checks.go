package readback

import (
	"testing"

	"underlay/geometry"
	"underlay/testdata/pdfread"
)

// ink is where the letters of a string are: pdfium takes them for higher and wider by a 64th of
// an em than they are, to be on the safe side.
func ink(w pdfread.Text) geometry.Rect {
	return w.Box.In(geometry.Edges{Top: w.Size / 64, Right: w.Size / 64})
}

// Within tells whether a box lies in an outline, by its corners.
func Within(o geometry.Outline, box geometry.Rect) bool {
	for _, c := range box.Polygon() {
		if !o.Contains(c) {
			return false
		}
	}
	return true
}

// CheckMargin looks for anything where the printer does not reach. Page is what to call the page.
func CheckMargin(t *testing.T, page string, p *Page, margin geometry.Length) {
	t.Helper()
	inside := geometry.RectAt(geometry.Point{}, p.Size).Grow(Off - margin)
	for _, path := range p.Paths() {
		if b := path.Lines.Bounds(); !inside.Holds(b) {
			t.Errorf("%s: a line at %v, printable %v", page, b, inside)
		}
	}
	for _, w := range p.Texts() {
		if !inside.Grow(w.Size / 64).Holds(w.Box) {
			t.Errorf("%s: %q at %v, printable %v", page, w.Text, w.Box, inside)
		}
	}
}

// CheckTexts holds the strings of a page against each other: none stands on another or leaves
// the page.
func CheckTexts(t *testing.T, page string, p *Page) {
	t.Helper()
	const hair = 0.05 * geometry.Millimetre
	whole := geometry.RectAt(geometry.Point{}, p.Size)
	for j, a := range p.Texts() {
		if !whole.Holds(a.Box) {
			t.Errorf("%s: %q at %v leaves the page", page, a.Text, a.Box)
		}
		for _, b := range p.Texts()[:j] {
			if both := ink(a).Intersect(ink(b)); both.W() > hair && both.H() > hair {
				t.Errorf("%s: %q at %v and %q at %v stand on each other", page, a.Text, a.Box, b.Text, b.Box)
			}
		}
	}
}

// CheckLinesClearOfText looks for lines that run through letters.
func CheckLinesClearOfText(t *testing.T, page string, p *Page) {
	t.Helper()
	for _, path := range p.Paths() {
		for _, piece := range path.Lines {
			points := Corners(piece)
			if piece.Closed {
				points = append(points, points[0])
			}
			for i, b := range points[1:] {
				line := geometry.Rect{Min: points[i], Max: points[i]}.Union(geometry.Rect{Min: b, Max: b}).Grow(path.Width / 2)
				for _, w := range p.Texts() {
					if line.Overlaps(w.Box) {
						t.Errorf("%s: a line at %v runs through %q at %v", page, line, w.Text, w.Box)
					}
				}
			}
		}
	}
}
