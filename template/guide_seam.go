package template

import (
	"underlay/geometry"
	"underlay/paper"
)

// again returns an outline of a print wherever it shows on the guide: once, or where it lies
// across the seam of a shade also where it comes in on the other side.
func (ip *ItemPlan) again(print Print, o geometry.Outline) []geometry.Outline {
	all := []geometry.Outline{o}
	if !print.Seam {
		return all
	}
	area := ip.Area
	for _, round := range []float64{-1, 1} {
		var twin geometry.Outline
		if area.flat != nil {
			twin = area.flat.turned(o, area.flat.Angle*geometry.Angle(round))
			if !area.flat.crossesSeam(twin) {
				continue
			}
		} else {
			twin = o.Move(geometry.Pt(area.around*geometry.Length(round), 0))
		}
		if twin.Bounds().Overlaps(area.cloth) {
			all = append(all, twin)
		}
	}
	return all
}

// drawLap draws the lap of a shade's seam: beyond its right edge, not printed.
func (g *guide) drawLap() {
	path, at := seamLap(g.face.Item)
	if path == nil {
		return
	}
	g.Stroke(path, g.pens.zone)
	l := paper.Label{Text: "lap of the seam, not printed", At: at, Anchor: paper.AnchorBottomLeft, Height: 2.5}
	if box := l.Extent(); g.Bounds.Holds(box) {
		g.Write(l)
		g.crowd.take(box)
	}
}

// seamLap returns the edge of the seam's lap, and the place for its name; nil where the item
// has none.
func seamLap(ip *ItemPlan) (geometry.Path, geometry.Point) {
	lap, c := ip.Item.Shade.Lap, ip.Area.cloth
	if lap <= 0 {
		return nil, geometry.Point{}
	}
	top, bottom := geometry.Pt(c.Max.X, c.Min.Y), c.Max
	out := geometry.Pt(lap, 0)
	if f := ip.Area.flat; f != nil {
		top, bottom = f.At(f.Inner, f.Angle/2), f.At(f.Outer, f.Angle/2)
		out = geometry.Pt(lap, 0).Turn(-f.Angle / 2)
	}
	return geometry.Chain(top, top.Add(out), bottom.Add(out), bottom), top.Add(out).Add(geometry.Pt(1.5, -1.5))
}
