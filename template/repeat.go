package template

import "underlay/geometry"

// Site is where one print goes: its origin in the item's frame, the block's turn, and its
// place in the repeat.
type Site struct {
	Origin geometry.Point
	Turn   geometry.Angle
	// Column and Row count from 1 at the top left; 0 where the repeat has none.
	Column, Row int
	key         geometry.Site // index in the repeat's lattice, or along its run
}

// layout is what a repeat is given: where to print, what, and how far apart.
type layout struct {
	area Area
	pass *Pass
	cell geometry.Size // bounds of the face, after turning where every turn is a quarter turn
}

// repeat is one way of setting prints out.
type repeat struct {
	// ways lists every way of centring with what it gives.
	ways func(layout) []Choice
	// place returns the prints of one of them.
	place func(layout, Choice) []Site
	// next lists the steps, in keys, from a print to those it stands next to; with each goes
	// its opposite.
	next []geometry.Site
	// grid: columns and rows have one count each, edges in line, so ticks and tapes can name them.
	grid bool
}

// repeatOf returns the repeat of a job file's name for it: one line each.
func repeatOf(name string) repeat {
	return map[string]repeat{
		"straight": straight(),
	}[name]
}

func newLayout(area Area, pass *Pass) layout {
	cell := pass.Block.Size
	if allQuarterTurned(pass.Turns) {
		cell = cell.Swap()
	}
	return layout{area, pass, cell}
}

// allQuarterTurned tells whether every print lies on its side.
func allQuarterTurned(turns [][]int) bool {
	for _, row := range turns {
		for _, t := range row {
			if t%180 == 0 {
				return false
			}
		}
	}
	return true
}

// turnAt returns the turn of the print in a column and row counted from 1.
func (l layout) turnAt(column, row int) geometry.Angle {
	t := l.pass.Turns[(row-1)%len(l.pass.Turns)]
	return geometry.Angle(t[(column-1)%len(t)])
}

// describe fills in what a choice gives.
func (l layout) describe(c Choice, sites []Site) Choice {
	c.Count = len(sites)
	c.Border = l.borders(sites)
	rows := map[int]int{}
	columns := map[int]int{}
	for _, s := range sites {
		rows[s.Row]++
		columns[s.Column]++
	}
	c.Rows, c.Columns = len(rows), len(columns)
	return c
}

// borders returns the plain cloth left on each side, measured inside the bounds of the item.
// With no print at all the whole cloth is plain: half of it counts to either side.
func (l layout) borders(sites []Site) geometry.Edges {
	field := l.area.Rect
	if len(sites) == 0 {
		c := field.Centre()
		field = geometry.Rect{Min: c, Max: c}
	} else {
		field = fieldOf(l.pass.Block, sites)
	}
	b := l.area.cloth
	e := geometry.Edges{
		Top: field.Min.Y - b.Min.Y, Right: b.Max.X - field.Max.X,
		Bottom: b.Max.Y - field.Max.Y, Left: field.Min.X - b.Min.X,
	}
	return e
}

// fieldOf returns the bounds of all prints together.
func fieldOf(b *Block, sites []Site) geometry.Rect {
	half := map[geometry.Angle]geometry.Rect{}
	var field geometry.Rect
	for i, s := range sites {
		r, ok := half[s.Turn]
		if !ok {
			r = b.Face.Turn(s.Turn).Bounds()
			half[s.Turn] = r
		}
		r = r.Move(s.Origin)
		if i == 0 {
			field = r
		}
		field = field.Union(r)
	}
	return field
}

func originBounds(sites []Site) geometry.Rect {
	r := geometry.Rect{Min: sites[0].Origin, Max: sites[0].Origin}
	for _, s := range sites {
		r = r.Union(geometry.Rect{Min: s.Origin, Max: s.Origin})
	}
	return r
}
