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
	g.line(path, g.pens.Zone, RoleSeam)
	l := paper.Label{Text: "lap of the seam, not printed", At: at, Anchor: paper.AnchorBottomLeft, Height: 2.5}
	if box := l.Extent(); g.Bounds.Holds(box) {
		g.Write(l)
		g.crowd.Take(box)
	}
}

// seamLap returns the edge of the seam's lap, and the place for its name; nil where the item
// has none.
func seamLap(ip *plan.ItemPlan) (geometry.Path, geometry.Point) {
	lap := ip.Item.Shade.Lap
	if lap <= 0 {
		return nil, geometry.Point{}
	}
	top, bottom, out := ip.Area.Seam()
	out = out.Mul(float64(lap))
	return geometry.Chain(top, top.Add(out), bottom.Add(out), bottom), top.Add(out).Add(geometry.Pt(1.5, -1.5))
}
