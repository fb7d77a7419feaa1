package jobfile

import (
	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// checkEdges reads border and hem, and tells whether both are good.
func checkEdges(s section, it *job.Item) bool {
	border, hem := s.key("border"), s.key("hem")
	s.needs("border", `"25 mm"`)
	b, okB := border.border(it)
	h, okH := hem.notNegative("12 mm")
	it.Border, it.Hem = b, h
	if !okB || hem.given() && !okH {
		return false
	}
	least := b.Least()
	if it.Shape.Shade() {
		least = min(b.Top, b.Bottom)
	}
	if least < h-geometry.Tolerance {
		border.say("%s is less than the hem, %s, and a block that rides over the hem prints badly; write %s or more",
			s.r.show(least), s.r.show(h), words.Quote(s.r.showLeast(h)))
		return false
	}
	return true
}

// border reads one length for all edges, or four. A shade has no edge left and right: its
// repeat closes there.
func (e entry) border(it *job.Item) (geometry.Edges, bool) {
	if !e.isList() {
		l, ok := e.notNegative("25 mm")
		if it.Shape.Shade() {
			return geometry.Edges{Top: l, Bottom: l}, ok
		}
		return geometry.EvenEdges(l), ok
	}
	list, ok := e.list(`"25 mm"`)
	if !ok {
		return geometry.Edges{}, false
	}
	if len(list) != 4 {
		e.say(`%d lengths are given; write one for all edges, or four: ["top", "right", "bottom", "left"]`, len(list))
		return geometry.Edges{}, false
	}
	var l [4]geometry.Length
	for i, x := range list {
		got, good := x.notNegative("25 mm")
		l[i], ok = got, ok && good
	}
	edges := geometry.Edges{Top: l[0], Right: l[1], Bottom: l[2], Left: l[3]}
	if !ok {
		return edges, false
	}
	switch {
	case it.Shape.Shade() && (edges.Left != 0 || edges.Right != 0):
		e.say(`a shade has no edge right and left, where its repeat closes; write "0 mm" for both`)
		return edges, false
	case it.Shape.EvenBorder() && !edges.Even():
		e.say(`%s item has one border all the way round; write one length, such as %s`,
			words.Article(it.Shape), words.Quote(e.s.r.show(l[0])))
		return edges, false
	}
	return edges, true
}

// checkRoom refuses an item whose border leaves nothing to print on.
func checkRoom(s section, it *job.Item) {
	left := it.Size
	left.W -= it.Border.Left + it.Border.Right
	left.H -= it.Border.Top + it.Border.Bottom
	border := s.key("border")
	show := s.r.show
	switch {
	case it.Shape == job.Cone:
		slant := geometry.Point{X: (it.Shade.Bottom - it.Shade.Top) / 2, Y: it.Shade.Height}.Norm()
		if slant-it.Border.Top-it.Border.Bottom < job.LeastFace {
			border.say("leaves nothing to print on: the slope of the shade is %s long; write a smaller border", show(slant))
		}
	case it.Shape == job.FourSided:
		b := it.Border
		in := geometry.Polygon(it.Corners[:]).DrawnIn([]geometry.Length{b.Top, b.Right, b.Bottom, b.Left}).Bounds()
		if in.W() < job.LeastFace || in.H() < job.LeastFace {
			border.say("leaves nothing to print on: the item is %s wide and %s high; write a smaller border", show(it.Size.W), show(it.Size.H))
		}
	case left.W < job.LeastFace || left.H < job.LeastFace:
		border.say("leaves nothing to print on: the item is %s wide and %s high; write a smaller border",
			show(it.Size.W), show(it.Size.H))
	case it.Shape == job.Outline:
		if _, _, ok := it.Outline.Inset(it.Border.Top); !ok {
			border.say("leaves nothing to print on: the outline is nowhere that wide; write a smaller border")
		}
	}
}
