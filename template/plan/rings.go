package plan

import (
	"fmt"

	"underlay/geometry"
	"underlay/template/job"
)

// rings sets prints out in rings, their tops outwards: the outermost as large as the border
// allows, each with as many prints as keep the gap, the first at 12 o'clock. The next ring
// keeps the gap to the innermost points of the last. One print more stands in the middle where
// it clears.
func rings(surface) repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			list, middle := l.setRings()
			return []way{l.describeRings(list, middle)}, nil
		},
		next:  []geometry.Site{{I: 1}},
		order: goRings,
		sizes: func(l layout, c Choice, sites []Site) otherSizes {
			return l.triedSizes(c, sites, false, mostInRings)
		},
		notes: func(layout, Choice) []string {
			return []string{"a ring has no straight edge to stretch tape along: work from the marks on the guide"}
		},
	}
}

// describeRings says what the rings give, ring by ring.
func (l layout) describeRings(list []ring, middle bool) way {
	sites := l.placeRings(list, middle)
	c := l.describe(Choice{Gap: l.leastGap()}, sites)
	c.RowCounts, c.ColumnCounts = nil, nil
	counts := make([]int, len(list)+2)
	for _, s := range sites {
		counts[s.Row]++
	}
	for i, r := range list {
		if i == 0 {
			c.Gap.Across = r.gap
			c.Pitch = job.Spacing{Across: l.cell.W + r.gap, Down: l.cell.H + c.Gap.Down}
		}
		if i == 1 {
			c.Pitch.Down = list[0].radius - r.radius
		}
		c.Gap.Across = min(c.Gap.Across, r.gap)
		if n := counts[i+1]; n > 0 {
			c.Runs = append(c.Runs, Run{fmt.Sprintf("ring %d", i+1), n, r.gap})
		}
	}
	if middle {
		c.Runs = append(c.Runs, Run{Name: "middle", Count: 1})
	}
	return c
}

// ring is one ring: radius through the origins, prints, plain cloth between two of them.
type ring struct {
	radius geometry.Length
	n      int
	gap    geometry.Length
}

// setRings works out the rings of a round area, the outermost first, and tells whether a
// print in the middle clears them. A ring has two prints or more.
func (l layout) setRings() (list []ring, middle bool) {
	f := newFan(l.pass.Block, job.Turns{{0}}, 180)
	bound, gap, total := l.area.Rect.W()/2, l.leastGap(), 0
	for (l.pass.Rings == 0 || len(list) < l.pass.Rings) && total <= mostPrints {
		r, ok := f.outermost(bound)
		if !ok {
			break
		}
		n := f.count(r, 360, gap.Across)
		if n < 2 {
			break
		}
		total += n
		list = append(list, ring{r, n, f.gap(r, 360/geometry.Angle(n))})
		bound = f.nearest(r) - gap.Down
	}
	if l.pass.Rings > 0 && len(list) == l.pass.Rings {
		// The print in the middle counts as a ring of its own.
		return list, false
	}
	return list, l.middleClears(f, list, gap.Down)
}

// middleClears tells whether a print in the middle of the rings keeps the gap.
func (l layout) middleClears(f fan, list []ring, gap geometry.Length) bool {
	centre := l.area.Centre()
	mid := Site{Origin: centre}
	if !l.holds(mid) {
		return false
	}
	if len(list) == 0 {
		return true
	}
	last := list[len(list)-1]
	if f.reach(0) <= f.nearest(last.radius)-gap+geometry.Tolerance {
		return true
	}
	// Outlines that touch and outlines that overlap are both 0 apart.
	gap = max(gap, 2*geometry.Tolerance)
	face := l.pass.Block.Face
	for i := range last.n {
		s := last.site(centre, i)
		if face.Place(s.Origin, s.Turn).Distance(face.Move(centre)) < gap-geometry.Tolerance {
			return false
		}
	}
	return true
}

// site returns the i-th print of a ring, clockwise from 12 o'clock.
func (r ring) site(centre geometry.Point, i int) Site {
	turn := geometry.Angle(i) * 360 / geometry.Angle(r.n)
	return Site{Origin: centre.Add(geometry.Pt(0, -r.radius).Turn(turn)), Turn: turn, Column: i + 1}
}

// placeRings returns the prints of the rings, the outermost ring first, the middle last.
func (l layout) placeRings(list []ring, middle bool) []Site {
	centre := l.area.Centre()
	var sites []Site
	for j, r := range list {
		for i := range r.n {
			s := r.site(centre, i)
			s.Row, s.key = j+1, geometry.Site{I: i, J: j}
			if l.holds(s) {
				sites = append(sites, s)
			}
		}
	}
	if middle {
		sites = append(sites, Site{Origin: centre, Column: 1, Row: len(list) + 1, key: geometry.Site{J: len(list)}})
	}
	return sites
}

// goRings goes round from the middle outwards, ring by ring, each from 12 o'clock: clockwise,
// or for a left-handed printer anticlockwise. The first print of a ring then stands next to
// the first of the ring before.
func goRings(sites []Site, hand job.Hand) []int {
	var order []int
	for end := len(sites); end > 0; {
		start := end - 1
		for start > 0 && sites[start-1].Row == sites[end-1].Row {
			start--
		}
		order = append(order, start)
		for i := 1; i < end-start; i++ {
			if hand == job.LeftHand {
				order = append(order, end-i)
			} else {
				order = append(order, start+i)
			}
		}
		end = start
	}
	return order
}

// mostInRings is how many prints the rings of a layout hold.
func mostInRings(l layout) int {
	if l.area.Rect.Empty() {
		return 0
	}
	list, middle := l.setRings()
	if len(l.area.zones) > 0 {
		return len(l.placeRings(list, middle))
	}
	n := 0
	for _, r := range list {
		n += r.n
	}
	if middle {
		n++
	}
	return n
}
