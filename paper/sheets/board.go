package sheets

import (
	"underlay/geometry"
	"underlay/paper"
)

// board is a page on which signs are set down.
type board struct {
	space   *space
	drawing paper.Drawing
	lips    []geometry.Rect // what joins cut away or cover
	hidden  []geometry.Rect // where text and signs of the guide are hidden, on lips
}

// putFree puts down the first of the signs for which there is a wholly free place, in the
// first of the wishes there is one.
func (b *board) putFree(signs []paper.Drawing, wishes ...wish) bool {
	for _, w := range wishes {
		for _, sign := range signs {
			if p, ok := b.space.find(sign.Bounds.Size(), w, breath, false); ok {
				return b.set(sign, p.at)
			}
		}
	}
	return false
}

// lazySign draws a sign when it is first asked for it.
type lazySign = func() paper.Drawing

// drawn draws signs.
func drawn(signs []lazySign) []paper.Drawing {
	all := make([]paper.Drawing, len(signs))
	for i, draw := range signs {
		all[i] = draw()
	}
	return all
}

// putFirst does the same for two wishes, the first of them part of the second: a sign for which
// the second has no place need not be tried in the first.
func (b *board) putFirst(signs []lazySign, first, second wish) bool {
	var later spot
	which := -1
	for i, draw := range signs {
		sign := draw()
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
	return which >= 0 && b.set(signs[which](), later.at)
}

// ground is how far the white ground of a sign reaches beyond it.
const ground = 0.4 * geometry.Millimetre

// putOnLip puts down the first of the signs that fits in what a join cuts away or covers.
func (b *board) putOnLip(signs []paper.Drawing) bool {
	for _, sign := range signs {
		for _, lip := range b.lips {
			if b.putGround([]paper.Drawing{sign}, wish{lip, lip.Min}) {
				return true
			}
		}
	}
	return false
}

// putAll puts down one of the signs of each part, all but the first near the first, or nothing at
// all.
func (b *board) putAll(parts [][]paper.Drawing, put func(part []paper.Drawing, near geometry.Point) bool) bool {
	before, signs := *b, len(b.space.signs)
	near := b.space.area.Min
	for i, part := range parts {
		if !put(part, near) {
			*b = before
			b.space.signs = b.space.signs[:signs]
			return false
		}
		if i == 0 {
			near = b.space.signs[len(b.space.signs)-1].Centre()
		}
	}
	return true
}

// putGround puts down the first of the signs for which a lip has a place within the wish, the
// nearest to what is wished, on a white ground where there is anything below it. What the
// neighbour shows whole may be hidden.
func (b *board) putGround(signs []paper.Drawing, w wish) bool {
	for _, sign := range signs {
		size := sign.Bounds.Grow(ground).Size()
		for _, lip := range b.lips {
			at, ok := b.space.findOn(lip, size, wish{w.within.Intersect(lip), w.near})
			if !ok {
				continue
			}
			b.lay(geometry.RectAt(at, size))
			return b.set(sign, at.Add(geometry.Pt(ground, ground)))
		}
	}
	return false
}

// lay lays a white ground where there is anything to hide.
func (b *board) lay(r geometry.Rect) {
	lines, texts := b.space.lines.count(b.space.reach(r)), b.space.texts.count(b.space.reach(r))
	if lines+texts > 0 {
		b.drawing.Fill(r.Polygon().Path(), paper.Grey(255))
	}
	if texts > 0 {
		b.hidden = append(b.hidden, r)
	}
}

// putAcross puts down the sign, and at the place, that crosses fewest lines, if one crosses
// no text. Where there are lines it stands on a white ground, whole or its letters alone.
func (b *board) putAcross(signs []paper.Drawing, within geometry.Rect, whole bool) bool {
	var best spot
	which := -1
	for i, sign := range signs {
		p, ok := b.space.find(sign.Bounds.Grow(ground).Size(), wish{within, within.Centre()}, 0, true)
		if ok && (which < 0 || p.lines < best.lines) {
			best, which = p, i
		}
	}
	if which < 0 {
		return false
	}
	sign, at := signs[which], best.at.Add(geometry.Pt(ground, ground))
	if whole {
		b.lay(geometry.RectAt(best.at, sign.Bounds.Grow(ground).Size()))
		return b.set(sign, at)
	}
	for _, l := range sign.Labels {
		b.lay(l.Extent().Move(at).Grow(ground))
	}
	return b.set(sign, at)
}

// set puts a sign down with its top left corner at p.
func (b *board) set(sign paper.Drawing, p geometry.Point) bool {
	b.drawing.Add(sign, p)
	b.space.signs = append(b.space.signs, sign.Bounds.Move(p).Grow(breath))
	return true
}
