package jobfile

import (
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// mostItems is the most pieces of one item a job may ask for.
const mostItems = 1_000_000

// checkItems reads every [[item]].
func checkItems(s section, blocks map[string]*job.Block) []*job.Item {
	run := s.run("item")
	if len(run) == 0 {
		if !s.has("item") {
			s.r.add(0, "", `there is no item to print on; add [[item]] with name = "cushion", size = "50 x 50 cm" and border = "25 mm"`)
		} else {
			s.key("item").say("there is no item in the list; write [[item]], and its keys below")
		}
		return nil
	}
	var items []*job.Item
	lines := map[string]int{}
	for _, t := range run {
		t, name := t.named("item", "floor cushion", lines)
		items = append(items, checkItem(t, name, blocks))
	}
	return items
}

// checkItem reads one [[item]] and what belongs to it.
func checkItem(s section, name string, blocks map[string]*job.Block) *job.Item {
	it := &job.Item{Name: name, Quantity: 1, Line: s.node.Line}
	shape, known := s.word("shape")
	it.Shape = job.Shape(shape)
	if known {
		for _, name := range s.node.Order {
			if k := s.keys.Keys[name]; len(k.With) > 0 && !slices.Contains(k.With, shape) {
				s.key(name).say("belongs to an item with shape = %s, and this one's is %s; take one of the two out",
					words.OneOf(k.With), words.Quote(shape))
			}
		}
	}
	shaped := known && shapeReaders()[it.Shape](s, it)
	edges := checkEdges(s, it)
	if q, ok := s.key("quantity").count("6", mostItems); ok {
		it.Quantity = q
	}
	it.Faces = checkFaces(s)
	it.Zones = checkZones(s, it, shaped)
	if shaped && edges {
		checkRoom(s, it)
	}
	checkPasses(s, it, blocks, known)
	checkPieces(s, it, shaped)
	checkColourways(s, it)
	checkMove(s, it)
	return it
}

// shapeReaders is the table of what reads how large an item of each shape is, and its outline. A
// cone keeps no outline: what it is laid flat is worked out with the plan.
func shapeReaders() map[job.Shape]func(section, *job.Item) bool {
	return map[job.Shape]func(section, *job.Item) bool{
		job.Rectangle: checkRectangleItem,
		job.Round:     checkRoundItem,
		job.Outline:   checkItemOutline,
		job.FourSided: checkFourSided,
		job.Drum:      checkShade,
		job.Cone:      checkShade,
	}
}

func checkRectangleItem(s section, it *job.Item) bool {
	size := s.key("size")
	s.needs("size", `"50 x 50 cm"`)
	got, single, ok := size.sizeOrSingle("50 x 50 cm")
	if !ok {
		return false
	}
	if single {
		size.say("the shape is a rectangle, which has two sides; write %s, or give another shape", words.Quote(twice(size.value())))
		return false
	}
	it.Size = got
	it.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, got))
	return true
}

func checkRoundItem(s section, it *job.Item) bool {
	size := s.key("size")
	s.needs("size", `"40 cm"`)
	got, _, ok := size.sizeOrSingle("40 cm")
	if !ok || !size.isDiameter(got) {
		return false
	}
	it.Size = geometry.Size{W: got.W, H: got.W}
	it.Outline = geometry.CircleOutline(geometry.Pt(got.W/2, got.W/2), got.W/2)
	return true
}

func checkItemOutline(s section, it *job.Item) bool {
	s.needs("outline", `["0 x 0 cm", "40 x 0 cm", "20 x 30 cm"]`)
	corners, ok := s.key("outline").polygon()
	if !ok {
		return false
	}
	bounds := corners.Bounds()
	if size := s.key("size"); size.given() {
		got, ok := size.size("40 x 30 cm")
		if !ok || !size.matches(got, bounds.Size()) {
			return false
		}
	}
	it.Size = bounds.Size()
	it.Outline = geometry.PolygonOutline(corners.Move(geometry.Point{}.Sub(bounds.Min)))
	return true
}

// checkFaces reads the names of an item's faces: one nameless face where none is given.
func checkFaces(s section) []string {
	list, _ := s.key("faces").list(`["front", "back"]`)
	var faces []string
	for _, e := range list {
		name, ok := e.name("front")
		if ok && slices.Contains(faces, name) {
			e.say("%s is there twice; take one of them out", words.Quote(name))
		} else if ok {
			faces = append(faces, name)
		}
	}
	if len(faces) == 0 {
		return []string{""}
	}
	return faces
}

// checkZones reads every [[item.keep-clear]].
func checkZones(s section, it *job.Item, shaped bool) []job.Zone {
	var zones []job.Zone
	lines := map[string]int{}
	for _, t := range s.run("keep-clear") {
		t, name := t.named("keep-clear", "pocket", lines)
		t.needs("at", `"30 x 300 mm", its top left corner`)
		t.needs("size", `"120 x 140 mm"`)
		face := checkFaceName(t, it.Faces)
		at, okAt := t.key("at").point("30 x 300 mm")
		size, okSize := t.key("size").size("120 x 140 mm")
		if !okAt || !okSize {
			continue
		}
		zone := job.Zone{Name: name, Face: face, Rect: geometry.RectAt(at, size)}
		bounds := geometry.RectAt(geometry.Point{}, it.Size)
		if shaped && it.Shape != job.Cone && !bounds.Holds(zone.Rect) {
			e := t.key("at")
			if bounds.Contains(at) {
				e = t.key("size")
			}
			e.say("reaches from %s x %s to %s x %s, beyond the item of %s x %s; write a place and a size within it",
				s.r.show(at.X), s.r.show(at.Y), s.r.show(zone.Rect.Max.X), s.r.show(zone.Rect.Max.Y),
				s.r.show(it.Size.W), s.r.show(it.Size.H))
			continue
		}
		zones = append(zones, zone)
	}
	return zones
}
