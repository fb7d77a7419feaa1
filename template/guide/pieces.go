package guide

import (
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
)

// Names on a cloth of several pieces.
const (
	cutName = "cut here when dry"
	// leastNameRow is the least plain strip of a piece with room for the piece's name.
	leastNameRow = 4 * geometry.Millimetre
	// leastCutName is the least width between two pieces with room for the name of the cut, in rows.
	leastCutName = 16 * geometry.Millimetre
	// leastShown is how much of a piece, or of a cut, a sheet shows that names it.
	leastShown = 30 * geometry.Millimetre
)

// hemPath is the hem of the cloth, or of each of its pieces; none where there is none.
func (g *guide) hemPath() geometry.Path {
	item := g.face.Item.Item
	if item.Hem <= 0 || item.Outline.None() {
		return nil
	}
	pieces := g.face.Item.Pieces()
	if pieces == nil {
		path, _, _ := item.Outline.Inset(item.Hem)
		return path
	}
	var all geometry.Path
	for _, p := range pieces {
		all = append(all, p.Rect.In(geometry.EvenEdges(item.Hem)).Polygon().Path()...)
	}
	return all
}

// drawPieces draws the edges of the pieces of a cloth where they are not the cloth's own, the lines
// to cut them apart by, and their names: in the plain strip at the far and the near edge of each.
func (g *guide) drawPieces() {
	ip := g.face.Item
	pieces := ip.Pieces()
	if pieces == nil {
		return
	}
	if ip.Item.Pieces.Apart > sameLine {
		var edges geometry.Path
		for _, p := range pieces {
			edges = append(edges, g.innerEdges(p.Rect)...)
		}
		g.line(edges, g.pens.Piece, RolePiece)
	}
	across, down := ip.Cuts()
	for _, x := range across {
		g.line(geometry.Line(geometry.Pt(x, g.cloth.Min.Y), geometry.Pt(x, g.cloth.Max.Y)), g.pens.Cut, RoleCut)
	}
	for _, y := range down {
		g.line(geometry.Line(geometry.Pt(g.cloth.Min.X, y), geometry.Pt(g.cloth.Max.X, y)), g.pens.Cut, RoleCut)
	}
	border := g.plain()
	for _, p := range pieces {
		for _, strip := range []geometry.Rect{
			{Min: p.Rect.Min, Max: geometry.Pt(p.Rect.Max.X, p.Rect.Min.Y+border.Top)},
			{Min: geometry.Pt(p.Rect.Min.X, p.Rect.Max.Y-border.Bottom), Max: p.Rect.Max},
		} {
			if strip.H() >= leastNameRow {
				g.Name(paper.Name{Text: "piece " + strconv.Itoa(p.Number), Of: strip, Least: geometry.Size{W: leastShown}, Role: paper.Role{Kind: RolePiece, Number: p.Number}})
			}
		}
		if max(border.Top, border.Bottom) < leastNameRow { // wherever there is room in it
			g.Name(paper.Name{Text: "piece " + strconv.Itoa(p.Number), Of: p.Rect, Least: geometry.Size{W: leastShown}, Role: paper.Role{Kind: RolePiece, Number: p.Number}})
		}
		g.nameCuts(p.Rect, border)
	}
}

// plain is the plain cloth that all passes leave on each side of a piece.
func (g *guide) plain() geometry.Edges {
	least := g.face.Passes[0].Choice().Border
	for _, p := range g.face.Passes[1:] {
		b := p.Choice().Border
		least = geometry.Edges{
			Top: min(least.Top, b.Top), Right: min(least.Right, b.Right), Bottom: min(least.Bottom, b.Bottom), Left: min(least.Left, b.Left),
		}
	}
	return least
}

// nameCuts names the cuts to the right and to the near side of a piece, each along it: between the
// pieces where there is room, else on their plain borders too.
func (g *guide) nameCuts(piece geometry.Rect, plain geometry.Edges) {
	half := g.face.Item.Item.Pieces.Apart / 2
	name := func(cut geometry.Point, across, down geometry.Length) {
		band := geometry.Size{W: across, H: down}
		g.Name(paper.Name{Text: cutName, Of: geometry.RectAround(cut, band), Least: geometry.Size{W: min(across, leastShown), H: min(down, leastShown)}, Role: paper.Role{Kind: RoleCut}})
	}
	if piece.Max.X < g.cloth.Max.X-sameLine {
		wide := 2 * half
		if wide < leastCutName {
			wide += 2 * min(plain.Left, plain.Right)
		}
		name(geometry.Pt(piece.Max.X+half, piece.Centre().Y), wide, piece.H())
	}
	if piece.Max.Y < g.cloth.Max.Y-sameLine {
		high := 2 * half
		if high < leastNameRow {
			high += 2 * min(plain.Top, plain.Bottom)
		}
		name(geometry.Pt(piece.Centre().X, piece.Max.Y+half), piece.W(), high)
	}
}

// innerEdges are the sides of a piece that are not the cloth's own.
func (g *guide) innerEdges(r geometry.Rect) geometry.Path {
	corners := r.Polygon()
	var path geometry.Path
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		middle := a.Add(b).Mul(0.5)
		if g.cloth.Grow(-sameLine).Contains(middle) {
			path = append(path, geometry.Line(a, b)...)
		}
	}
	return path
}

// cuts returns the cuts that the run has ticks for.
func (r *run) cuts() []geometry.Length {
	across, down := r.g.face.Item.Cuts()
	if r.down {
		return down
	}
	return across
}

// cutAt tells whether a cut runs along a line.
func (r *run) cutAt(l geometry.Length) bool { return slices.ContainsFunc(r.cuts(), near(l)) }

// sideCuts returns the cuts but for one in the middle of the cloth, which goes with the centre line.
func (r *run) sideCuts() []geometry.Length {
	return slices.DeleteFunc(r.cuts(), near((r.from+r.to)/2))
}

// drawCuts draws the ends of the lines to cut by.
func (r *run) drawCuts() {
	for _, l := range r.sideCuts() {
		r.line(l, r.beyond, r.outer, r.g.pens.Cut, paper.Role{Kind: RoleCut})
	}
}

// nameCuts writes the names of the cuts, and where they are.
func (r *run) nameCuts() {
	for _, l := range r.sideCuts() {
		r.nameLine("cut", l, r.outer, paper.Role{Kind: RoleCut})
	}
}
