package paper

import "underlay/geometry"

// board is a page on which signs are set down.
type board struct {
	space   *space
	drawing Drawing
	lips    []geometry.Rect // what joins cut away or cover
}

// putFree puts down the first of the signs for which there is a wholly free place, in the
// first of the wishes there is one.
func (b *board) putFree(signs []Drawing, wishes ...wish) bool {
	for _, w := range wishes {
		for _, sign := range signs {
			if p, ok := b.space.find(sign.Bounds.Size(), w, breath, false); ok {
				return b.set(sign, p.at)
			}
		}
	}
	return false
}

// putFirst does the same for two wishes, the first of them part of the second: a sign for which
// the second has no place need not be tried in the first.
func (b *board) putFirst(signs []Drawing, first, second wish) bool {
	var later spot
	which := -1
	for i, sign := range signs {
		size := sign.Bounds.Size()
		p, ok := b.space.find(size, second, breath, false)
		if !ok {
			continue
		}
		if which < 0 {
			later, which = p, i
		}
		if p, ok = b.space.find(size, first, breath, false); ok {
			return b.set(sign, p.at)
		}
	}
	return which >= 0 && b.set(signs[which], later.at)
}

// ground is how far the white ground of a sign reaches beyond it.
const ground = 0.4 * geometry.Millimetre

// putOnLip puts down the first of the signs that fits in what a join cuts away or covers.
func (b *board) putOnLip(signs []Drawing) bool {
	for _, sign := range signs {
		for _, lip := range b.lips {
			if b.putGround([]Drawing{sign}, wish{lip, lip.Min}) {
				return true
			}
		}
	}
	return false
}

// putGround puts down the first of the signs for which a lip has a place without text within
// the wish, on a white ground where there are lines.
func (b *board) putGround(signs []Drawing, w wish) bool {
	for _, sign := range signs {
		size := sign.Bounds.Grow(ground).Size()
		for _, lip := range b.lips {
			p, ok := b.space.find(size, wish{w.within.Intersect(lip), w.near}, 0, true)
			if !ok {
				continue
			}
			if p.lines > 0 {
				b.drawing.Fill(geometry.RectAt(p.at, size).Polygon().Path(), Grey(255))
			}
			return b.set(sign, p.at.Add(geometry.Pt(ground, ground)))
		}
	}
	return false
}

// putAcross puts down the sign, and at the place, that crosses fewest lines, if one crosses
// no text.
func (b *board) putAcross(signs []Drawing, within geometry.Rect) bool {
	var best spot
	which := -1
	for i, sign := range signs {
		p, ok := b.space.find(sign.Bounds.Size(), wish{within, within.Centre()}, ground, true)
		if ok && (which < 0 || p.lines < best.lines) {
			best, which = p, i
		}
	}
	return which >= 0 && b.set(signs[which], best.at)
}

// set puts a sign down with its top left corner at p.
func (b *board) set(sign Drawing, p geometry.Point) bool {
	b.drawing.Add(sign, p)
	b.space.signs = append(b.space.signs, sign.Bounds.Move(p).Grow(breath))
	return true
}
