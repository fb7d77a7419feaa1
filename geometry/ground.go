package geometry

import (
	"math"
	"slices"
)

// Ground is an outline made ready to be asked again and again whether it holds others, clear of
// its edge: of a polygon it knows which sides are near a place, and what lies far from all of
// them. Its answers are those of Outline.HoldsClear.
type Ground struct {
	outline Outline
	clear   Length
	index   *sideIndex // nil: a circle, or no outline
}

// NewGround makes the ground of an outline; what it holds keeps at least clear from its edge. A
// clear below 0 counts as 0.
func NewGround(o Outline, clear Length) Ground {
	g := Ground{outline: o, clear: max(clear, 0)}
	if len(o.corners) > 2 {
		g.index = newSideIndex(o.corners)
	}
	return g
}

// Holds tells whether inner lies wholly on the ground and keeps clear of its edge, within
// Tolerance.
func (g Ground) Holds(inner Outline) bool {
	if g.index == nil {
		return g.outline.HoldsClear(inner, g.clear)
	}
	box := inner.Bounds()
	if holds, known := g.HoldsBox(box); known {
		return holds
	}
	near := g.index.near(box.Grow(g.clear + 2*Tolerance))
	if inner.radius > 0 {
		if !g.index.contains(inner.centre, near) {
			return false
		}
		for _, s := range near {
			if segmentDistance(inner.centre, s.a, s.b)-inner.radius < g.clear-Tolerance {
				return false
			}
		}
		return true
	}
	for _, c := range inner.corners {
		if !g.index.contains(c, near) {
			return false
		}
	}
	if g.clear <= Tolerance {
		return g.index.holdsEdge(inner.corners, near)
	}
	for i, a := range inner.corners {
		b := inner.corners[(i+1)%len(inner.corners)]
		for _, s := range near {
			if meet(a, b, s.a, s.b) || piecesDistance(a, b, s.a, s.b) < g.clear-Tolerance {
				return false
			}
		}
	}
	return true
}

// HoldsBox tells whether all that lies in a box is held; known is false where it takes more
// than the box to tell.
func (g Ground) HoldsBox(box Rect) (holds, known bool) {
	if g.index == nil {
		return false, false
	}
	return g.index.judge(box.Grow(g.clear + 2*Tolerance))
}

// sideIndex finds the sides of a polygon by place. It lays a grid of square cells over the
// bounds of the polygon.
type sideIndex struct {
	bounds        Rect
	cell          Length
	columns, rows int
	bands         [][]piece // the sides that pass each row of cells
	passed        []int32   // cells with a side in them, of those above and left of a grid point
	inside        []bool    // of each cell without a side: whether it lies in the polygon
}

// piece is a side from a to b.
type piece struct{ a, b Point }

func (s piece) box() Rect {
	return Rect{Point{min(s.a.X, s.b.X), min(s.a.Y, s.b.Y)}, Point{max(s.a.X, s.b.X), max(s.a.Y, s.b.Y)}}
}

// The grid has so many cells for a corner, but no more than most in all.
const cellsForCorner, mostCells = 256, 1 << 16

func newSideIndex(p Polygon) *sideIndex {
	x := &sideIndex{bounds: p.Bounds().Grow(4 * Tolerance)}
	w, h := float64(x.bounds.W()), float64(x.bounds.H())
	cells := float64(min(cellsForCorner*len(p), mostCells))
	// No side of the grid is longer than the cells there are.
	x.cell = Length(max(math.Sqrt(w*h/cells), w/cells, h/cells))
	x.columns, x.rows = int(w/float64(x.cell))+1, int(h/float64(x.cell))+1
	x.bands = make([][]piece, x.rows)
	taken := make([]bool, x.columns*x.rows)
	for i, a := range p {
		s := piece{a, p[(i+1)%len(p)]}
		box := s.box()
		for r := x.row(box.Min.Y - Tolerance); r <= x.row(box.Max.Y+Tolerance); r++ {
			x.bands[r] = append(x.bands[r], s)
			low, high := s.across(x.bounds.Min.Y+Length(r)*x.cell-Tolerance, x.bounds.Min.Y+Length(r+1)*x.cell+Tolerance)
			for c := x.column(low - Tolerance); c <= x.column(high+Tolerance); c++ {
				taken[r*x.columns+c] = true
			}
		}
	}
	x.count(taken)
	x.fill()
	return x
}

func (x *sideIndex) column(at Length) int {
	return max(0, min(x.columns-1, int((at-x.bounds.Min.X)/x.cell)))
}

func (x *sideIndex) row(at Length) int {
	return max(0, min(x.rows-1, int((at-x.bounds.Min.Y)/x.cell)))
}

