package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

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
