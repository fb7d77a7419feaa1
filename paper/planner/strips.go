package planner

import (
	"fmt"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// Rim is the part of a layout that strips show: its edge, and all that is outside of it.
type Rim struct {
	Edge  geometry.Path // closed, in the layout's frame
	Sides [4]string     // what the sides are called: top, right, bottom, left
	Rest  string        // and the pieces of an edge that runs slanted or round between them
}

// How far strips reach inside the edge, from least to most: as little as lets most of them stand
// beside each other on a page.
const (
	leastInside = 20 * geometry.Millimetre
	mostInside  = 30 * geometry.Millimetre
)

// PlanStrips cuts the rim of a layout into upright strips, a rectangle each, and packs them on as
// few pages of a stock as it can: several sheets of the tiling are then on one page, see
// Sheet.Leaf. Level strips are packed on lying pages, the others on upright ones, so that all keep
// the layout's own way up. Neighbours share the overlap; the one whose whole end lies at a join
// is cut there.
//
// It is false where strips do not go: on one sheet, where there is no inside to leave out, or
// where they would not show all of the layout's marks.
func PlanStrips(l Layout, rim Rim, s paper.Setup) (paper.Tiling, bool) {
	cloth := rim.Edge.Bounds()
	if s.Stock.OneSheet || cloth.Empty() {
		return paper.Tiling{}, false
	}
	c := cutter{layout: l, rim: rim, setup: s, inner: cloth.Grow(-insideOf(l, cloth, s))}
	if c.inner.W() <= 2*s.Overlap || c.inner.H() <= 2*s.Overlap || !c.sides() || !c.between() || !c.showAll() {
		return paper.Tiling{}, false
	}
	t := paper.Tiling{Layout: l.Bounds, Overlap: s.Overlap, Strips: true}
	c.pack()
	for _, p := range c.pieces {
		p.Kept, p.Cell = p.Area, p.Area
		t.Sheets = append(t.Sheets, p.Sheet)
	}
	return t, true
}

// insideOf returns how far strips reach inside the edge.
func insideOf(l Layout, cloth geometry.Rect, s paper.Setup) geometry.Length {
	reach := max(cloth.Min.X-l.Bounds.Min.X, cloth.Min.Y-l.Bounds.Min.Y, l.Bounds.Max.X-cloth.Max.X, l.Bounds.Max.Y-cloth.Max.Y)
	room := s.Inside(s.Stock.Size, s.Scale.OnPage(false)).W
	if lying := s.Inside(s.Stock.Size.Swap(), s.Scale.OnPage(true)).H; lying < room {
		room = lying
	}
	best, most := geometry.Length(mostInside), 0
	for in := geometry.Length(mostInside); in >= leastInside; in -= 0.5 {
		if n := int(float64(room/(reach+in)) + 1e-9); n > most {
			best, most = in, n
		}
	}
	return best
}

// piece is a strip under way.
type piece struct {
	paper.Sheet
	lying bool // of its page
}

// cutter cuts a rim into pieces.
type cutter struct {
	layout Layout
	rim    Rim
	setup  paper.Setup
	inner  geometry.Rect // what the strips along the sides leave over
	pieces []*piece
	sided  [4][]*piece // along the top, right, bottom and left
}

// sides cuts the strips along the four sides: those at the top and the bottom from end to end,
// the others between them.
func (c *cutter) sides() bool {
	b, in, v := c.layout.Bounds, c.inner, c.setup.Overlap
	for i, r := range []geometry.Rect{
		{Min: b.Min, Max: geometry.Pt(b.Max.X, in.Min.Y)},
		{Min: geometry.Pt(in.Max.X, in.Min.Y-v), Max: geometry.Pt(b.Max.X, in.Max.Y+v)},
		{Min: geometry.Pt(b.Min.X, in.Max.Y), Max: b.Max},
		{Min: geometry.Pt(b.Min.X, in.Min.Y-v), Max: geometry.Pt(in.Min.X, in.Max.Y+v)},
	} {
		if !c.side(i, r, i%2 == 0) {
			return false
		}
	}
	for _, along := range []int{1, 3} {
		list := c.sided[along]
		if len(list) == 0 {
			continue
		}
		first, last := list[0], list[len(list)-1]
		c.corner(first, 0, in.Min.Y-v/2, paper.TopSide)
		c.corner(last, 2, in.Max.Y+v/2, paper.BottomSide)
	}
	return true
}

// side cuts one side, its joins where they are best.
func (c *cutter) side(side int, r geometry.Rect, lying bool) bool {
	s := c.setup
	scale := s.Scale.OnPage(lying)
	long := s.Stock.Size.H
	if s.Stock.Roll {
		long = paper.LongestPage
	}
	const hair = 1e-6
	if deep := r.H()*geometry.Length(scale.Down) + 2*s.Margin + hair; lying {
		s.Stock = paper.Stock{Size: geometry.Size{W: deep, H: long}}
	} else {
		s.Stock = paper.Stock{Size: geometry.Size{W: r.W()*geometry.Length(scale.Across) + 2*s.Margin + hair, H: long}}
	}
	l := c.layout
	l.Bounds, l.Least, l.Marks = r, geometry.Rect{}, nil
	for _, m := range c.layout.Marks {
		if m.Touches(r) {
			l.Marks = append(l.Marks, m.Intersect(r))
		}
	}
	if len(l.Marks) == 0 {
		return true
	}
	t, err := Plan(l, s)
	if err != nil || t.Lying != lying {
		return false
	}
	var made []*piece
	for i, sheet := range t.Sheets {
		p := &piece{Sheet: paper.Sheet{Name: stripName(c.rim.Sides[side], i, len(t.Sheets)), Area: sheet.Area.Intersect(r), Scale: sheet.Scale}, lying: lying}
		if i > 0 && (sheet.Left != "" || sheet.Above != "") {
			from, to, e := geometry.Pt(sheet.Cell.Min.X, r.Min.Y), geometry.Pt(sheet.Cell.Min.X, r.Max.Y), paper.LeftSide
			if !lying {
				from, to, e = geometry.Pt(r.Min.X, sheet.Cell.Min.Y), geometry.Pt(r.Max.X, sheet.Cell.Min.Y), paper.TopSide
			}
			join(p, made[i-1], from, to, e)
		}
		made = append(made, p)
	}
	c.sided[side] = made
	c.pieces = append(c.pieces, made...)
	return true
}

func stripName(side string, i, n int) string {
	if n == 1 {
		return side
	}
	return fmt.Sprint(side, " ", i+1)
}

// join joins two pieces along a line: the first is cut there, on its side e.
func join(cut, laid *piece, from, to geometry.Point, e paper.Side) {
	cut.Joined = append(cut.Joined, paper.Join{Name: laid.Name, Side: e, From: from, To: to, Cut: true})
	laid.Joined = append(laid.Joined, paper.Join{Name: cut.Name, Side: e.Opposite(), From: from, To: to, Cut: false})
}

// corner joins the end of a piece to the strip along a side that it overlaps most.
func (c *cutter) corner(p *piece, along int, at geometry.Length, e paper.Side) {
	var best *piece
	most := geometry.Length(0)
	for _, other := range c.sided[along] {
		// Without an overlap the two only touch.
		if o := other.Area.Intersect(p.Area); min(o.W(), o.H()) > -geometry.Tolerance && max(o.W(), o.H()) > most {
			best, most = other, max(o.W(), o.H())
		}
	}
	if best == nil {
		return
	}
	o := best.Area.Intersect(p.Area)
	from, to := geometry.Pt(o.Min.X, at), geometry.Pt(o.Max.X, at)
	if e == paper.LeftSide || e == paper.RightSide {
		from, to = geometry.Pt(at, o.Min.Y), geometry.Pt(at, o.Max.Y)
	}
	join(p, best, from, to, e)
}

// showAll tells whether the pieces show all marks of the layout.
func (c *cutter) showAll() bool {
	const step = 5 * geometry.Millimetre
	shown := func(p geometry.Point) bool {
		return slices.ContainsFunc(c.pieces, func(q *piece) bool { return q.Area.Contains(p) })
	}
	for _, m := range c.layout.Marks {
		across, down := math.Ceil(float64(m.W()/step)), math.Ceil(float64(m.H()/step))
		for i := 0.0; i <= across; i++ {
			for k := 0.0; k <= down; k++ {
				p := geometry.Pt(m.Min.X+m.W()*geometry.Length(i/max(across, 1)), m.Min.Y+m.H()*geometry.Length(k/max(down, 1)))
				if !shown(p) {
					return false
				}
			}
		}
	}
	return true
}
