package planner

import (
	"cmp"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// leaf is a page that pieces are packed on.
type leaf struct {
	page  geometry.Size
	lying bool
	free  []geometry.Rect
	used  geometry.Rect
	on    []*piece
}

// pack finds each piece a place on a page: the longest first, each where it leaves least beside
// it.
func (c *cutter) pack() {
	order := slices.Clone(c.pieces)
	size := func(p *piece) geometry.Size {
		return geometry.Size{W: p.Area.W() * geometry.Length(p.Scale.Across), H: p.Area.H() * geometry.Length(p.Scale.Down)}
	}
	slices.SortStableFunc(order, func(a, b *piece) int {
		p, q := size(a), size(b)
		return cmp.Compare(max(q.W, q.H), max(p.W, p.H))
	})
	var leaves []*leaf
	for _, p := range order {
		at, on := bestPlace(leaves, p, size(p))
		if on == nil {
			on = c.newLeaf(p.lying)
			leaves = append(leaves, on)
			at = 0
		}
		on.put(p, size(p), at)
	}
	// Pages in the order of the first strip on each.
	index := map[*piece]int{}
	for i, p := range c.pieces {
		index[p] = i
	}
	first := func(l *leaf) int {
		n := len(c.pieces)
		for _, p := range l.on {
			n = min(n, index[p])
		}
		return n
	}
	slices.SortFunc(leaves, func(a, b *leaf) int { return cmp.Compare(first(a), first(b)) })
	for i, l := range leaves {
		if c.setup.Stock.Roll { // cut to what is used
			if l.lying {
				l.page.W = l.used.Max.X + c.setup.Margin
			} else {
				l.page.H = l.used.Max.Y + c.setup.Margin
			}
		}
		for _, p := range l.on {
			p.Leaf, p.Page = i, l.page
		}
	}
	slices.SortStableFunc(c.pieces, func(a, b *piece) int { return cmp.Compare(a.Leaf, b.Leaf) })
}

func (c *cutter) newLeaf(lying bool) *leaf {
	l := &leaf{page: c.setup.Stock.Size, lying: lying}
	if c.setup.Stock.Roll {
		l.page.H = paper.LongestPage
	}
	if lying {
		l.page = l.page.Swap()
	}
	l.free = []geometry.Rect{geometry.RectAt(geometry.Point{}, l.page).Grow(-c.setup.Margin)}
	l.used = geometry.Rect{Min: l.free[0].Min, Max: l.free[0].Min}
	return l
}

// bestPlace returns the free place, and its page, that a piece of some size leaves least of.
func bestPlace(leaves []*leaf, p *piece, size geometry.Size) (at int, on *leaf) {
	least := geometry.Length(0)
	for _, l := range leaves {
		if l.lying != p.lying {
			continue
		}
		for i, f := range l.free {
			if size.W > f.W()+geometry.Tolerance || size.H > f.H()+geometry.Tolerance {
				continue
			}
			if left := min(f.W()-size.W, f.H()-size.H); on == nil || left < least {
				at, on, least = i, l, left
			}
		}
	}
	return at, on
}

// put puts a piece in the top left corner of a free place. Of what is left beside it and below it
// the larger part is kept whole: below a level strip, beside an upright one.
func (l *leaf) put(p *piece, size geometry.Size, at int) {
	f := l.free[at]
	p.At = f.Min
	end := f.Min.Add(geometry.Pt(size.W, size.H))
	beside := geometry.Rect{Min: geometry.Pt(end.X, f.Min.Y), Max: f.Max}
	below := geometry.Rect{Min: geometry.Pt(f.Min.X, end.Y), Max: f.Max}
	if size.W > size.H {
		beside.Max.Y = end.Y
	} else {
		below.Max.X = end.X
	}
	l.free = slices.Delete(l.free, at, at+1)
	l.free = append(l.free, beside, below)
	l.on = append(l.on, p)
	l.used = l.used.Union(geometry.Rect{Min: f.Min, Max: end})
}
