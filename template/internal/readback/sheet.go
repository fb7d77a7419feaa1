package readback

import (
	"cmp"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

// Sheet is a sheet at true size, with what stands on it in the frame of its layout.
type Sheet struct {
	paper.Sheet
	Page  *Page
	Lines *Lines
	// Closed are the closed pieces that are stroked.
	Closed []Closed
}

// Closed is a closed piece of a stroked path: its corners, curves in short steps, and the path it
// is part of.
type Closed struct {
	Corners []geometry.Point
	Of      *pdfread.Path
}

// ReadSheet reads the page that a sheet is on.
func ReadSheet(sheet paper.Sheet, page *Page) *Sheet {
	if len(sheet.Joined) > 0 {
		page = page.part(sheet.Usable())
	}
	s := &Sheet{Sheet: sheet, Page: page, Lines: newLines()}
	paths := page.Paths()
	for i := range paths {
		path := &paths[i]
		if !path.Stroked {
			continue
		}
		for _, piece := range path.Lines.Map(s.Layout) {
			corners := Corners(piece)
			for i, b := range corners[1:] {
				s.Lines.add(Line{corners[i], b, path})
			}
			if piece.Closed {
				s.Lines.add(Line{corners[len(corners)-1], corners[0], path})
				s.Closed = append(s.Closed, Closed{corners, path})
			}
		}
	}
	return s
}

// Layout returns which point of the layout lies at a point of the page: the page shows (X, Y) at
// At + (X - Area.x, Y - Area.y) * Scale.
func (s *Sheet) Layout(p geometry.Point) geometry.Point {
	at := s.At
	return geometry.Pt(
		s.Area.Min.X+(p.X-at.X)/geometry.Length(s.Scale.Across),
		s.Area.Min.Y+(p.Y-at.Y)/geometry.Length(s.Scale.Down))
}

// LayoutRect returns which part of the layout lies in a part of the page.
func (s *Sheet) LayoutRect(r geometry.Rect) geometry.Rect {
	return geometry.Rect{Min: s.Layout(r.Min), Max: s.Layout(r.Max)}
}

// Crosses returns the middles, in the layout, of the crosses for which on holds, in their order
// along the join they are on.
func (s *Sheet) Crosses(on func(geometry.Point) bool) []geometry.Point {
	var middles []geometry.Point
	for _, path := range s.Page.Paths() {
		if len(path.Lines) != 2 || len(path.Lines[0].Steps) != 1 || len(path.Lines[1].Steps) != 1 {
			continue
		}
		a, b := path.Lines[0], path.Lines[1]
		middle := geometry.Rect{Min: a.Start, Max: a.Steps[0].To}.Centre()
		d, e := a.Steps[0].To.Sub(a.Start), b.Steps[0].To.Sub(b.Start)
		upright := math.Abs(float64(d.X*e.X+d.Y*e.Y)) <= float64(Off)
		if q := s.Layout(middle); upright && middle.Distance(geometry.Rect{Min: b.Start, Max: b.Steps[0].To}.Centre()) <= Off && on(q) {
			middles = append(middles, q)
		}
	}
	// Along a join one of the two is the same.
	slices.SortFunc(middles, func(a, b geometry.Point) int { return cmp.Compare(a.X+a.Y, b.X+b.Y) })
	return middles
}
