package plan

import (
	"underlay/geometry"
)

// Laid returns what the guide shows of a face: the face itself; of several pieces on one cloth the
// whole cloth; of a cloth that is moved along one stretch of it, where it lies in the first laying,
// with the prints numbered within it.
func (f FacePlan) Laid() FacePlan {
	if f.Item.asked != nil { // it is laid already
		return f
	}
	if f.Item.Item.Pieces.Several() {
		return f.pieced()
	}
	m := f.Item.Moves
	if m == nil || m.Times == 1 || f.Item.LaidOn != (geometry.Rect{}) {
		return f
	}
	item := *f.Item.Item
	area := f.Item.Area
	cloth, ground := area.Cloth, area.Rect
	far := m.border + m.Stretch
	if m.Down {
		cloth.Min.Y, ground.Min.Y = cloth.Max.Y-far, cloth.Max.Y-far
		area.whole = geometry.Chain(cloth.Min, geometry.Pt(cloth.Min.X, cloth.Max.Y), cloth.Max, geometry.Pt(cloth.Max.X, cloth.Min.Y))
		area.edge = geometry.Chain(ground.Min, geometry.Pt(ground.Min.X, ground.Max.Y), ground.Max, geometry.Pt(ground.Max.X, ground.Min.Y))
	} else {
		cloth.Max.X, ground.Max.X = cloth.Min.X+far, cloth.Min.X+far
		area.whole = geometry.Chain(geometry.Pt(cloth.Max.X, cloth.Min.Y), cloth.Min, geometry.Pt(cloth.Min.X, cloth.Max.Y), cloth.Max)
		area.edge = geometry.Chain(geometry.Pt(ground.Max.X, ground.Min.Y), ground.Min, geometry.Pt(ground.Min.X, ground.Max.Y), ground.Max)
	}
	area.Cloth, area.Rect = cloth, ground
	item.Outline = geometry.RectOutline(cloth)
	item.Hem = 0 // its line would close the open end
	laid := FacePlan{Item: &ItemPlan{Item: &item, FaceNames: f.Item.FaceNames, Area: area, Moves: m, hand: f.Item.hand, asked: f.Item.Item}, Names: f.Names, Alone: f.Alone}
	first := 1
	for _, p := range f.Passes {
		q := *p.PassPlan
		q.Prints = q.laid
		laid.Item.Passes = append(laid.Item.Passes, &q)
		laid.Passes = append(laid.Passes, FacePass{&q, first})
		first += len(q.laid)
	}
	for i, o := range laid.LaidOn() {
		if i == 0 {
			laid.Item.LaidOn = o.Bounds()
		}
		laid.Item.LaidOn = laid.Item.LaidOn.Union(o.Bounds())
	}
	return laid
}

// Laid returns what the guides of an item show: a face that differs each, of which Laid says more.
func (ip *ItemPlan) Laid() []FacePlan {
	faces := ip.Faces()
	for i, f := range faces {
		faces[i] = f.Laid()
	}
	return faces
}

// LaidOn returns the outlines on which the last row printed, or column, is laid in every laying
// but the first: one row before the guide's first. None where the cloth is not moved.
func (f FacePlan) LaidOn() []geometry.Outline {
	m := f.Item.Moves
	if m == nil || m.Times == 1 {
		return nil
	}
	p := f.Item.Passes[0] // on the cloth, whatever pass is shown
	sites := make([]Site, len(p.laid))
	for i, print := range p.laid {
		sites[i] = print.Site
	}
	line := m.lineOf(sites)
	back := m.along(-m.Stretch)
	var outlines []geometry.Outline
	for _, print := range p.laid {
		if line(print.Site) == m.Lines-1 {
			outlines = append(outlines, print.Outline.Move(back))
		}
	}
	return outlines
}

// FarEnd returns where the far end of the cloth lies in the last laying, from side to side; no path
// where the cloth is not moved.
func (f FacePlan) FarEnd() geometry.Path {
	m := f.Item.Moves
	if m == nil || m.Times == 1 {
		return nil
	}
	back := m.along(-m.Stretch * geometry.Length(m.Times-1))
	a, b := m.cloth.Min, geometry.Pt(m.cloth.Max.X, m.cloth.Min.Y)
	if !m.Down {
		a, b = geometry.Pt(m.cloth.Max.X, m.cloth.Min.Y), m.cloth.Max
	}
	return geometry.Line(a.Add(back), b.Add(back))
}

// NumberInStretch is the number that a print of a cloth that is moved along has on the guide.
// 0 of any other.
func (p *PassPlan) NumberInStretch(print Print) int {
	if print.InStretch == 0 {
		return 0
	}
	return p.before + print.InStretch
}
