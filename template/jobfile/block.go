package jobfile

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// checkBlocks reads every [[block]]. The map gets all names; a block that is not good is nil
// there.
func checkBlocks(s section, named map[string]*job.Block) []*job.Block {
	blocks := s.run("block")
	if len(blocks) == 0 {
		if !s.has("block") {
			s.r.add(0, "", `there is no block; add [[block]] with name = "fern" and print = "90 x 90 mm"`)
		} else {
			s.key("block").say("there is no block in the list; write [[block]], and its keys below")
		}
		return nil
	}
	var good []*job.Block
	lines := map[string]int{}
	for _, b := range blocks {
		b, name := b.named("block", "fern", lines)
		block := checkBlock(b)
		if name != "" && named[name] == nil {
			named[name] = block
		}
		if block != nil {
			block.Name = name
			good = append(good, block)
		}
	}
	return good
}

// checkBlock reads one [[block]]; nil where it is not good.
func checkBlock(s section) *job.Block {
	b := &job.Block{}
	shape, known := s.word("shape")
	b.Shape = job.FaceShape(shape)
	b.Inked = checkInked(s)
	if !known {
		return nil
	}
	if ok := checkFace(s, b); !ok {
		// The wood is read for its own sake; it cannot be compared with the face.
		checkWood(s, nil)
		checkPicture(s, b)
		return nil
	}
	checkPicture(s, b)
	if !checkWood(s, b) {
		return nil
	}
	return b
}

func checkInked(s section) float64 {
	e := s.key("inked")
	v, ok := e.number("0.55", 0, 1)
	if ok && v == 0 {
		e.say("0 means that no paint is carried; write the share that does, such as 0.55")
	}
	return v
}

// checkFace reads the carved face.
func checkFace(s section, b *job.Block) bool {
	print, points := s.key("print"), s.key("outline")
	if b.Shape == job.OutlineFace {
		return checkFaceOutline(s, b)
	}
	if points.given() {
		points.say(`belongs to shape = "outline", and this block's is %s; take one of the two out`, words.Quote(string(b.Shape)))
	}
	example := map[job.FaceShape]string{job.RectangleFace: "90 x 90 mm", job.RoundFace: "60 mm", job.HexagonFace: "60 mm"}[b.Shape]
	s.needs("print", words.Quote(example))
	size, single, ok := print.sizeOrSingle(example)
	if !ok || !print.faceLargeEnough(size) {
		return false
	}
	switch b.Shape {
	case job.RectangleFace:
		if single {
			print.say("the shape is a rectangle, which has two sides; write %s, or give another shape", words.Quote(twice(print.value())))
			return false
		}
		b.Face = geometry.RectOutline(geometry.RectAround(geometry.Point{}, size))
	case job.RoundFace:
		if !print.isDiameter(size) {
			return false
		}
		size.H = size.W
		b.Face = geometry.CircleOutline(geometry.Point{}, size.W/2)
	case job.HexagonFace:
		if size, ok = print.hexagon(size, single); !ok {
			return false
		}
		b.Face = geometry.HexagonOutline(geometry.RectAround(geometry.Point{}, size))
	}
	b.Size = size
	return true
}

func (e entry) faceLargeEnough(size geometry.Size) bool {
	if min(size.W, size.H) >= job.LeastFace-geometry.Tolerance {
		return true
	}
	e.say("a face this small cannot be placed by hand; write 1 mm or more for either side")
	return false
}

// hexagonHeight is the height of a regular hexagon over its width across the flats, which
// stand left and right.
var hexagonHeight = geometry.Length(2 / math.Sqrt(3))

// hexagonSlack is how far off a written height may be: sizes are written to a tenth.
const hexagonSlack = 0.05 * geometry.Millimetre

// hexagon makes the size of a hexagon exact: its height follows from its width.
func (e entry) hexagon(size geometry.Size, single bool) (geometry.Size, bool) {
	high := size.W * hexagonHeight
	if !single && math.Abs(float64(size.H-high)) > float64(hexagonSlack+geometry.Tolerance) {
		e.say("a hexagon %s across its flat sides, left and right, is %s high; write its width alone, such as %s",
			e.s.r.show(size.W), e.s.r.show(high), words.Quote(e.s.r.show(size.W)))
		return size, false
	}
	return geometry.Size{W: size.W, H: high}, true
}

// checkFaceOutline reads a face given by its corners.
func checkFaceOutline(s section, b *job.Block) bool {
	e := s.key("outline")
	s.needs("outline", `["0 x 0 mm", "90 x 0 mm", "45 x 80 mm"]`)
	corners, ok := e.polygon()
	if !ok {
		return false
	}
	bounds := corners.Bounds()
	if !e.faceLargeEnough(bounds.Size()) {
		return false
	}
	if print := s.key("print"); print.given() {
		size, ok := print.size("90 x 90 mm")
		if !ok || !print.matches(size, bounds.Size()) {
			return false
		}
	}
	b.Size = bounds.Size()
	b.Face = geometry.PolygonOutline(corners.Move(geometry.Point{}.Sub(bounds.Centre())))
	return true
}
