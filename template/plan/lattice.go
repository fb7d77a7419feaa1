package plan

import (
	"math"
	"sync"

	"underlay/geometry"
	"underlay/template/job"
)

// lattice is a repeat that sets prints out on a lattice. In the frame of the lattice, which a
// turn lays on the cloth together with the blocks, prints stand in rows and columns of which
// either the rows may be moved along or the columns down.
type lattice struct {
	// pitch of rows and columns for a gap.
	pitch func(l layout, gap job.Spacing) job.Spacing
	// step is the share of the pitch by which each row, or column, lies moved on from the one
	// before it; nil: none is moved. What is moved by a whole pitch is not moved at all.
	step func(*job.Pass) float64
	// columns tells that columns are moved, and not rows.
	columns bool
	// turn of lattice and blocks together; nil: none.
	turn func(*job.Pass) geometry.Angle
	// oneGap tells that the gap across rules both ways.
	oneGap bool
}

// facePitch is the pitch of a repeat whose prints stand face beside face.
func facePitch(l layout, gap job.Spacing) job.Spacing {
	return job.Spacing{Across: l.cell.W + gap.Across, Down: l.cell.H + gap.Down}
}

// repeat makes the repeat of the lattice on flat cloth.
func (t lattice) repeat() repeat {
	r := repeat{ways: t.ways, pitch: t.pitch, next: t.next(), middle: t.middle, taped: true, sizes: t.sizes, lattice: &t}
	switch {
	case t.turn != nil:
		// The field of a turned grid is bounded by corners; rows are what lies at one height.
		r.byHeight = true
	case t.step == nil:
		r.columns, r.rows, r.sizes = true, true, t.straightSizes
	default:
		r.columns, r.rows = t.columns, !t.columns
	}
	return r
}

// next lists the steps to the prints beside one. A print of a moved row stands next to two of
// the row before.
func (t lattice) next() []geometry.Site {
	switch {
	case t.step == nil:
		return []geometry.Site{{I: 1}, {J: 1}}
	case t.columns:
		return []geometry.Site{{J: 1}, {I: 1}, {I: 1, J: -1}}
	}
	return []geometry.Site{{I: 1}, {J: 1}, {I: -1, J: 1}}
}

// share is the step of a pass, 0 where nothing is moved.
func (t lattice) share(p *job.Pass) float64 {
	if t.step == nil {
		return 0
	}
	return t.step(p)
}

func (t lattice) turnOf(p *job.Pass) geometry.Angle {
	if t.turn == nil {
		return 0
	}
	return t.turn(p)
}

// spots returns the lattice of a choice: its point (0, 0) lies on the centre of the area, or
// half a pitch right of or below it where the joint is to be on the centre.
func (t lattice) spots(l layout, c Choice) geometry.Lattice {
	across, down := geometry.Pt(c.Pitch.Across, 0), geometry.Pt(0, c.Pitch.Down)
	if share := t.share(l.pass); t.columns {
		across.Y = geometry.Length(share) * c.Pitch.Down
	} else {
		down.X = geometry.Length(share) * c.Pitch.Across
	}
	var shift geometry.Point
	if c.Across == job.OnJoint {
		shift.X = c.Pitch.Across / 2
	}
	if c.Down == job.OnJoint {
		shift.Y = c.Pitch.Down / 2
	}
	turn := t.turnOf(l.pass)
	return geometry.Lattice{
		Origin: l.area.Centre().Add(shift.Turn(turn)), Across: across.Turn(turn), Down: down.Turn(turn),
	}
}

// cellOf returns the column and row of a site, counted from those through or next after the
// centre. A step that comes to a whole pitch but for rounding is a whole pitch.
func (t lattice) cellOf(share float64, s geometry.Site) (column, row int) {
	if t.columns {
		return s.I, s.J + int(math.Floor(float64(s.I)*share+1e-9))
	}
	return s.I + int(math.Floor(float64(s.J)*share+1e-9)), s.J
}

