package planner

import (
	"cmp"
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// spread is a way up of the sheets: the page, and what the sheets show each way.
type spread struct {
	directions [2]direction // across and down
	page       geometry.Size
	scale      paper.Scale
	lying      bool
}

// waysUp returns the ways up to choose from, the upright one first.
func waysUp(l Layout, s paper.Setup) ([]spread, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if s.Stock.OneSheet {
		g, err := oneSheetSpread(l, s)
		return []spread{g}, err
	}
	var list []spread
	for _, lying := range []bool{false, true} {
		g, err := newSpread(l, s, lying)
		if err != nil {
			return nil, err
		}
		list = append(list, g)
	}
	return list, nil
}

// newSpread lays sheets one way up. A roll is cut to the length of the layout, or, where that
// is longer than a page can be, into equal lengths.
func newSpread(l Layout, s paper.Setup, lying bool) (spread, error) {
	g := spread{page: s.Stock.Size, lying: lying}
	along := 1 // the way a roll is cut
	if s.Stock.Roll {
		g.page.H = paper.LongestPage
	}
	if lying {
		g.page, along = g.page.Swap(), 0
	}
	g.scale = s.Scale.OnPage(lying)
	usable := s.Inside(g.page, g.scale)
	if err := s.CheckUsable(usable); err != nil {
		return spread{}, err
	}
	g.directions = directions(l, usable, s.Overlap)
	if s.Stock.Roll {
		d := &g.directions[along]
		long := (d.wideTo-d.wideFrom-d.overlap)/float64(d.n) + d.overlap
		*d = newDirection(d.wideFrom, d.wideTo, d.wideFrom, d.wideTo, long, d.overlap)
		area := s.Page(geometry.Size{W: geometry.Length(g.directions[0].usable), H: geometry.Length(g.directions[1].usable)}, g.scale)
		if lying {
			g.page.W = area.W
		} else {
			g.page.H = area.H
		}
	}
	return g, nil
}

func directions(l Layout, usable geometry.Size, overlap geometry.Length) [2]direction {
	wide, least := l.Bounds, l.least()
	return [2]direction{
		newDirection(float64(wide.Min.X), float64(wide.Max.X), float64(least.Min.X), float64(least.Max.X), float64(usable.W), float64(overlap)),
		newDirection(float64(wide.Min.Y), float64(wide.Max.Y), float64(least.Min.Y), float64(least.Max.Y), float64(usable.H), float64(overlap)),
	}
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

// oneSheetSpread makes one page of the layout. Like any page it goes through the printer with
// its short way across.
func oneSheetSpread(l Layout, s paper.Setup) (spread, error) {
	g := spread{lying: l.Bounds.W() > l.Bounds.H()}
	g.scale = s.Scale.OnPage(g.lying)
	g.page = s.Page(l.Bounds.Size(), g.scale)
	if most := max(g.page.W, g.page.H); most > paper.LongestPage+geometry.Tolerance {
		return spread{}, TooLong{most, paper.LongestPage}
	}
	g.directions = directions(Layout{Bounds: l.Bounds}, l.Bounds.Size(), 0)
	return g, nil
}

// joins returns how many joins there are from sheet to sheet.
func (g spread) joins() int {
	columns, rows := g.directions[0].n, g.directions[1].n
	return rows*(columns-1) + columns*(rows-1)
}

// better tells whether a spread with its joins is to be taken rather than another.
func (g spread) better(j joins, than spread, other joins) bool {
	return cmp.Or(
		cmp.Compare(j.sheets, other.sheets),
		cmp.Compare(j.cost, other.cost),
		cmp.Compare(min(other.clear, clearWanted), min(j.clear, clearWanted)),
		cmp.Compare(math.Round(float64(g.page.W*g.page.H)), math.Round(float64(than.page.W*than.page.H))),
		cmp.Compare(g.joins(), than.joins()),
	) < 0
}

// tiling makes the sheets of a spread.
func (g spread) tiling(l Layout, s paper.Setup, j joins, marks *occupied) paper.Tiling {
	across, down := g.directions[0], g.directions[1]
	t := paper.Tiling{Lying: g.lying, Overlap: s.Overlap, Rows: down.n, Columns: across.n}
	lefts, tops := across.starts(j.places[0]), down.starts(j.places[1])
	last := geometry.Pt(geometry.Length(lefts[across.n-1]+across.usable), geometry.Length(tops[down.n-1]+down.usable))
	t.Layout = l.Bounds.Intersect(geometry.Rect{Min: geometry.Pt(geometry.Length(lefts[0]), geometry.Length(tops[0])), Max: last})
	var bands [][]marked
	if marks != nil {
		bands = marks.bands(1, j.places[1])
	}
	for row := range down.n {
		for column := range across.n {
			area := geometry.RectAt(geometry.Pt(geometry.Length(lefts[column]), geometry.Length(tops[row])),
				geometry.Size{W: geometry.Length(across.usable), H: geometry.Length(down.usable)})
			from, to := ends(j.places[0], column)
			if bands != nil && !holds(bands[row], from, to) {
				continue
			}
			above, below := ends(j.places[1], row)
			cell := area
			for _, e := range []struct {
				at   *geometry.Length
				join float64
			}{{&cell.Min.X, from}, {&cell.Max.X, to}, {&cell.Min.Y, above}, {&cell.Max.Y, below}} {
				if !math.IsInf(e.join, 0) {
					*e.at = geometry.Length(e.join)
				}
			}
			t.Sheets = append(t.Sheets, paper.Sheet{
				Name: paper.SheetName(row+1, column+1), Row: row + 1, Column: column + 1,
				Area: area, At: geometry.Pt(s.Margin, s.Margin),
				Scale: g.scale, Page: g.page,
				Cell: cell,
			})
		}
	}
	return t.Without(func(paper.Sheet) bool { return false })
}
