package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// moved tells whether a face is one stretch of a cloth that is moved along, and which way.
func moved(face plan.FacePlan) (down, ok bool) {
	m := face.Item.Moves
	return m != nil && m.Down, m != nil && m.Times > 1
}

// drawMove draws, for a cloth that is moved along, the row on which the last one printed is laid in
// the next laying, and where the far end of the cloth lies in the last.
func (g *guide) drawMove() {
	down, ok := moved(g.face)
	if !ok {
		return
	}
	on := g.face.LaidOn()
	for _, o := range on {
		g.line(o.Path(), g.pens.LaidOn, RoleLaidOn)
		g.name("lay the last row here", o.Bounds().Centre())
	}
	end := g.face.FarEnd()
	g.line(end, g.pens.FarEnd, RoleFarEnd)
	far, middle := "far", end.Bounds().Centre()
	if !down {
		far = "right"
	}
	g.name("the cloth’s "+far+" end, at the last laying", middle.Sub(geometry.Pt(0, 4)))
}

// name writes a few words on white ground round a point, where nothing else is written.
func (g *guide) name(words string, at geometry.Point) {
	for _, up := range []geometry.Length{0, -6, 6, -12, 12} {
		l := paper.Label{Text: words, At: at.Add(geometry.Pt(0, up)), Height: tickText, Ground: true, Role: paper.Role{Kind: RoleLaidOn}}
		if box := l.GroundBox(); g.Bounds.Holds(box) && g.crowd.Free(box) {
			g.Write(l)
			g.crowd.Take(box)
			return
		}
	}
	g.leave(words)
}
