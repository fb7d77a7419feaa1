package plan

import (
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// holder tells which prints of a face that covers the same cloth in all its turns lie on an
// area. It is quick with those well inside.
type holder struct {
	area   Area
	face   geometry.Outline
	bounds geometry.Rect
	reach  geometry.Length // of the face from its origin
}

// newHolder makes the holder of a layout that is uniform, on top of a turn of the whole.
func newHolder(l layout, turn geometry.Angle) holder {
	face := l.pass.Block.Face.Turn((geometry.Angle(l.pass.Turns[0][0]) + turn).Normal())
	h := holder{area: l.area, face: face, bounds: face.Bounds()}
	if _, r, round := face.Round(); round {
		h.reach = r
	}
	for _, c := range face.Corners() {
		h.reach = max(h.reach, c.Norm())
	}
	return h
}

func (h holder) holds(p geometry.Point) bool {
	a, b := h.area, h.bounds.Move(p)
	if a.surface.closes() || slices.ContainsFunc(a.zones, func(z job.Zone) bool { return z.Rect.Overlaps(b) }) {
		return a.surface.holds(a, h.face.Move(p))
	}
	return a.Rect.Holds(b) && (a.upright || h.wellInside(p) || a.surface.holds(a, h.face.Move(p)))
}

// wellInside tells whether a whole circle round p as large as the face reaches lies on the area.
func (h holder) wellInside(p geometry.Point) bool {
	return h.area.ground.Holds(geometry.CircleOutline(p, h.reach))
}

// uniform tells whether the face covers the same cloth however it is turned here.
func (l layout) uniform() bool {
	b, turns := l.pass.Block, l.pass.Turns
	same := func(turn int) bool { return turn == turns[0][0] }
	switch b.Shape {
	case job.RoundFace:
		return true
	case job.RectangleFace, job.HexagonFace:
		square := b.Shape == job.RectangleFace && b.Size.W == b.Size.H
		same = func(turn int) bool { return square || (turn-turns[0][0])%180 == 0 }
	}
	for _, row := range turns {
		for _, turn := range row {
			if !same(turn) {
				return false
			}
		}
	}
	return true
}

// convex tells whether the area has neither a corner that points inwards nor a zone in it.
func (l layout) convex() bool {
	corners := l.item.Outline.Corners()
	return len(l.area.zones) == 0 && len(corners.Jutting()) == len(corners)
}
