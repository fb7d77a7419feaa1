package template

import (
	"slices"

	"underlay/geometry"
)

// mostItems is the most pieces of one item a job may ask for.
const mostItems = 1_000_000

// The shapes of an item, the default first.
var itemShapes = []string{"rectangle", "round", "outline", "drum", "cone"}

// itemKeys says for which shapes a key of an item means something; the keys not listed
// always do.
var itemKeys = []struct {
	key    string
	shapes []string
}{
	{"size", []string{"rectangle", "round", "outline"}},
	{"outline", []string{"outline"}},
	{"diameter", []string{"drum"}},
	{"around", []string{"drum"}},
	{"top", []string{"cone"}},
	{"bottom", []string{"cone"}},
	{"height", []string{"drum", "cone"}},
	{"lap", []string{"drum", "cone"}},
}

// checkItems reads every [[item]].
func checkItems(s section, raw []rawItem, blocks map[string]*Block) []*Item {
	if len(raw) == 0 {
		if !s.has("item") {
			s.r.add(0, "", `there is no item to print on; add [[item]] with name = "cushion", size = "50 x 50 cm" and border = "25 mm"`)
		} else {
			s.key("item", []any{}).say("there is no item in the list; write [[item]], and its keys below")
		}
		return nil
	}
	var items []*Item
	lines := map[string]int{}
	for i := range raw {
		t, name := s.named("item", i, raw[i].Name, "floor cushion", lines)
		items = append(items, checkItem(t, name, &raw[i], blocks))
	}
	return items
}

// checkItem reads one [[item]] and what belongs to it.
func checkItem(s section, name string, raw *rawItem, blocks map[string]*Block) *Item {
	it := &Item{Name: name, Quantity: 1, Line: s.node.line}
	var known bool
	it.Shape, known = s.key("shape", raw.Shape).word(itemShapes, itemShapes[0])
	if known {
		for _, k := range itemKeys {
			if e := s.key(k.key, true); e.given() && !slices.Contains(k.shapes, it.Shape) {
				e.say("belongs to an item with shape = %s, and this one's is %s; take one of the two out",
					oneOf(k.shapes), quote(it.Shape))
			}
		}
	}
	shaped := known && checkItemShape(s, raw, it)
	edges := checkEdges(s, raw, it)
	if q, ok := s.key("quantity", raw.Quantity).count("6", mostItems); ok {
		it.Quantity = q
	}
	it.Faces = checkFaces(s, raw)
	it.Zones = checkZones(s, raw, it, shaped)
	if shaped && edges {
		checkRoom(s, raw, it)
	}
	checkPasses(s, raw, it, blocks, known)
	return it
}

// checkItemShape reads how large an item is, and its outline. A cone keeps no outline: what
// it is laid flat is worked out with the plan.
func checkItemShape(s section, raw *rawItem, it *Item) bool {
	switch it.Shape {
	case "drum", "cone":
		return checkShade(s, raw, it)
	case "outline":
		return checkItemOutline(s, raw, it)
	}
	size := s.key("size", raw.Size)
	example := "50 x 50 cm"
	if it.Shape == "round" {
		example = "40 cm"
	}
	s.needs("size", quote(example))
	got, single, ok := size.sizeOrSingle(example)
	if !ok {
		return false
	}
	if it.Shape == "round" {
		if !size.isDiameter(got) {
			return false
		}
		it.Size = geometry.Size{W: got.W, H: got.W}
		it.Outline = geometry.CircleOutline(geometry.Pt(got.W/2, got.W/2), got.W/2)
		return true
	}
	if single {
		size.say("the shape is a rectangle, which has two sides; write %s, or give another shape", quote(twice(raw.Size)))
		return false
	}
	it.Size = got
	it.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, got))
	return true
}

func checkItemOutline(s section, raw *rawItem, it *Item) bool {
	s.needs("outline", `["0 x 0 cm", "40 x 0 cm", "20 x 30 cm"]`)
	corners, ok := s.key("outline", raw.Outline).polygon()
	if !ok {
		return false
	}
	bounds := corners.Bounds()
	if size := s.key("size", raw.Size); size.given() {
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
func checkFaces(s section, raw *rawItem) []string {
	list, _ := s.key("faces", raw.Faces).list(`["front", "back"]`)
	var faces []string
	for _, e := range list {
		name, ok := e.name("front")
		if ok && slices.Contains(faces, name) {
			e.say("%s is there twice; take one of them out", quote(name))
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
func checkZones(s section, raw *rawItem, it *Item, shaped bool) []Zone {
	var zones []Zone
	lines := map[string]int{}
	for i, z := range raw.Zones {
		t, name := s.named("keep-clear", i, z.Name, "pocket", lines)
		t.needs("at", `"30 x 300 mm", its top left corner`)
		t.needs("size", `"120 x 140 mm"`)
		at, okAt := t.key("at", z.At).point("30 x 300 mm")
		size, okSize := t.key("size", z.Size).size("120 x 140 mm")
		if !okAt || !okSize {
			continue
		}
		zone := Zone{name, geometry.RectAt(at, size)}
		bounds := geometry.RectAt(geometry.Point{}, it.Size)
		if shaped && it.Shape != "cone" && !bounds.Holds(zone.Rect) {
			e := t.key("at", z.At)
			if bounds.Contains(at) {
				e = t.key("size", z.Size)
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
