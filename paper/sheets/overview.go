package sheets

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// Pens of the small picture of a whole guide.
var (
	overviewPen = paper.Pen{Type: paper.Continuous, Width: 0.13, Ink: paper.Grey(90)}
	gridPen     = paper.Pen{Type: paper.Continuous, Width: 0.35, Ink: paper.Ink{}}
)

// leastShown is the smallest a line may come out in the picture and still be drawn.
const leastShown = 0.3 * geometry.Millimetre

// Overview returns a small picture of d with its sheets over it, as large as goes into box, a
// part of a page, and in the middle of it: two views, the second to lie over the first. Each sheet is shown up to its joins, its name in the
// middle of it; where the letters would come out under 1 mm high there are no names. Text and
// fills of d are left out, and lines too small to see.
func Overview(d *paper.Drawing, sheets []paper.Sheet, box geometry.Rect) []paper.View {
	picture, over := &paper.Drawing{Bounds: box}, &paper.Drawing{Bounds: box}
	views := []paper.View{paper.PageView(picture), paper.PageView(over)}
	whole := d.Bounds
	for _, s := range sheets {
		whole = whole.Union(s.Kept)
	}
	if whole.Empty() || box.Empty() {
		return views
	}
	k := math.Min(float64(box.W()/whole.W()), float64(box.H()/whole.H()))
	shrink := func(p geometry.Point) geometry.Point {
		return p.Sub(whole.Centre()).Mul(k).Add(box.Centre())
	}
	for _, s := range d.Strokes {
		b := s.Bounds()
		if max(b.W(), b.H())*geometry.Length(k) < leastShown {
			continue
		}
		pen := overviewPen
		pen.Type = s.Pen.Type
		picture.Stroke(s.Path().Map(shrink), pen)
	}
	cells := make([]geometry.Rect, len(sheets))
	for i, s := range sheets {
		cells[i] = geometry.Rect{Min: shrink(s.Kept.Min), Max: shrink(s.Kept.Max)}
		over.Stroke(cells[i].Polygon().Path(), gridPen)
	}
	h := overviewHeight(sheets, cells)
	if h == 0 {
		return views
	}
	for i, s := range sheets {
		l := paper.Label{Text: s.Name, At: cells[i].Centre(), Height: h, Bold: true}
		over.Fill(l.Box().Grow(h*0.4).Polygon().Path(), paper.Grey(255))
		over.Write(l)
	}
	return views
}

// overviewHeight returns the one height of letters at which every name fits well inside its
// sheet, or 0.
func overviewHeight(sheets []paper.Sheet, cells []geometry.Rect) geometry.Length {
	for _, h := range []geometry.Length{5, 3.5, 2.5, 1.8, 1.4, 1} {
		fits := true
		for i, s := range sheets {
			// A third of the sheet, so that what the name stands on can still be made out.
			across, down := cells[i].W()/2.5, cells[i].H()/2.5
			if h < 2 {
				across, down = cells[i].W()*0.8, cells[i].H()*0.8
			}
			fits = fits && paper.TextWidth(s.Name, h, true) <= across && h <= down
		}
		if fits {
			return h
		}
	}
	return 0
}
