package jobfile

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/words"
)

// checkWood reads the outer body of a block; with no good face, only for its own mistakes.
func checkWood(s section, b *job.Block) bool {
	wood, offset := s.key("wood"), s.key("wood-offset")
	size, single, ok := wood.sizeOrSingle("98 x 98 mm")
	at, okAt := offset.point("0 x 2 mm")
	if shape := s.key("wood-shape"); shape.given() && !s.has("wood") {
		shape.say(`there is no wood to have a shape; add wood = "98 x 98 mm", or leave it out`)
		return false
	}
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
	body, known := s.key("wood-shape").word(words.Texts(keys.WoodShapes()), string(usualWood(b.Shape)))
	if !known {
		return false
	}
	if b.Wood, ok = wood.body(job.FaceShape(body), geometry.RectAround(at, size), single); !ok {
		return false
	}
	b.WoodOffset = at
	if !b.Wood.HoldsClear(b.Face, 0) {
		size, show := b.Wood.Bounds().Size(), s.r.show
		switch {
		case b.Wood.Move(geometry.Point{}.Sub(at)).HoldsClear(b.Face, 0):
			offset.say("moved so far, the wood does not cover the face; write a smaller step")
		case size.W >= b.Size.W && size.H >= b.Size.H:
			wood.say("wood of this shape, %s by %s, does not cover the face; write its outer size, or another wood-shape", show(size.W), show(size.H))
		default:
			wood.say("wood of %s by %s is smaller than the face of %s by %s; write its outer size",
				show(size.W), show(size.H), show(b.Size.W), show(b.Size.H))
		}
		return false
	}
	return true
}

// usualWood is the shape of the wood where a job does not say: that of the face, but for a face
// of an outline of its own.
func usualWood(face job.FaceShape) job.FaceShape {
	if face == job.OutlineFace {
		return job.RectangleFace
	}
	return face
}

// body makes wood of a shape, round the middle of bounds and as large; single: its size was
// written as one length.
func (e entry) body(shape job.FaceShape, bounds geometry.Rect, single bool) (geometry.Outline, bool) {
	size, at := bounds.Size(), bounds.Centre()
	show := e.s.r.show
	switch {
	case shape == job.RoundFace && size.W != size.H:
		e.say(`round wood is as wide as it is high, and this is %s by %s; write its diameter, such as %s, or add wood-shape = "rectangle"`,
			show(size.W), show(size.H), words.Quote(show(size.W)))
		return geometry.Outline{}, false
	case shape == job.RoundFace:
		return geometry.CircleOutline(at, size.W/2), true
	case shape == job.HexagonFace:
		high := size.W * hexagonHeight
		if !single && math.Abs(float64(size.H-high)) > float64(hexagonSlack+geometry.Tolerance) {
			e.say(`six-sided wood %s across its flat sides, left and right, is %s high; write its width alone, such as %s, or add wood-shape = "rectangle"`,
				show(size.W), show(high), words.Quote(show(size.W)))
			return geometry.Outline{}, false
		}
		return geometry.HexagonOutline(geometry.RectAround(at, geometry.Size{W: size.W, H: high})), true
	case single:
		e.say("the wood of a block like this has two sides; write %s", words.Quote(twice(e.value())))
		return geometry.Outline{}, false
	}
	return geometry.RectOutline(bounds), true
}
