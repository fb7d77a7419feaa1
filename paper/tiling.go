package paper

import (
	"underlay/geometry"
)

// CrossArm is how far a cross reaches from its middle, at the most.
const CrossArm = 3 * geometry.Millimetre

// Side is one edge of a sheet. Of two sheets that meet, the right one is cut at its left
// edge and the lower one at its top edge; the cut edge is laid on the other sheet.
type Side int

const (
	LeftSide Side = iota
	TopSide
	RightSide
	BottomSide
)

// Opposite is the side across the sheet.
func (e Side) Opposite() Side { return (e + 2) % 4 }

// Sheet is one piece of paper of a guide laid out over several.
type Sheet struct {
	Name        string // row in figures, column in letters: "1a"
	Row, Column int    // counted from 1, from the top left
	// Area is the part of the layout on this sheet, in the layout's frame. A layout point P
	// lies at At + (P - Area.Min) * scale on the page, from its top left corner.
	Area  geometry.Rect
	At    geometry.Point
	Scale Scale // along the page's own x and y, both factors said
	Page  geometry.Size
	// Cell is Area up to its joins, one with each neighbour there could be.
	Cell geometry.Rect
	// Kept is Area up to its joins with the neighbours that are printed: the part that is this
	// sheet's once all are joined.
	Kept geometry.Rect
	// The neighbours that are printed; "" where there is none.
	Left, Right, Above, Below string
	// Leaf is which of the pages it is on, from 0: strips share one.
	Leaf int
	// Joined are the joins of a strip.
	Joined []Join
}

// Join is where a strip meets another.
type Join struct {
	Name     string // of the other
	Side     Side   // of the strip it is on
	From, To geometry.Point
	Cut      bool // the strip is cut there; else the other, cut, is laid on the line
}

// OnPage returns where the layout point p lies on the sheet's page.
func (s Sheet) OnPage(p geometry.Point) geometry.Point {
	return s.At.Add(s.Scale.Of(p.Sub(s.Area.Min)))
}

// Usable returns the part of the page inside the margin, all of it drawing area.
func (s Sheet) Usable() geometry.Rect {
	return geometry.Rect{Min: s.At, Max: s.OnPage(s.Area.Max)}
}

// Tiling is a layout spread over sheets: the whole grid, or what Without left of it.
type Tiling struct {
	// Layout is what is shown of the layout's Bounds: all of it, unless some was cut short.
	Layout        geometry.Rect
	Lying         bool            // each page wider than tall, of a stock that is not; of a roll, along it
	Overlap       geometry.Length // the least that neighbours share
	Rows, Columns int
	Sheets        []Sheet // by rows, each from the left; strips by their pages
	Strips        bool    // see PlanStrips
}

// Leaves returns how many pages the sheets are on.
func (t Tiling) Leaves() int {
	n := 0
	for _, s := range t.Sheets {
		n = max(n, s.Leaf+1)
	}
	return n
}

// Without leaves out the sheets that are empty. What is left keeps its names; a sheet then
// names only the neighbours still there, and is Kept to its edge where there is none.
func (t Tiling) Without(empty func(Sheet) bool) Tiling {
	type place struct{ row, column int }
	there := map[place]string{}
	var left []Sheet
	for _, s := range t.Sheets {
		if !empty(s) {
			there[place{s.Row, s.Column}] = s.Name
			left = append(left, s)
		}
	}
	for i := range left {
		s := &left[i]
		s.Leaf = i
		s.Left, s.Right = there[place{s.Row, s.Column - 1}], there[place{s.Row, s.Column + 1}]
		s.Above, s.Below = there[place{s.Row - 1, s.Column}], there[place{s.Row + 1, s.Column}]
		s.Kept = s.Cell
		for _, e := range []struct {
			neighbour string
			kept      *geometry.Length
			edge      geometry.Length
		}{
			{s.Left, &s.Kept.Min.X, s.Area.Min.X}, {s.Right, &s.Kept.Max.X, s.Area.Max.X},
			{s.Above, &s.Kept.Min.Y, s.Area.Min.Y}, {s.Below, &s.Kept.Max.Y, s.Area.Max.Y},
		} {
			if e.neighbour == "" {
				*e.kept = e.edge
			}
		}
	}
	t.Sheets = left
	return t
}
