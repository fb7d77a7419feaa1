package template

import (
	"math"

	"underlay/geometry"
)

// lattice is a repeat that sets prints out on a lattice: for a spacing of origins, its two
// steps, and the column and row of a site.
type lattice struct {
	steps func(l layout, pitch Spacing) (across, down geometry.Point)
	// pitch of origins for a gap.
	pitch func(l layout, gap Spacing) Spacing
	// shift returns the column and row of a site, counted from those through or next after
	// the centre.
	index func(l layout, s geometry.Site) (column, row int)
	// turn is laid on lattice and blocks together.
	turn func(l layout) geometry.Angle
}

// facePitch is the pitch of a repeat whose prints stand face beside face.
func facePitch(l layout, gap Spacing) Spacing {
	return Spacing{l.cell.W + gap.Across, l.cell.H + gap.Down}
}

// ways tries every centring: a print or a joint on each centre line.
func (t lattice) ways(l layout) []Choice {
	var choices []Choice
	for _, across := range []Centring{OnPrint, OnJoint} {
		for _, down := range []Centring{OnPrint, OnJoint} {
			c := Choice{Across: across, Down: down}
			c.Gap = Spacing{l.pass.Gap.Across.Least, l.pass.Gap.Down.Least}
			c.Pitch = t.pitch(l, c.Gap)
			sites := t.place(l, c)
			if opened := t.open(l, c, sites); opened.Gap != c.Gap {
				c = opened
				sites = t.place(l, c)
			}
			choices = append(choices, l.describe(c, sites))
		}
	}
	return choices
}

// place returns the prints of a choice, row by row from the top left.
func (t lattice) place(l layout, c Choice) []Site {
	across, down := t.steps(l, c.Pitch)
	shift := geometry.Point{}
	if c.Across == OnJoint {
		shift.X = c.Pitch.Across / 2
	}
	if c.Down == OnJoint {
		shift.Y = c.Pitch.Down / 2
	}
	turn := geometry.Angle(0)
	if t.turn != nil {
		turn = t.turn(l)
		across, down, shift = across.Turn(turn), down.Turn(turn), shift.Turn(turn)
	}
	lat := geometry.Lattice{Origin: l.area.Rect.Centre().Add(shift), Across: across, Down: down}
	least := min(l.cell.W, l.cell.H)
	room, exact := l.area.Rect.Grow(-least/2), false
	if turn == 0 && l.sameBounds() {
		room = l.area.Rect.In(geometry.Edges{
			Top: l.cell.H / 2, Bottom: l.cell.H / 2, Left: l.cell.W / 2, Right: l.cell.W / 2,
		})
		exact = l.area.Plain()
	}
	keys := lat.In(room)
	firstColumn, firstRow := math.MaxInt, math.MaxInt
	for _, k := range keys {
		column, row := t.index(l, k)
		firstColumn, firstRow = min(firstColumn, column), min(firstRow, row)
	}
	sites := make([]Site, 0, len(keys))
	for _, k := range keys {
		column, row := t.index(l, k)
		s := Site{Origin: lat.At(k), Column: column - firstColumn + 1, Row: row - firstRow + 1, key: k}
		s.Turn = (l.turnAt(s.Column, s.Row) + turn).Normal()
		if exact || l.area.Holds(l.pass.Block.Face.Place(s.Origin, s.Turn).Outline) {
			sites = append(sites, s)
		}
	}
	return sites
}

// sameBounds tells whether the face has the bounds of the cell however it is turned here.
func (l layout) sameBounds() bool {
	if l.pass.Block.Size.W == l.pass.Block.Size.H || allQuarterTurned(l.pass.Turns) {
		return true
	}
	for _, row := range l.pass.Turns {
		for _, t := range row {
			if t%180 != 0 {
				return false
			}
		}
	}
	return true
}

// open widens the gaps of a choice within the job's range, as far as keeps every print: the
// border comes as near as it can, from above, to the border asked. One print across (or down)
// keeps the least gap.
func (t lattice) open(l layout, c Choice, sites []Site) Choice {
	if len(sites) == 0 {
		return c
	}
	span := originBounds(sites)
	widen := func(g Gap, size, span, pitch, room geometry.Length) geometry.Length {
		steps := float64(span / pitch)
		if steps < 1e-9 || g.Most <= g.Least {
			return g.Least
		}
		p := (room - size) / geometry.Length(steps)
		return max(g.Least, min(g.Most, g.Least+p-pitch))
	}
	c.Gap.Across = widen(l.pass.Gap.Across, l.cell.W, span.W(), c.Pitch.Across, l.area.Rect.W())
	c.Gap.Down = widen(l.pass.Gap.Down, l.cell.H, span.H(), c.Pitch.Down, l.area.Rect.H())
	c.Pitch = t.pitch(l, c.Gap)
	return c
}