// across returns from where to where a side lies between two heights.
func (s piece) across(top, bottom Length) (low, high Length) {
	at := func(y Length) Length {
		y = max(min(s.a.Y, s.b.Y), min(max(s.a.Y, s.b.Y), y))
		return s.a.X + (y-s.a.Y)/(s.b.Y-s.a.Y)*(s.b.X-s.a.X)
	}
	if (s.b.Y - s.a.Y).Abs() <= Tolerance {
		return min(s.a.X, s.b.X), max(s.a.X, s.b.X)
	}
	u, v := at(top), at(bottom)
	return min(u, v), max(u, v)
}

// count adds up the cells taken, so that those in any box of cells are told by four numbers.
func (x *sideIndex) count(taken []bool) {
	wide := x.columns + 1
	x.passed = make([]int32, wide*(x.rows+1))
	for r := range x.rows {
		var inRow int32
		for c := range x.columns {
			if taken[r*x.columns+c] {
				inRow++
			}
			x.passed[(r+1)*wide+c+1] = x.passed[r*wide+c+1] + inRow
		}
	}
}

// fill finds which cells lie in the polygon, by what sides lie left of their middles.
func (x *sideIndex) fill() {
	x.inside = make([]bool, x.columns*x.rows)
	for r, band := range x.bands {
		y := x.bounds.Min.Y + (Length(r)+0.5)*x.cell
		var crossings []Length
		for _, s := range band {
			if s.passes(y) {
				crossings = append(crossings, s.at(y))
			}
		}
		slices.Sort(crossings)
		in, next := false, 0
		for c := range x.columns {
			middle := x.bounds.Min.X + (Length(c)+0.5)*x.cell
			for ; next < len(crossings) && crossings[next] < middle; next++ {
				in = !in
			}
			x.inside[r*x.columns+c] = in
		}
	}
}

// passes tells whether a side passes a height, its lower end not counted.
func (s piece) passes(y Length) bool { return (s.a.Y > y) != (s.b.Y > y) }

// at is where a side passes a height.
func (s piece) at(y Length) Length { return s.a.X + (y-s.a.Y)/(s.b.Y-s.a.Y)*(s.b.X-s.a.X) }

// judge tells whether a box lies in the polygon; known is false where a side may be in it.
func (x *sideIndex) judge(box Rect) (inside, known bool) {
	if !x.bounds.Holds(box) {
		return false, !x.bounds.Touches(box)
	}
	left, right := x.column(box.Min.X), x.column(box.Max.X)
	top, bottom := x.row(box.Min.Y), x.row(box.Max.Y)
	wide := x.columns + 1
	n := x.passed[(bottom+1)*wide+right+1] - x.passed[top*wide+right+1] - x.passed[(bottom+1)*wide+left] + x.passed[top*wide+left]
	return n == 0 && x.inside[top*x.columns+left], n == 0
}

// near returns the sides whose boxes touch a box.
func (x *sideIndex) near(box Rect) []piece {
	var near []piece
	first, last := x.row(box.Min.Y), x.row(box.Max.Y)
	for r := first; r <= last; r++ {
		for _, s := range x.bands[r] {
			b := s.box()
			// A side that passes several rows is taken in the first of them.
			if box.Touches(b) && max(first, x.row(b.Min.Y-Tolerance)) == r {
				near = append(near, s)
			}
		}
	}
	return near
}

// contains is Polygon.Contains; near are the sides that may be within Tolerance of q.
func (x *sideIndex) contains(q Point, near []piece) bool {
	for _, s := range near {
		if segmentDistance(q, s.a, s.b) <= Tolerance {
			return true
		}
	}
	if q.Y < x.bounds.Min.Y || q.Y > x.bounds.Max.Y {
		return false
	}
	in := false
	for _, s := range x.bands[x.row(q.Y)] {
		if s.passes(q.Y) && q.X < s.at(q.Y) {
			in = !in
		}
	}
	return in
}

// holdsEdge is Polygon.holdsEdge.
func (x *sideIndex) holdsEdge(q Polygon, near []piece) bool {
	for i, a := range q {
		b := q[(i+1)%len(q)]
		box := piece{a, b}.box().Grow(Tolerance)
		places := []float64{0, 1}
		for _, s := range near {
			if box.Touches(s.box()) {
				places = line(a, b).meetLine(places, s.a, s.b.Sub(s.a))
			}
		}
		places = slices.DeleteFunc(places, func(t float64) bool { return !(t >= 0 && t <= 1) })
		slices.Sort(places)
		for k, to := range places[1:] {
			if !x.contains(line(a, b).at((places[k]+to)/2), near) {
				return false
			}
		}
	}
	return true
}

// piecesDistance is the distance of two pieces that do not meet.
func piecesDistance(a, b, c, d Point) Length {
	return min(segmentDistance(a, c, d), segmentDistance(b, c, d), segmentDistance(c, a, b), segmentDistance(d, a, b))
}
