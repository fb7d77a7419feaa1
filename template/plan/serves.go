package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// Serves is the range of cloth sizes one guide is right for, from Least up to, not including,
// Below. As the pattern is centred on the area, a guide with n prints of span S serves any
// width from S and the borders up to where one more print would fit. Where the job asks for so many
// and no more, there is no end: Below is then infinite.
type Serves struct{ Least, Below geometry.Length }

// Endless tells whether any larger cloth is served too.
func (s Serves) Endless() bool { return math.IsInf(float64(s.Below), 1) }

// axis is one direction of a straight repeat: the room there is, the face, and how the gap and
// the counts may vary.
type axis struct {
	room    geometry.Length // of the printable area
	face    geometry.Length
	gap     job.Gap
	borders [2]geometry.Length // asked, on both ends
	hem     geometry.Length
	inside  geometry.Length // taken off the room besides the borders: by a frame round it
	whole   float64         // how much less of the block's own width takes 1 off the face
	step    int             // 1, or 2 where the job fixes what sits on the centre line
}

// axes returns the two directions of a pass in rows and columns.
func (l layout) axes() (across, down axis) {
	p, b, r, hem := l.pass, l.item.Border, l.area.Rect, l.item.Hem
	cloth := l.area.Cloth
	across = axis{r.W(), l.cell.W, p.Gap.Across, [2]geometry.Length{b.Left, b.Right}, hem, cloth.W() - b.Left - b.Right - r.W(), 1, 1}
	down = axis{r.H(), l.cell.H, p.Gap.Down, [2]geometry.Length{b.Top, b.Bottom}, hem, cloth.H() - b.Top - b.Bottom - r.H(), 1, 1}
	if p.Block.Shape == job.HexagonFace {
		// It keeps its shape, and is known by its width.
		across.whole, down.whole = float64(p.Block.Size.W/across.face), float64(p.Block.Size.W/down.face)
	}
	if p.CentreAcross != job.OnBest {
		across.step = 2
	}
	if p.CentreDown != job.OnBest {
		down.step = 2
	}
	return across, down
}

// straightSizes works both directions out by the formulas of a straight repeat, where they hold.
func (t lattice) straightSizes(l layout, c Choice, sites []Site) otherSizes {
	if !t.exact(l) || !l.pass.Mix.None() {
		return t.sizes(l, c, sites)
	}
	across, down := l.axes()
	a, d := across.serves(c.Columns, c.Gap.Across), down.serves(c.Rows, c.Gap.Down)
	misses := []NearMiss{across.nearMiss(c.Columns, false), down.nearMiss(c.Rows, true)}
	misses[0].Prints = misses[0].Count * c.Rows
	misses[1].Prints = misses[1].Count * c.Columns
	return l.asAsked(&a, &d, misses)
}

// around is what the cloth is larger than the area by.
func (a axis) around() geometry.Length { return a.borders[0] + a.borders[1] + a.inside }

// span returns how much n prints take up with the gap g between them.
func (a axis) span(n int, g geometry.Length) geometry.Length {
	return geometry.Length(n)*a.face + geometry.Length(n-1)*g
}

// serves returns the cloth sizes a row of n prints with the gap g serves.
func (a axis) serves(n int, g geometry.Length) Serves {
	return Serves{min(a.room, a.span(n, g)) + a.around(), a.span(n+a.step, a.gap.Least) + a.around()}
}

// drumSizes works out what a drum of another height or another way round takes. Rows count as
// on any cloth, unless columns are moved or one gap rules both ways.
func (t lattice) drumSizes(l layout, c Choice, sites []Site) otherSizes {
	if l.pass.Exactly != (job.Counts{}) && (len(l.area.zones) > 0 || t.columns || t.oneGap || !l.sameBounds()) {
		return l.asAsked(nil, nil, nil)
	}
	if len(l.area.zones) > 0 || t.columns || t.oneGap || !l.sameBounds() || !l.pass.Mix.None() {
		return l.triedSizes(c, sites, false, t.most)
	}
	_, multiple, _ := t.closing(l, l.mostRoundDrum())
	round := l.drumMiss(c, multiple)
	_, down := l.axes()
	d := down.serves(c.Rows, c.Gap.Down)
	miss := down.nearMiss(c.Rows, true)
	miss.Prints = miss.Count * c.Columns
	round.Prints = round.Count * c.Rows
	return l.asAsked(nil, &d, []NearMiss{round, miss})
}

// NearMiss is what one more print across (or down) would take, each change alone. A change
// that cannot do it is nil.
type NearMiss struct {
	Down   bool             // along the other axis: across
	Count  int              // prints across, or down, that it would give; 0 where there is no one count
	Prints int              // prints in all that it would give; 0 where not worked out
	Cloth  *geometry.Length // a cloth this much larger
	Border *geometry.Length // a border this much less, on both sides
	Gap    *geometry.Length // a gap this much less
	Block  *geometry.Length // a block this much smaller
}

// mostLap is how far joining blocks may lap (common practice, no published source).
const mostLap = 1 * geometry.Millimetre

// leastOf is the least gap a maker might go down to: none, or where blocks lap anyway the
// most lap.
func leastOf(g job.Gap) geometry.Length {
	if g.Least < 0 {
		return min(-mostLap, g.Least)
	}
	return 0
}

// nearMiss works out what one more than n prints would take.
func (a axis) nearMiss(n int, down bool) NearMiss {
	m := n + a.step
	short := a.span(m, a.gap.Least) - a.room
	miss := NearMiss{Down: down, Count: m, Cloth: &short}
	if each := short / 2; min(a.borders[0], a.borders[1])-each >= a.hem-geometry.Tolerance {
		miss.Border = &each
	}
	if each := short / geometry.Length(m-1); a.gap.Least-each >= leastOf(a.gap)-geometry.Tolerance {
		miss.Gap = &each
	}
	if each := short / geometry.Length(m); a.face-each >= job.LeastFace-geometry.Tolerance {
		each *= geometry.Length(a.whole)
		miss.Block = &each
	}
	return miss
}

// drumMiss works out what the next number of columns with which the repeat closes would take:
// on the way round there is no border, and as many gaps as prints.
func (l layout) drumMiss(c Choice, multiple int) NearMiss {
	g := l.pass.Gap.Across
	m := c.Columns + multiple
	short := geometry.Length(m)*(l.cell.W+g.Least) - l.area.around
	each := short / geometry.Length(m)
	miss := NearMiss{Count: m, Cloth: &short}
	if g.Least-each >= leastOf(g)-geometry.Tolerance {
		miss.Gap = &each
	}
	if l.cell.W-each >= job.LeastFace-geometry.Tolerance {
		across, _ := l.axes()
		each *= geometry.Length(across.whole)
		miss.Block = &each
	}
	return miss
}
