package jobfile

import (
	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// checkWood reads the outer body of a block; with no good face, only for its own mistakes.
func checkWood(s section, b *job.Block) bool {
	wood, offset := s.key("wood"), s.key("wood-offset")
	size, single, ok := wood.sizeOrSingle("98 x 98 mm")
	at, okAt := offset.point("0 x 2 mm")
	if offset.given() && !s.has("wood") {
		offset.say(`there is no wood to move; add wood = "98 x 98 mm", or leave it out`)
		return false
	}
	if b == nil {
		return false
	}
	if !wood.given() {
		return true
	}
	if !ok || offset.given() && !okAt {
		return false
	}
	bounds := geometry.RectAround(at, size)
	switch {
	case b.Shape == "round" && bounds.W() == bounds.H():
		b.Wood = geometry.CircleOutline(at, size.W/2)
	case b.Shape == "hexagon" && single:
		size.H = size.W * hexagonHeight
		bounds = geometry.RectAround(at, size)
		b.Wood = geometry.HexagonOutline(bounds)
	case single:
		wood.say("the wood of a block like this has two sides; write %s", words.Quote(twice(wood.value())))
		return false
	default:
		b.Wood = geometry.RectOutline(bounds)
	}
	b.WoodOffset = at
	if !bounds.Holds(b.Face.Bounds()) {
		show := s.r.show
		if offset.given() && size.W >= b.Size.W && size.H >= b.Size.H {
			offset.say("moved so far, the wood does not cover the face; write a smaller step")
		} else {
			wood.say("wood of %s by %s is smaller than the face of %s by %s; write its outer size",
				show(size.W), show(size.H), show(b.Size.W), show(b.Size.H))
		}
		return false
	}
	return true
}
