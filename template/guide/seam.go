package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// drawLap draws the lap of a shade's seam: beyond its right edge, not printed.
func (g *guide) drawLap() {
	path, at := seamLap(g.face.Item)
	if path == nil {
		return
	}
	g.Stroke(path, g.pens.Zone)
	l := paper.Label{Text: "lap of the seam, not printed", At: at, Anchor: paper.AnchorBottomLeft, Height: 2.5}
	if box := l.Extent(); g.Bounds.Holds(box) {
		g.Write(l)
		g.crowd.Take(box)
	}
}

// seamLap returns the edge of the seam's lap, and the place for its name; nil where the item
// has none.
func seamLap(ip *plan.ItemPlan) (geometry.Path, geometry.Point) {
	lap, c := ip.Item.Shade.Lap, ip.Area.ClothBounds
	if lap <= 0 {
		return nil, geometry.Point{}
	}
	top, bottom := geometry.Pt(c.Max.X, c.Min.Y), c.Max
	out := geometry.Pt(lap, 0)
	if f := ip.Area.Flat; f != nil {
		top, bottom = f.At(f.Inner, f.Angle/2), f.At(f.Outer, f.Angle/2)
		out = geometry.Pt(lap, 0).Turn(-f.Angle / 2)
	}
	return geometry.Chain(top, top.Add(out), bottom.Add(out), bottom), top.Add(out).Add(geometry.Pt(1.5, -1.5))
}
