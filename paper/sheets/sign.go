package sheets

import (
	"underlay/geometry"
	"underlay/paper"
)

// sign makes a small drawing to be set down on a page where there is room: d moved so that
// all of it, tails of letters and accents included, lies in Bounds, which start at (0, 0).
func sign(d paper.Drawing) paper.Drawing {
	var all geometry.Rect
	first := true
	hold := func(r geometry.Rect) {
		if first {
			all, first = r, false
		}
		all = all.Union(r)
	}
	for _, s := range d.Strokes {
		hold(s.Bounds())
	}
	for _, f := range d.Fills {
		hold(f.Bounds())
	}
	for _, l := range d.Labels {
		hold(l.Extent())
	}
	moved := paper.Drawing{Bounds: geometry.Rect{Max: all.Max.Sub(all.Min)}}
	moved.Add(d, geometry.Point{}.Sub(all.Min))
	return moved
}

// textSign returns rows of text, one under the other.
func textSign(rows []string, h geometry.Length) paper.Drawing {
	const pitch = 1.9 // from row to row, in heights of capitals
	var d paper.Drawing
	for i, row := range rows {
		y := h * pitch * geometry.Length(i)
		d.Write(paper.Label{Text: row, At: geometry.Pt(0, y), Anchor: paper.AnchorBottomLeft, Height: h})
	}
	return sign(d)
}

// Neighbours' names: height of the letters, and size of the triangle that points there.
const (
	neighbourHeight = 3.5 * geometry.Millimetre
	pointer         = 2.4 * geometry.Millimetre
)

// neighbourSigns returns a neighbour's name with a triangle that points to it: beside the
// name, or, for a narrow place, above it.
func neighbourSigns(name string, e paper.Side) []paper.Drawing {
	const h, gap = neighbourHeight, 1.2
	w := paper.TextWidth(name, h, false)
	text := func(x, y geometry.Length) paper.Label {
		return paper.Label{Text: name, At: geometry.Pt(x, y), Anchor: paper.AnchorBottomLeft, Height: h}
	}
	var beside paper.Drawing
	if e == paper.RightSide {
		beside.Write(text(0, h))
		beside.Fill(triangle(geometry.Pt(w+gap+pointer/2, h/2), e), paper.Ink{})
	} else {
		beside.Fill(triangle(geometry.Pt(pointer/2, h/2), e), paper.Ink{})
		beside.Write(text(pointer+gap, h))
	}
	var above paper.Drawing
	above.Fill(triangle(geometry.Pt(max(w, pointer)/2, pointer/2), e), paper.Ink{})
	above.Write(text((max(w, pointer)-w)/2, pointer+gap+h))
	return []paper.Drawing{sign(beside), sign(above)}
}

// triangle points to a side, its middle at p.
func triangle(p geometry.Point, e paper.Side) geometry.Path {
	r := pointer / 2
	turn := [...]geometry.Angle{paper.LeftSide: 180, paper.TopSide: 270, paper.RightSide: 0, paper.BottomSide: 90}[e]
	return geometry.Polygon{{X: -r, Y: -r}, {X: r, Y: 0}, {X: -r, Y: r}}.Turn(turn).Move(p).Path()
}

// cutSigns returns the word that says where the sheet is cut.
func cutSigns() []paper.Drawing {
	return []paper.Drawing{textSign([]string{"cut"}, 2.5), textSign([]string{"cut"}, 1.8)}
}
