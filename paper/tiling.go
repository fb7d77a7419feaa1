package paper

import (
	"math"

	"underlay/geometry"
)

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
	Side     side   // of the strip it is on
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

// Plan spreads a layout over sheets of a stock. Of all the ways it takes one
//
//   - of the fewest sheets, those that would have no mark on them left out;
//   - of these, one whose joins cut boxes, or come near lines, of the least weight;
//   - of these, one whose joins keep the widest distance from the lines.
//
// It looks for the way up of the sheets, for the place of the layout on them, and for the place
// of each join within what its two sheets share: the setup's overlap or more, half of it or 3 mm
// at the least on both sides of the join. Of two ways up that do equally well, 5 mm from
// the lines being as good as more, the one is taken that has the smaller pages, then fewer
// joins, then the upright one.
//
// Everything inside the margin of a page is drawing area. The lengths of a roll are cut as long
// as the layout needs, and lie along or across it; "one sheet" is a page as large as the layout
// and its margins.
//
// Errors say which of margin, overlap or paper to change. They are those of CountSheets, which
// is to be asked first where a layout may take more sheets than anyone would join: the work
// grows with their number.
func Plan(l Layout, s Setup) (Tiling, error) {
	return NewPlanner(l).Plan(s)
}

// CountSheets returns how many sheets Plan makes at the most, none left out, without making
// them: a job may ask for millions.
func CountSheets(l Layout, s Setup) (int, error) {
	ways, err := waysUp(l, s)
	if err != nil {
		return 0, err
	}
	n := math.MaxInt
	for _, g := range ways {
		n = min(n, g.directions[0].n*g.directions[1].n)
	}
	return n, nil
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
