package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// Serves is the range of cloth sizes one guide is right for, from Least up to, not including,
// Below. As the pattern is centred on the area, a guide with n prints of span S serves any
// width from S and the borders up to where one more print would fit.
type Serves struct{ Least, Below geometry.Length }

// otherSizes is what a repeat says of other sizes: of the cloth, the border, the gap, the block.
type otherSizes struct {
	across, down *Serves
	misses       []NearMiss
	note         string // where something is not worked out: why
}

// noSizes is said where the area is no plain rectangle, or the pattern lies askew on it.
func noSizes(why string) otherSizes {
	return otherSizes{note: why + ", so what other cloths this guide serves is not worked out"}
}

// axis is one direction of a straight repeat: the room there is, the face, and how the gap and
// the counts may vary.
type axis struct {
	room    geometry.Length // of the printable area
	face    geometry.Length
	gap     job.Gap
	borders [2]geometry.Length // asked, on both ends
	hem     geometry.Length
	inside  geometry.Length // taken off the room besides the borders: by a frame round it
	step    int             // 1, or 2 where the job fixes what sits on the centre line
}

// axes returns the two directions of a pass in rows and columns.
func (l layout) axes() (across, down axis) {
	p, b, r, hem := l.pass, l.item.Border, l.area.Rect, l.item.Hem
	cloth := l.area.ClothBounds
	across = axis{r.W(), l.cell.W, p.Gap.Across, [2]geometry.Length{b.Left, b.Right}, hem, cloth.W() - b.Left - b.Right - r.W(), 1}
	down = axis{r.H(), l.cell.H, p.Gap.Down, [2]geometry.Length{b.Top, b.Bottom}, hem, cloth.H() - b.Top - b.Bottom - r.H(), 1}
	if p.CentreAcross != job.OnBest {
		across.step = 2
	}
	if p.CentreDown != job.OnBest {
		down.step = 2
	}
	return across, down
}

// straightSizes works both directions out by the formulas of a straight repeat.
func straightSizes(l layout, c Choice) otherSizes {
	if !l.area.Plain() {
		return noSizes("the printable area is not a plain rectangle")
	}
	across, down := l.axes()
	a, d := across.serves(c.Columns, c.Gap.Across), down.serves(c.Rows, c.Gap.Down)
	s := otherSizes{across: &a, down: &d, misses: []NearMiss{across.nearMiss(c.Columns, false), down.nearMiss(c.Rows, true)}}
	s.misses[0].Prints = s.misses[0].Count * c.Rows
	s.misses[1].Prints = s.misses[1].Count * c.Columns
	return s
}

// span returns how much n prints take up with the gap g between them.
func (a axis) span(n int, g geometry.Length) geometry.Length {
	return geometry.Length(n)*a.face + geometry.Length(n-1)*g
}

// serves returns the cloth sizes a row of n prints with the gap g serves.
func (a axis) serves(n int, g geometry.Length) Serves {
	both := a.borders[0] + a.borders[1] + a.inside
	return Serves{a.span(n, g) + both, a.span(n+a.step, a.gap.Least) + both}
}

// drumSizes works out what a drum of another height or another way round takes. Rows count as
// on any cloth; a moved column does not tell its rows, so a half-drop says nothing of them.
func (t lattice) drumSizes(l layout, c Choice) otherSizes {
	_, multiple, _ := t.closing(l, l.mostRoundDrum())
	round := l.drumMiss(c, multiple)
	if len(l.area.zones) > 0 || t.columns || t.oneGap {
		return otherSizes{misses: []NearMiss{round}, note: "what other heights this guide serves is not worked out"}
	}
	_, down := l.axes()
	d := down.serves(c.Rows, c.Gap.Down)
	miss := down.nearMiss(c.Rows, true)
	miss.Prints = miss.Count * c.Columns
	round.Prints = round.Count * c.Rows
	return otherSizes{down: &d, misses: []NearMiss{round, miss}}
}
