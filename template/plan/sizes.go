package plan

import (
	"math"

	"underlay/geometry"
)

// otherSizes is what a repeat says of other sizes: of the cloth, the border, the gap, the block.
// It is worked out when it is asked for, as trying sizes takes longer than the plan.
type otherSizes struct {
	serves func() (across, down *Serves)
	misses func() []NearMiss
	note   string // where nothing is worked out: why
}

// known is other sizes that a formula gave.
func known(across, down *Serves, misses []NearMiss) otherSizes {
	return otherSizes{
		serves: func() (*Serves, *Serves) { return across, down },
		misses: func() []NearMiss { return misses },
	}
}

// Serves tells which widths and heights of cloth the guide of the pass is right for; nil where it
// is right for that one alone, or where it is not worked out.
func (p *PassPlan) Serves() (across, down *Serves) {
	if p.serves == nil {
		return nil, nil
	}
	return p.serves()
}

// NearMisses tells what one more print would take, across and down; none for a pass that another
// one sets out.
func (p *PassPlan) NearMisses() []NearMiss {
	if p.misses == nil {
		return nil
	}
	return p.misses()
}

// mostTried is the most prints, times the corners of the cloth, of a pass of which other sizes
// are found by planning them.
const mostTried = 10_000

// triedSizes works out what other sizes give by planning them. Most is how many prints the best
// way of setting out allowed holds; steady tells that more cloth, or less of the others, never
// holds fewer.
func (l layout) triedSizes(c Choice, sites []Site, steady bool, most func(layout) int) otherSizes {
	if work := c.Count * max(4, len(l.item.Outline.Corners())); work > mostTried && !steady || work > 10*mostTried {
		return otherSizes{note: "of so many prints, what other cloths this guide serves is not worked out"}
	}
	return sizeTrial{l: l, c: c, steady: steady, most: most}.sizes(sites)
}

// sizes tries both axes.
func (t sizeTrial) sizes(sites []Site) otherSizes {
	one := func(down bool) *Serves {
		t := t
		t.down = down
		crooked := t.l.area.corners != [4]geometry.Point{} // and so the only one of its kind
		if crooked || t.l.area.Flat != nil || t.l.area.around > 0 && !down {
			return nil
		}
		cloth := t.change(moreCloth)
		if cloth == nil {
			return nil
		}
		s := t.serves(sites, *cloth)
		return &s
	}
	return otherSizes{
		serves: func() (across, down *Serves) { return one(false), one(true) },
		misses: func() []NearMiss {
			across, down := t, t
			down.down = true
			return []NearMiss{across.miss(), down.miss()}
		},
	}
}

// sizeTrial tries other sizes along one axis.
type sizeTrial struct {
	l      layout
	c      Choice
	down   bool
	steady bool
	exact  bool // most lets nothing pass that the tolerance would
	most   func(layout) int
}

// miss finds the least change of each kind that gives more prints than there are.
func (t sizeTrial) miss() NearMiss {
	miss := NearMiss{
		Down: t.down, Cloth: t.change(moreCloth), Border: t.change(lessBorder), Gap: t.change(lessGap), Block: t.change(smallerBlock),
	}
	if miss.Cloth != nil {
		miss.Prints = t.most(t.l.changed(moreCloth, t.down, *miss.Cloth))
	}
	return miss
}

// change finds the least change of a kind that gives more prints than there are; nil: none does.
func (t sizeTrial) change(what change) *geometry.Length {
	return t.first(t.l.limit(what, t.down), func(d geometry.Length) bool {
		return t.most(t.l.changed(what, t.down, d)) > t.c.Count
	})
}

// first returns the least change up to a limit with which something becomes true; nil: none
// does. Where it may become false again it is looked for step by step.
func (t sizeTrial) first(limit geometry.Length, is func(geometry.Length) bool) *geometry.Length {
	if limit <= geometry.Tolerance {
		return nil
	}
	low, high := geometry.Length(0), limit
	switch {
	case !t.steady:
		limit = min(limit, 16*t.l.step(t.down))
		step := min(limit, t.l.step(t.down)) / 12
		for i := 1; ; i++ {
			// Far away the steps grow.
			high = min(limit, low+step*geometry.Length(1+i/48))
			if is(high) {
				break
			}
			if low = high; low >= limit {
				return nil
			}
		}
	default:
		// A moved row may be too short for a print of its own: what is a row or two more then
		// gives none, and only a good many do.
		for high = min(limit, 4*t.l.step(t.down)); !is(high); high = min(limit, 4*high) {
			if low = high; low >= limit {
				return nil
			}
		}
	}
	close := geometry.Length(1e-7)
	if t.exact {
		close = 1e-11
	}
	for high-low > close && (low+high)/2 > low && (low+high)/2 < high {
		if mid := (low + high) / 2; is(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	// What fits but for the tolerance would come out that much short; and what is written to a
	// millionth of a millimetre is what was meant.
	up := geometry.Length(math.Ceil(float64((high-2*close)/finest))) * finest
	if t.exact {
		up = geometry.Length(math.Round(float64(high)*1e6) / 1e6)
	}
	if (!t.exact || (up-high).Abs() < 1e-9) && up <= limit && is(up) {
		high = up
	}
	return &high
}

// serves finds the sizes of cloth on which the prints as they are set out lie on the area, and
// no more would, around the size there is; one more fits with cloth more.
func (t sizeTrial) serves(sites []Site, cloth geometry.Length) Serves {
	size := t.l.item.Size
	now := *side(&size, t.down)
	gone := func(d geometry.Length) bool {
		m := t.l.changed(moreCloth, t.down, d)
		return !m.keepsAll(sites, m.area.Centre().Sub(t.l.area.Centre())) || !t.steady && t.most(m) > t.c.Count
	}
	s := Serves{Least: now, Below: now + cloth}
	if !t.steady {
		if d := t.first(cloth, gone); d != nil {
			s.Below = now + *d
		}
	}
	s.Least = min(now, t.least(sites, now, gone))
	return s
}

// least is the least size that the prints lie on: of a plain rectangle from their field, of
// anything else by going down from the size there is.
func (t sizeTrial) least(sites []Site, now geometry.Length, gone func(geometry.Length) bool) geometry.Length {
	if t.l.area.plain() {
		field, centre := fieldOf(t.l.pass.Block, sites), t.l.area.Centre()
		across, down := t.l.axes()
		if t.down {
			return 2*max(centre.Y-field.Min.Y, field.Max.Y-centre.Y) + down.around()
		}
		return 2*max(centre.X-field.Min.X, field.Max.X-centre.X) + across.around()
	}
	if d := t.first(now-2*finest, func(d geometry.Length) bool { return gone(-d) }); d != nil {
		return now - *d + 2*finest
	}
	return now
}

// keepsAll tells whether all prints, moved by by, lie on the area.
func (l layout) keepsAll(sites []Site, by geometry.Point) bool {
	for _, s := range sites {
		s.Origin = s.Origin.Add(by)
		if !l.holds(s) {
			return false
		}
	}
	return true
}
