package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// layout is what a repeat is given: where to print, what, and how far apart.
type layout struct {
	area   Area
	pass   *job.Pass
	cell   geometry.Size // of a place: see placeOf
	boxes  []turnedBox   // of the face in the turns it mostly has
	item   *job.Item
	units  geometry.Unit // for what is said to the maker
	target *PassPlan     // the pass that this one is seated by; nil: none
	before []*PassPlan   // of the item, printed before this one
	moves  *Moves        // nil: the cloth is not moved along
}

func newLayout(area Area, pass *job.Pass) layout {
	return layout{area: area, pass: pass, cell: pass.Place(), boxes: turnedBoxes(pass)}
}

// turnedBox is the bounds of a face, its origin at (0, 0), in one of its turns.
type turnedBox struct {
	block *job.Block
	turn  geometry.Angle
	box   geometry.Rect
}

func turnedBoxes(pass *job.Pass) []turnedBox {
	var boxes []turnedBox
	for _, t := range pass.Turns.Each() {
		turn := t
		if pass.Slanted() {
			turn = (t + pass.GridTurn).Normal()
		}
		for _, part := range pass.Parts() {
			boxes = append(boxes, turnedBox{part.Block, turn, part.Block.Face.Turn(turn).Bounds()})
		}
	}
	return boxes
}

// leastGap is the gap that prints are counted with.
func (l layout) leastGap() job.Spacing {
	return job.Spacing{Across: l.pass.Gap.Across.Least, Down: l.pass.Gap.Down.Least}
}

// sameBounds tells whether the face has the bounds of the cell however it is turned here. Where
// blocks are mixed it is whole places that have to fit.
func (l layout) sameBounds() bool {
	if !l.pass.Mix.None() {
		return true
	}
	size := l.pass.Block.Size
	return size.W == size.H || !l.pass.Turns.Mixed()
}

// needs returns how far from each edge of the area's bounds an origin must be at the least,
// whichever of its turns the print has, on top of a turn of the whole.
func (l layout) needs(turn geometry.Angle) geometry.Edges {
	var e geometry.Edges
	if !l.pass.Mix.None() && turn == 0 {
		return geometry.Edges{Top: l.cell.H / 2, Right: l.cell.W / 2, Bottom: l.cell.H / 2, Left: l.cell.W / 2}
	}
	for i, b := range l.facesTurned(turn) {
		n := geometry.Edges{Top: -b.Min.Y, Right: b.Max.X, Bottom: b.Max.Y, Left: -b.Min.X}
		if i > 0 {
			n = geometry.Edges{Top: min(n.Top, e.Top), Right: min(n.Right, e.Right), Bottom: min(n.Bottom, e.Bottom), Left: min(n.Left, e.Left)}
		}
		e = n
	}
	return e
}

// facesTurned lists the bounds of every face in every turn it has, on top of a turn of the whole.
func (l layout) facesTurned(turn geometry.Angle) []geometry.Rect {
	var all []geometry.Rect
	for _, part := range l.pass.Parts() {
		for _, t := range l.pass.Turns.Each() {
			all = append(all, part.Block.Face.Turn(t+turn).Bounds())
		}
	}
	return all
}

// holds tells whether a print at a site lies on the area.
func (l layout) holds(s Site) bool {
	block := s.block(l.pass.Block)
	for _, b := range l.boxes {
		if b.turn == s.Turn && block == b.block {
			if holds, known := l.area.holdsBox(b.box.Move(s.Origin)); known {
				return holds
			}
		}
	}
	return l.area.surface.holds(l.area, block.Face.Place(s.Origin, s.Turn))
}

// number keeps those of the sites whose prints lie on the area, counts columns and rows from 1,
// and turns the blocks as the job's matrix says. It is given columns and rows counted from
// anywhere, and the turn that comes on top of the matrix. All tells that every print is known
// to lie on the area.
//
// Turns count from the first column and row that have prints; and of a face that does not keep
// its outline when turned, the turn decides what prints there are. So it counts again until
// both agree. Where they never do, the numbers go with the turns: the first column that has
// prints, or the first row, is then called by another number. Round a shade columns count from
// the seam in any case.
func (l layout) number(sites []Site, all bool) []Site {
	if len(sites) == 0 {
		return nil
	}
	first := l.area.firstCell(sites)
	kept := make([]Site, 0, len(sites))
	const tries = 8
	for range tries {
		kept = kept[:0]
		for _, s := range sites {
			s.Column, s.Row = s.Column-first.I+1, s.Row-first.J+1
			if turn := l.pass.Turns.At(s.Column, s.Row); turn != 0 || s.Turn != 0 {
				s.Turn = (s.Turn + turn).Normal()
			}
			if all || l.holds(s) {
				kept = append(kept, s)
			}
		}
		if len(kept) == 0 {
			return nil
		}
		low := l.area.firstCell(kept)
		if low.I == 1 && low.J == 1 {
			return kept
		}
		first.I, first.J = first.I+low.I-1, first.J+low.J-1
	}
	low := l.area.firstCell(kept)
	columns, rows := l.pass.Turns.Whole(low.I-1, low.J-1)
	for i := range kept {
		kept[i].Column, kept[i].Row = kept[i].Column-columns, kept[i].Row-rows
	}
	return kept
}

// firstCell returns the least column and the least row of some sites.
func (a Area) firstCell(sites []Site) geometry.Site {
	low := geometry.Site{I: sites[0].Column, J: sites[0].Row}
	for _, s := range sites {
		low.I, low.J = min(low.I, s.Column), min(low.J, s.Row)
	}
	if a.surface.closes() {
		low.I = 1
	}
	return low
}

// describe fills in what the sites of a choice give: prints, border, and the prints of every row
// and column. Columns and Rows are left to the repeat.
func (l layout) describe(c Choice, sites []Site) way {
	c.Count = len(sites)
	c.Border = l.area.surface.borders(l.area, l.pass.Block, sites)
	rows, columns := tally{}, tally{}
	for _, s := range sites {
		rows.add(s.Row)
		columns.add(s.Column)
		if l.area.surface.crossesSeam(l.area, s.block(l.pass.Block), s) {
			c.Seam++
		}
	}
	c.RowCounts, c.ColumnCounts = rows.counts(), columns.counts()
	return way{c, sites}
}

// tally counts prints by the number of their row or column.
type tally []int

func (t *tally) add(n int) {
	for len(*t) <= n {
		*t = append(*t, 0)
	}
	(*t)[n]++
}

// counts returns the counts of the rows that have prints, in their order.
func (t tally) counts() []int {
	var counts []int
	for _, n := range t {
		if n > 0 {
			counts = append(counts, n)
		}
	}
	return counts
}

// fieldOf returns the bounds of all prints together, of a pass with a block.
func fieldOf(own *job.Block, sites []Site) geometry.Rect {
	var field, face geometry.Rect
	var turn geometry.Angle
	var last *job.Block
	for i, s := range sites {
		if b := s.block(own); b != last || s.Turn != turn {
			face, turn, last = b.Face.Turn(s.Turn).Bounds(), s.Turn, b
		}
		r := face.Move(s.Origin)
		if i == 0 {
			field = r
		}
		field = field.Union(r)
	}
	return field
}