// exact tells whether every print whose bounds lie in the bounds of the area lies on the area.
func (t lattice) exact(l layout) bool {
	return t.turnOf(l.pass) == 0 && l.sameBounds() && l.area.plain()
}

// ways tries every centring: a print or a joint on each centre line.
func (t lattice) ways(l layout) ([]way, error) { return t.waysFrom(l, l.leastGap()), nil }

// waysFrom tries every centring, with the gap that prints are counted with.
func (t lattice) waysFrom(l layout, gap job.Spacing) []way {
	pairs := [][2]job.Centring{{job.OnPrint, job.OnPrint}, {job.OnPrint, job.OnJoint}, {job.OnJoint, job.OnPrint}, {job.OnJoint, job.OnJoint}}
	starts := l.starts()
	ways := make([]way, len(pairs)*len(starts))
	var work sync.WaitGroup
	for i := range ways {
		work.Go(func() {
			p := pairs[i/len(starts)]
			c := Choice{Across: p[0], Down: p[1], Gap: gap, Pitch: t.pitch(l, gap), start: starts[i%len(starts)]}
			sites := t.place(l, c)
			if opened := t.open(l, c, sites); opened.Gap != c.Gap {
				c = opened
				sites = t.place(l, c)
			}
			ways[i] = t.describe(l, c, sites)
		})
	}
	work.Wait()
	return ways
}

// describe fills in what a choice gives. Rows that are moved along have no columns, and the
// other way round.
func (t lattice) describe(l layout, choice Choice, sites []Site) way {
	w := l.describe(choice, sites)
	w.Choice = l.begun(w.Choice, sites)
	c := w.Choice
	if t.inRuns(l) {
		c.Pitch = l.meanPitch(c)
	}
	switch {
	case t.turn != nil:
		c.ColumnCounts = nil
	case t.step == nil:
		c.Rows = len(c.RowCounts)
		for _, n := range c.RowCounts {
			c.Columns = max(c.Columns, n)
		}
	case t.columns:
		c.Columns, c.RowCounts = len(c.ColumnCounts), nil
	default:
		c.Rows, c.ColumnCounts = len(c.RowCounts), nil
	}
	w.Choice = c
	return w
}

// place returns the prints of a choice.
func (t lattice) place(l layout, c Choice) []Site {
	if t.inRuns(l) {
		return t.placeInRuns(l, c)
	}
	lat := t.spots(l, c)
	share, turn := t.share(l.pass), t.turnOf(l.pass)
	keys := t.within(l, c, t.candidates(l, lat))
	sites := make([]Site, len(keys))
	for i, k := range keys {
		s := Site{Origin: lat.At(k), Turn: turn, key: k}
		s.Column, s.Row = t.cellOf(share, k)
		if l.area.around > 0 {
			// Round a drum the columns of moved rows close as well: they count from the seam.
			s.Origin.X = max(0, s.Origin.X)
			s.Column = int(math.Floor(float64(s.Origin.X/c.Pitch.Across)+1e-9)) + 1
		}
		if mix := l.pass.Mix; !mix.None() {
			column := s.Column + c.start.I
			if l.area.around > 0 {
				column = s.Column - 1
			}
			s = l.mixedAt(s, column, s.Row+c.start.J)
		}
		sites[i] = s
	}
	return l.number(sites, t.exact(l))
}

// candidates lists the sites near enough to the area to be looked at.
func (t lattice) candidates(l layout, lat geometry.Lattice) []geometry.Site {
	room := l.area.Rect.In(l.needs(t.turnOf(l.pass)))
	if l.area.around == 0 {
		return lat.In(room)
	}
	// Round a drum every origin from its left edge up to, not including, its right.
	room.Min.X, room.Max.X = 0, l.area.around
	keys := lat.In(room)
	n := 0
	for _, k := range keys {
		if lat.At(k).X < l.area.around-geometry.Tolerance {
			keys[n] = k
			n++
		}
	}
	return keys[:n]
}
