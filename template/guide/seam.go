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
	l := paper.Label{Text: "lap of the seam, not printed", At: at, Anchor: paper.AnchorBottomLeft, Height: tickText}
	if box := l.Extent(); g.Bounds.Holds(box) {
		g.put(l)
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

// endRoom is the least room from an edge of a shade to its name.
const endRoom = 2 * geometry.Millimetre

// edgeName is the name of an edge of a flat shade, and points along it for the name's middle, by
// shares of its length: on the shade, and where prints leave no room, outside it.
type edgeName struct {
	name string
	at   []func(share float64) geometry.Point
}

// nameEnds writes on a flat shade what its edges are: the ends of the band are the seam, and of a
// cone one end is narrow and the other wide.
func (g *guide) nameEnds() {
	const places = 40
	for _, e := range g.edgeNames() {
		named := false
		for i := 0; i < places*len(e.at) && !named; i++ {
			// From the middle of the edge to both its ends.
			k := i % places
			share := 0.5 + float64((k+1)/2)/places*float64(1-2*(k%2))
			l := paper.Label{Text: e.name, At: e.at[i/places](share), Height: tickText}
			if box := l.Extent().Grow(textAir); g.Bounds.Holds(box) && g.crowd.Free(box) && g.clear(box) {
				g.put(l)
				named = true
			}
		}
		if !named {
			g.leave(e.name)
		}
	}
}

func (g *guide) edgeNames() []edgeName {
	c := g.cloth
	half := paper.TextWidth("seam", tickText, false) / 2
	f := g.face.Item.Area.Flat
	if f == nil {
		at := func(x geometry.Length) func(float64) geometry.Point {
			return func(s float64) geometry.Point { return geometry.Pt(x, c.Min.Y+c.H()*geometry.Length(s)) }
		}
		in, out := half+endRoom, half+tickClear
		return []edgeName{
			{"seam", []func(float64) geometry.Point{at(c.Min.X + in), at(c.Min.X - out)}},
			{"seam", []func(float64) geometry.Point{at(c.Max.X - in), at(c.Max.X + g.face.Item.Item.Shade.Lap + out)}},
		}
	}
	side := func(sign geometry.Angle, away geometry.Length) func(float64) geometry.Point {
		return func(s float64) geometry.Point {
			r := f.Inner + (f.Outer-f.Inner)*geometry.Length(s)
			return f.At(r, sign*(f.Angle/2-geometry.Degrees(float64(away/r))))
		}
	}
	arc := func(r geometry.Length) func(float64) geometry.Point {
		return func(s float64) geometry.Point { return f.At(r, f.Angle*geometry.Angle(s-0.5)) }
	}
	in, deep := half+endRoom, tickText/2+endRoom
	return []edgeName{
		{"seam", []func(float64) geometry.Point{side(-1, in), side(-1, -in)}},
		{"seam", []func(float64) geometry.Point{side(1, in), side(1, -in-g.face.Item.Item.Shade.Lap)}},
		{"narrow end", []func(float64) geometry.Point{arc(f.Inner + deep), arc(f.Inner - deep)}},
		{"wide end", []func(float64) geometry.Point{arc(f.Outer - deep), arc(f.Outer + deep)}},
	}
}

// clear tells whether a box on a shade is clear of the shade's edges, its border line and centre
// lines, and of all prints with their wood.
func (g *guide) clear(box geometry.Rect) bool {
	c, b, f := g.cloth, g.face.Item.Item.Border, g.face.Item.Area.Flat
	lap := g.face.Item.Item.Shade.Lap
	off := func(l geometry.Length, e extent) bool { return l <= e.lo || l >= e.hi }
	across, down := extent{box.Min.X, box.Max.X}, extent{box.Min.Y, box.Max.Y}
	lines := off(c.Centre().X, across)
	if f == nil {
		lines = lines && off(c.Centre().Y, down) && off(c.Min.X, across) && off(c.Max.X, across) && off(c.Max.X+lap, across) &&
			off(c.Min.Y+b.Top, down) && off(c.Max.Y-b.Bottom, down)
	} else {
		// How far the corners are from the apex, and from the edges.
		r, side := extent{f.Outer * 2, 0}, extent{f.Outer * 2, -f.Outer * 2}
		for _, p := range box.Polygon() {
			d := p.Distance(f.Apex)
			r = extent{min(r.lo, d), max(r.hi, d)}
			out := f.OffEdge(p)
			side = extent{min(side.lo, out), max(side.hi, out)}
		}
		lines = lines && off(f.Inner, r) && off(f.Outer, r) && off(f.Inner+b.Top, r) && off(f.Outer-b.Bottom, r) && off(0, side) && off(lap, side)
	}
	if !lines {
		return false
	}
	outline := geometry.RectOutline(box)
	for _, p := range g.face.Passes {
		for _, print := range p.Prints {
			for _, o := range []geometry.Outline{print.Block.Face, print.Block.Wood} {
				if o.None() {
					continue
				}
				for _, o := range g.face.Item.Area.Again(print, o.Place(print.Origin, print.Turn)) {
					if o.Bounds().Overlaps(box) && o.Distance(outline) == 0 {
						return false
					}
				}
			}
		}
	}
	return true
}
