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
	Area           geometry.Rect
	At             geometry.Point
	ScaleX, ScaleY float64
	Page           geometry.Size
	// Kept is Area up to the middle of what it shares with each printed neighbour: the part
	// that is this sheet's once all are joined.
	Kept geometry.Rect
	// The neighbours that are printed; "" where there is none.
	Left, Right, Above, Below string
}

// OnPage returns where the layout point p lies on the sheet's page.
func (s Sheet) OnPage(p geometry.Point) geometry.Point {
	d := p.Sub(s.Area.Min)
	return geometry.Point{X: s.At.X + d.X*geometry.Length(s.ScaleX), Y: s.At.Y + d.Y*geometry.Length(s.ScaleY)}
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

// Tile spreads the layout over the fewest sheets of the stock that cover it, neighbours
// sharing overlap (as measured on the layout): upright or lying, whichever takes fewer; then
// fewer joins; then upright. The layout is in the middle of the grid. Everything inside the
// margin of a page is drawing area.
//
// A roll lies upright, as wide as it is and as long as the layout needs; "one sheet" is a
// page as large as the layout and its margins.
//
// Errors say which of margin, overlap or paper to change.
func Tile(layout geometry.Rect, stock Stock, margin, overlap geometry.Length, scale Scale) (Tiling, error) {
	g, err := chooseSpread(layout.Size(), stock, margin, overlap, scale)
	if err != nil {
		return Tiling{}, err
	}
	t := Tiling{Layout: layout, Lying: g.lying, Overlap: overlap, Rows: g.rows, Columns: g.columns}
	step := geometry.Size{W: g.area.W - overlap, H: g.area.H - overlap}
	span := geometry.Size{
		W: step.W*geometry.Length(g.columns) + overlap,
		H: step.H*geometry.Length(g.rows) + overlap,
	}
	first := geometry.RectAround(layout.Centre(), span).Min
	for row := range g.rows {
		for column := range g.columns {
			at := first.Add(geometry.Pt(step.W*geometry.Length(column), step.H*geometry.Length(row)))
			t.Sheets = append(t.Sheets, Sheet{
				Name: SheetName(row+1, column+1), Row: row + 1, Column: column + 1,
				Area: geometry.RectAt(at, g.area), At: geometry.Pt(margin, margin),
				ScaleX: g.scaleX, ScaleY: g.scaleY, Page: g.page,
			})
		}
	}
	return t.Without(func(Sheet) bool { return false }), nil
}

// CountSheets returns how many sheets Tile would make, without making them: a job may ask for
// millions.
func CountSheets(layout geometry.Rect, stock Stock, margin, overlap geometry.Length, scale Scale) (int, error) {
	g, err := chooseSpread(layout.Size(), stock, margin, overlap, scale)
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
	rows, columns  int
	page, area     geometry.Size
	scaleX, scaleY float64
	lying          bool
}

func (g spread) joins() int { return g.rows*(g.columns-1) + g.columns*(g.rows-1) }

func chooseSpread(layout geometry.Size, stock Stock, margin, overlap geometry.Length, scale Scale) (spread, error) {
	switch {
	case !(margin >= 0):
		return spread{}, fmt.Errorf("a margin of %s mm is less than nothing; write 0 mm or more", millimetres(margin))
	case !(overlap >= 0):
		return spread{}, fmt.Errorf("an overlap of %s mm is less than nothing; write 0 mm or more", millimetres(overlap))
	case stock.OneSheet:
		return oneSheetSpread(layout, margin, scale)
	case stock.Roll:
		return rollSpread(layout, stock, margin, overlap, scale)
	}
	upright, err := sheetSpread(layout, stock, margin, overlap, scale, false)
	if err != nil {
		return spread{}, err
	}
	lying, err := sheetSpread(layout, stock, margin, overlap, scale, true)
	if err != nil {
		return spread{}, err
	}
	n, m := upright.rows*upright.columns, lying.rows*lying.columns
	if m < n || m == n && lying.joins() < upright.joins() {
		return lying, nil
	}
	return upright, nil
}

func sheetSpread(layout geometry.Size, stock Stock, margin, overlap geometry.Length, scale Scale, lying bool) (spread, error) {
	g := spread{page: stock.Size, lying: lying}
	if lying {
		g.page = stock.Size.Swap()
	}
	g.scaleX, g.scaleY = scale.OnPage(lying)
	g.area = g.inside(g.page, margin)
	if err := checkUsable(stock.Name, min(g.area.W, g.area.H), margin, overlap); err != nil {
		return spread{}, err
	}
	g.columns, g.rows = sheetsAlong(layout.W, g.area.W, overlap), sheetsAlong(layout.H, g.area.H, overlap)
	return g, nil
}

// rollSpread cuts a roll to the length of the layout, or, where that is longer than a page can
// be, into equal lengths.
func rollSpread(layout geometry.Size, stock Stock, margin, overlap geometry.Length, scale Scale) (spread, error) {
	var g spread
	g.scaleX, g.scaleY = scale.OnPage(false)
	g.page = geometry.Size{W: stock.Size.W, H: longestPage}
	g.area = g.inside(g.page, margin)
	if err := checkUsable(stock.Name, min(g.area.W, g.area.H), margin, overlap); err != nil {
		return spread{}, err
	}
	g.columns, g.rows = sheetsAlong(layout.W, g.area.W, overlap), sheetsAlong(layout.H, g.area.H, overlap)
	g.area.H = (layout.H-overlap)/geometry.Length(g.rows) + overlap
	g.page.H = g.area.H*geometry.Length(g.scaleY) + 2*margin
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

func oneSheetSpread(layout geometry.Size, margin geometry.Length, scale Scale) (spread, error) {
	g := spread{rows: 1, columns: 1, area: layout}
	g.scaleX, g.scaleY = scale.OnPage(false)
	g.page = geometry.Size{
		W: layout.W*geometry.Length(g.scaleX) + 2*margin,
		H: layout.H*geometry.Length(g.scaleY) + 2*margin,
	}
	if most := max(g.page.W, g.page.H); most > longestPage+geometry.Tolerance {
		return spread{}, TooLong{most, longestPage}
	}
	return g, nil
}

// inside returns how much of the layout the page shows inside its margin.
func (g spread) inside(page geometry.Size, margin geometry.Length) geometry.Size {
	return geometry.Size{
		W: (page.W - 2*margin) / geometry.Length(g.scaleX),
		H: (page.H - 2*margin) / geometry.Length(g.scaleY),
	}
}

func checkUsable(name string, usable, margin, overlap geometry.Length) error {
	switch {
	case usable <= geometry.Tolerance:
		return fmt.Errorf("a margin of %s mm on every edge leaves nothing of the paper %q to print on; write a smaller margin or a larger paper",
			millimetres(margin), name)
	case overlap >= usable-geometry.Tolerance:
		return fmt.Errorf("an overlap of %s mm is as much as the paper %q can show inside its margin, %s mm; write a smaller overlap or a larger paper",
			millimetres(overlap), name, millimetres(usable))
	}
	return nil
}

// mostAlong keeps the number of sheets one way, and its square, in the range of an int.
const mostAlong = 1 << 30

// sheetsAlong returns how many sheets that each show usable, and share overlap, it takes to
// cover length: ceil((length - overlap) / (usable - overlap)).
func sheetsAlong(length, usable, overlap geometry.Length) int {
	n := math.Ceil(float64((length - overlap - geometry.Tolerance) / (usable - overlap)))
	return int(math.Min(math.Max(n, 1), mostAlong))
}
