package paper

import (
	"fmt"
	"math"

	"underlay/geometry"
)

// Sheet is one piece of paper of a guide laid out over several.
type Sheet struct {
	Name        string // row in letters, column in figures: "A1"
	Row, Column int    // counted from 1, from the top left
	// Area is the part of the layout on this sheet, in the layout's frame. A layout point P
	// lies at At + (P - Area.Min) * scale on the page, from its top left corner.
	Area  geometry.Rect
	At    geometry.Point
	Scale Scale // along the page's own x and y, both factors said
	Page  geometry.Size
	// Kept is Area up to the middle of what it shares with each printed neighbour: the part
	// that is this sheet's once all are joined.
	Kept geometry.Rect
	// The neighbours that are printed; "" where there is none.
	Left, Right, Above, Below string
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
	Layout        geometry.Rect
	Lying         bool // each page wider than tall, of a stock that is not
	Overlap       geometry.Length
	Rows, Columns int
	Sheets        []Sheet // by rows, each from the left
}

// Tile spreads the layout over the fewest sheets of the stock that cover it: upright or lying, whichever takes fewer; then
// fewer joins; then upright. The layout is in the middle of the grid. Everything inside the
// margin of a page is drawing area.
//
// A roll lies upright, as wide as it is and as long as the layout needs; "one sheet" is a
// page as large as the layout and its margins.
//
// Errors say which of margin, overlap or paper to change.
func Tile(layout geometry.Rect, s Setup) (Tiling, error) {
	g, err := s.chooseSpread(layout.Size())
	if err != nil {
		return Tiling{}, err
	}
	t := Tiling{Layout: layout, Lying: g.lying, Overlap: s.Overlap, Rows: g.rows, Columns: g.columns}
	step := geometry.Size{W: g.area.W - s.Overlap, H: g.area.H - s.Overlap}
	span := geometry.Size{
		W: step.W*geometry.Length(g.columns) + s.Overlap,
		H: step.H*geometry.Length(g.rows) + s.Overlap,
	}
	first := geometry.RectAround(layout.Centre(), span).Min
	for row := range g.rows {
		for column := range g.columns {
			at := first.Add(geometry.Pt(step.W*geometry.Length(column), step.H*geometry.Length(row)))
			t.Sheets = append(t.Sheets, Sheet{
				Name: SheetName(row+1, column+1), Row: row + 1, Column: column + 1,
				Area: geometry.RectAt(at, g.area), At: geometry.Pt(s.Margin, s.Margin),
				Scale: g.scale, Page: g.page,
			})
		}
	}
	return t.Without(func(Sheet) bool { return false }), nil
}

// CountSheets returns how many sheets Tile would make, without making them: a job may ask for
// millions.
func CountSheets(layout geometry.Rect, s Setup) (int, error) {
	g, err := s.chooseSpread(layout.Size())
	return g.rows * g.columns, err
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
	half := t.Overlap / 2
	for i := range left {
		s := &left[i]
		s.Left, s.Right = there[place{s.Row, s.Column - 1}], there[place{s.Row, s.Column + 1}]
		s.Above, s.Below = there[place{s.Row - 1, s.Column}], there[place{s.Row + 1, s.Column}]
		var lip geometry.Edges
		for _, e := range []struct {
			neighbour string
			lip       *geometry.Length
		}{{s.Left, &lip.Left}, {s.Right, &lip.Right}, {s.Above, &lip.Top}, {s.Below, &lip.Bottom}} {
			if e.neighbour != "" {
				*e.lip = half
			}
		}
		s.Kept = s.Area.In(lip)
	}
	t.Sheets = left
	return t
}

// spread is a way to lay out sheets: how many, of which page, and the part of the layout each
// shows.
type spread struct {
	rows, columns int
	page, area    geometry.Size
	scale         Scale
	lying         bool
}

func (g spread) joins() int { return g.rows*(g.columns-1) + g.columns*(g.rows-1) }

func (s Setup) chooseSpread(layout geometry.Size) (spread, error) {
	if err := s.check(); err != nil {
		return spread{}, err
	}
	switch {
	case s.Stock.OneSheet:
		return s.oneSheetSpread(layout)
	case s.Stock.Roll:
		return s.rollSpread(layout)
	}
	upright, err := s.sheetSpread(layout, false)
	if err != nil {
		return spread{}, err
	}
	lying, err := s.sheetSpread(layout, true)
	if err != nil {
		return spread{}, err
	}
	n, m := upright.rows*upright.columns, lying.rows*lying.columns
	if m < n || m == n && lying.joins() < upright.joins() {
		return lying, nil
	}
	return upright, nil
}

func (s Setup) sheetSpread(layout geometry.Size, lying bool) (spread, error) {
	g := spread{page: s.Stock.Size, lying: lying, scale: s.Scale.OnPage(lying)}
	if lying {
		g.page = g.page.Swap()
	}
	g.area = s.inside(g.page, g.scale)
	if err := s.checkUsable(g.area); err != nil {
		return spread{}, err
	}
	g.columns, g.rows = sheetsAlong(layout.W, g.area.W, s.Overlap), sheetsAlong(layout.H, g.area.H, s.Overlap)
	return g, nil
}

// rollSpread cuts a roll to the length of the layout, or, where that is longer than a page can
// be, into equal lengths.
func (s Setup) rollSpread(layout geometry.Size) (spread, error) {
	g := spread{page: geometry.Size{W: s.Stock.Size.W, H: longestPage}, scale: s.Scale.OnPage(false)}
	g.area = s.inside(g.page, g.scale)
	if err := s.checkUsable(g.area); err != nil {
		return spread{}, err
	}
	g.columns, g.rows = sheetsAlong(layout.W, g.area.W, s.Overlap), sheetsAlong(layout.H, g.area.H, s.Overlap)
	g.area.H = (layout.H-s.Overlap)/geometry.Length(g.rows) + s.Overlap
	g.page.H = s.page(g.area, g.scale).H
	return g, nil
}

// TooLong is why a layout cannot be one sheet: the side it would have, and the longest a page can
// have.
type TooLong struct{ Side, Most geometry.Length }

func (e TooLong) Error() string { return e.Words(geometry.UnitMM) }

// Words says it in the maker's unit.
func (e TooLong) Words(u geometry.Unit) string {
	return fmt.Sprintf("one sheet would be %s long, and a page can be %s at most; write a paper such as \"roll 610 mm\" or \"A0\"",
		u.Format(e.Side), u.Format(e.Most))
}

func (s Setup) oneSheetSpread(layout geometry.Size) (spread, error) {
	g := spread{rows: 1, columns: 1, area: layout, scale: s.Scale.OnPage(false)}
	g.page = s.page(g.area, g.scale)
	if most := max(g.page.W, g.page.H); most > longestPage+geometry.Tolerance {
		return spread{}, TooLong{most, longestPage}
	}
	return g, nil
}

// mostAlong keeps the number of sheets one way, and its square, in the range of an int.
const mostAlong = 1 << 30

// sheetsAlong returns how many sheets that each show usable, and share overlap, it takes to
// cover length: ceil((length - overlap) / (usable - overlap)).
func sheetsAlong(length, usable, overlap geometry.Length) int {
	n := math.Ceil(float64((length - overlap - geometry.Tolerance) / (usable - overlap)))
	return int(math.Min(math.Max(n, 1), mostAlong))
}
