package template

import "underlay/geometry"

// NearMiss is what one more print across (or down) would take, each change alone. A change
// that cannot do it is nil.
type NearMiss struct {
	Down   bool             // along the other axis: across
	Count  int              // prints across, or down, that it would give
	Cloth  *geometry.Length // a cloth this much larger
	Border *geometry.Length // a border this much less, on both sides
	Gap    *geometry.Length // a gap this much less
	Block  *geometry.Length // a block this much smaller
}

// mostLap is how far joining blocks may lap (common practice, no published source).
const mostLap = 1 * geometry.Millimetre

// nearMiss works out what one more than n prints would take.
func (a axis) nearMiss(n int, down bool) NearMiss {
	m := n + a.step
	short := a.span(m, a.gap.Least) - a.room
	miss := NearMiss{Down: down, Count: m, Cloth: &short}
	if each := short / 2; min(a.borders[0], a.borders[1])-each >= a.hem-geometry.Tolerance {
		miss.Border = &each
	}
	least := geometry.Length(0)
	if a.gap.Least < 0 {
		least = min(-mostLap, a.gap.Least)
	}
	if m > 1 {
		if each := short / geometry.Length(m-1); a.gap.Least-each >= least-geometry.Tolerance {
			miss.Gap = &each
		}
	}
	if each := short / geometry.Length(m); each < a.face {
		miss.Block = &each
	}
	return miss
}
