package template

import (
	"math"
	"slices"

	"underlay/geometry"
)

// checkEdges reads border and hem, and tells whether both are good.
func checkEdges(s section, raw *rawItem, it *Item) bool {
	border, hem := s.key("border", raw.Border), s.key("hem", raw.Hem)
	s.needs("border", `"25 mm"`)
	b, okB := border.border(it)
	h, okH := hem.notNegative("12 mm")
	it.Border, it.Hem = b, h
	if !okB || hem.given() && !okH {
		return false
	}
	least := b.Least()
	if it.isShade() {
		least = min(b.Top, b.Bottom)
	}
	if least < h-geometry.Tolerance {
		border.say("%s is less than the hem, %s, and a block that rides over the hem prints badly; write %s or more",
			s.r.show(least), s.r.show(h), quote(s.r.show(h)))
		return false
	}
	return true
}

// border reads one length for all edges, or four. A shade has no edge left and right: its
// repeat closes there.
func (e entry) border(it *Item) (geometry.Edges, bool) {
	if _, many := e.value.([]any); !many {
		l, ok := e.notNegative("25 mm")
		if it.isShade() {
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
	case it.isShade() && (edges.Left != 0 || edges.Right != 0):
		e.say(`a shade has no edge right and left, where its repeat closes; write "0 mm" for both`)
		return edges, false
	case slices.Contains([]string{"round", "outline"}, it.Shape) && !edges.Even():
		e.say(`%s item has one border all the way round; write one length, such as %s`,
			article(it.Shape), quote(e.s.r.show(l[0])))
		return edges, false
	}
	return edges, true
}

// checkRoom refuses an item whose border leaves nothing to print on.
func checkRoom(s section, raw *rawItem, it *Item) {
	left := it.Size
	left.W -= it.Border.Left + it.Border.Right
	left.H -= it.Border.Top + it.Border.Bottom
	border := s.key("border", raw.Border)
	show := s.r.show
	switch {
	case it.Shape == "cone":
		slant := geometry.Point{X: (it.Shade.Bottom - it.Shade.Top) / 2, Y: it.Shade.Height}.Norm()
		if slant-it.Border.Top-it.Border.Bottom < leastFace {
			border.say("leaves nothing to print on: the slope of the shade is %s long; write a smaller border", show(slant))
		}
	case left.W < leastFace || left.H < leastFace:
		border.say("leaves nothing to print on: the item is %s wide and %s high; write a smaller border",
			show(it.Size.W), show(it.Size.H))
	case it.Shape == "outline":
		if !deeperThan(it.Outline.Corners(), it.Border.Top) {
			border.say("leaves nothing to print on: the outline is nowhere that wide; write a smaller border")
		}
	}
}

// mostSquares is how many squares deeperThan looks at.
const mostSquares = 20_000

// deeperThan tells whether some point of a polygon lies farther than depth from its edge, by
// more than a hair. It cuts the bounds into ever smaller squares, and lets go of those in
// which no point can: a square's points are no deeper than its centre by more than half its
// diagonal. Where that takes too long it says yes, and leaves it to the plan to find that
// nothing fits.
func deeperThan(p geometry.Polygon, depth geometry.Length) bool {
	const hair = 0.1 * geometry.Millimetre
	b := p.Bounds()
	type square struct {
		centre geometry.Point
		half   geometry.Length
	}
	squares := []square{{b.Centre(), max(b.W(), b.H()) / 2}}
	for n := 0; len(squares) > 0; n++ {
		if n > mostSquares {
			return true
		}
		s := squares[len(squares)-1]
		squares = squares[:len(squares)-1]
		d := p.EdgeDistance(s.centre)
		if !p.Contains(s.centre) {
			d = -d
		}
		if d > depth+hair {
			return true
		}
		if d+s.half*math.Sqrt2 <= depth+hair || s.half < hair/4 {
			continue
		}
		q := s.half / 2
		for _, c := range []geometry.Point{{X: -q, Y: -q}, {X: q, Y: -q}, {X: -q, Y: q}, {X: q, Y: q}} {
			squares = append(squares, square{s.centre.Add(c), q})
		}
	}
	return false
}
