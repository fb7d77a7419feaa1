package sheets

import (
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// Fits tells whether the name goes whole into what it names, in letters of some height.
func Fits(n paper.Name) bool {
	rows, _ := n.Fit(n.Of.Size())
	return slices.Equal(strings.Fields(strings.Join(rows, " ")), strings.Fields(n.Text))
}

// leastNamed is how much of a part a sheet has to show to name it.
const leastNamed = 0.5 * geometry.Millimetre

// putNames names the parts of the drawing that the sheet shows: each in the middle of what is
// kept of it on this sheet, or of all that is shown; off the middle where other text is there;
// where the name has no room in it, beside it, on a leader.
func (b *board) putNames(names []paper.Name, s paper.Sheet) {
	for _, n := range names {
		shown := n.Of.Intersect(s.Area)
		if min(shown.W(), shown.H()) < leastNamed || shown.W() < min(n.Least.W, n.Of.W()) || shown.H() < min(n.Least.H, n.Of.H()) {
			continue
		}
		kept := n.Of.Intersect(s.Kept)
		if !kept.Empty() && b.putWithin(n, rectOnPage(s, kept)) || b.putWithin(n, rectOnPage(s, shown)) {
			continue
		}
		part := shown
		if !kept.Empty() {
			part = kept
		}
		b.putBeside(n, rectOnPage(s, part))
	}
}

// putWithin puts a name into a part of the page.
func (b *board) putWithin(n paper.Name, part geometry.Rect) bool {
	part = part.Intersect(b.space.area)
	rows, h := n.Fit(part.Size())
	if len(rows) == 0 {
		return false
	}
	var d paper.Drawing
	d.Labels = n.Labels(rows, h, geometry.Point{})
	sign := sign(d)
	size := sign.Bounds.Size()
	middle := geometry.RectAround(part.Centre(), size)
	for _, within := range []geometry.Rect{middle, part} {
		if p, ok := b.space.find(size, wish{within, part.Centre()}, ground, true); ok {
			return b.set(sign, p.at)
		}
	}
	return false
}

// putBeside puts a name near a part of the page, and a leader from it to there.
func (b *board) putBeside(n paper.Name, part geometry.Rect) {
	const near = 40 * geometry.Millimetre
	h := paper.NameSizes[1]
	var d paper.Drawing
	d.Labels = n.Labels(paper.Wrap(n.Text, h, false, 2*near), h, geometry.Point{})
	signs := []paper.Drawing{sign(d)}
	within := part.Grow(near).Intersect(b.space.area)
	size := signs[0].Bounds.Size()
	p, ok := b.space.find(size, wish{within, part.Centre()}, breath, false)
	if !ok {
		if p, ok = b.space.find(size, wish{within, part.Centre()}, ground, true); !ok {
			return
		}
	}
	box := geometry.RectAt(p.at, size).Grow(ground)
	to := part.Centre()
	from := geometry.Pt(min(max(to.X, box.Min.X), box.Max.X), min(max(to.Y, box.Min.Y), box.Max.Y))
	b.drawing.Stroke(geometry.Line(from, to), paper.Pen{Width: 0.25})
	b.set(signs[0], p.at)
}
