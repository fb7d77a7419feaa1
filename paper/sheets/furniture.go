package sheets

import (
	"slices"
	"sync"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/internal/cores"
)

// Furnish returns a page for each sheet of the tiling that shows something of d, or for several
// strips, and those sheets, their neighbours' names set accordingly. Each sheet has two views: the guide, and in
// the page's own frame its furniture: the panel with the sheet's name, the selvedge, check bars
// both ways, and at each join the line to cut or to lay the cut edge on, crosses at the same
// points of the layout on both sheets, and the neighbour's name.
//
// All of it keeps inside the margin. It stands where d leaves room; failing that on a white
// ground in what a join cuts away or covers, where it takes the place of what the neighbour
// shows as well; failing that on a white ground over as few lines of d as can be. Text never
// stands on text: where it would have to, all but the name is left out.
func Furnish(d *paper.Drawing, t paper.Tiling, panel Panel) ([]paper.Sheet, []paper.Page) {
	if len(t.Sheets) == 0 {
		return nil, nil
	}
	areas := make([]geometry.Rect, len(t.Sheets))
	for i, s := range t.Sheets {
		areas[i] = s.Area
	}
	d, split := settle(d, areas)
	subsets := map[string]*paper.Subset{}
	for i, subset := range split {
		subsets[t.Sheets[i].Name] = subset
	}
	if !t.Strips {
		t = t.Without(func(s paper.Sheet) bool { return !shows(s, d, subsets[s.Name]) })
	}
	if len(t.Sheets) == 0 {
		return nil, nil
	}
	f := newFurnisher(t, panel)
	// All pages of a grid are alike, so one raster serves one after the other.
	spaces := sync.Pool{New: func() any { return newSpace(t.Sheets[0].Usable()) }}
	views := make([][]paper.View, len(t.Sheets))
	cores.Each(len(views), func(i int) {
		s := t.Sheets[i]
		var furniture *paper.Drawing
		var hidden []geometry.Rect
		if t.Strips {
			sp := newSpace(s.Usable().Grow(-breath / 2))
			sp.markGuide(d, subsets[s.Name], s)
			furniture = f.furnishStrip(s, sp, d.Names)
		} else {
			sp := spaces.Get().(*space)
			defer spaces.Put(sp)
			sp.clear()
			sp.markGuide(d, subsets[s.Name], s)
			furniture, hidden = f.furnish(s, sp, d.Names)
		}
		views[i] = []paper.View{
			{Drawing: d, Area: s.Area, At: s.At, Scale: s.Scale, Marks: without(subsets[s.Name], d, s, hidden)},
			paper.PageView(furniture),
		}
	})
	pages := make([]paper.Page, t.Leaves())
	for i, s := range t.Sheets {
		pages[s.Leaf].Size = s.Page
		pages[s.Leaf].Views = append(pages[s.Leaf].Views, views[i]...)
	}
	return t.Sheets, pages
}

// without returns the subset less the text and the small fills that lie in what is hidden, in
// the page's frame.
func without(u *paper.Subset, d *paper.Drawing, s paper.Sheet, hidden []geometry.Rect) *paper.Subset {
	if len(hidden) == 0 {
		return u
	}
	in := func(b geometry.Rect) bool {
		b = rectOnPage(s, b)
		return slices.ContainsFunc(hidden, b.Overlaps)
	}
	left := paper.Subset{Strokes: u.Strokes}
	for _, i := range u.Labels {
		if !in(d.Labels[i].Extent()) {
			left.Labels = append(left.Labels, i)
		}
	}
	for _, i := range u.Fills {
		if b := rectOnPage(s, d.Fills[i].Bounds()); max(b.W(), b.H()) > smallFill || !in(d.Fills[i].Bounds()) {
			left.Fills = append(left.Fills, i)
		}
	}
	return &left
}

// smallFill is the largest fill, a dot or an arrow's head, that no sign may stand on; a
// larger one is a tint.
const smallFill = 25 * geometry.Millimetre

// smallSign is the largest a line may be that is a sign, an arrow or a tick, and not the edge of
// something: no white ground may hide it.
const smallSign = 30 * geometry.Millimetre

func closed(p geometry.Path) bool {
	return slices.ContainsFunc(p, func(piece geometry.Piece) bool { return piece.Closed })
}

// markGuide marks what the sheet shows of d.
func (s *space) markGuide(d *paper.Drawing, subset *paper.Subset, sheet paper.Sheet) {
	for _, i := range subset.Strokes {
		path := d.Strokes[i].Path()
		if b := rectOnPage(sheet, d.Strokes[i].Bounds()); max(b.W(), b.H()) <= smallSign && !closed(path) {
			s.markText(b)
		} else {
			s.markPath(path, sheet.OnPage)
		}
	}
	for _, i := range subset.Fills {
		fill := d.Fills[i]
		if b := rectOnPage(sheet, fill.Bounds()); max(b.W(), b.H()) <= smallFill {
			s.markText(b)
		} else {
			s.markPath(fill.Path(), sheet.OnPage)
		}
	}
	for _, i := range subset.Labels {
		s.markText(rectOnPage(sheet, d.Labels[i].GroundBox()))
	}
}

// furnisher makes the furniture of the sheets of a tiling, of several at once.
type furnisher struct {
	tiling paper.Tiling
	panels panelMaker
	joined map[string]*joined // by the sheet's name
}

// joined is where the crosses stand on the joins that a sheet chooses for itself and the
// neighbour there, in the layout's frame.
type joined struct {
	chosen        chan struct{} // closed when they are
	right, bottom []geometry.Point
}

func newFurnisher(t paper.Tiling, panel Panel) furnisher {
	f := furnisher{t, newPanelMaker(panel, t.Sheets), map[string]*joined{}}
	for _, s := range t.Sheets {
		f.joined[s.Name] = &joined{chosen: make(chan struct{})}
	}
	return f
}

// crosses returns where the crosses stand on the sheet's join to a neighbour. On the left and
// at the top it waits for the neighbour to choose: sheets are begun by rows, from the left.
func (f furnisher) crosses(s paper.Sheet, e paper.Side, neighbour string, sp *space) []geometry.Point {
	own, other := f.joined[s.Name], f.joined[neighbour]
	switch e {
	case paper.LeftSide:
		<-other.chosen
		return other.right
	case paper.TopSide:
		<-other.chosen
		return other.bottom
	case paper.RightSide:
		own.right = crossSpots(s, e, f.tiling.Overlap, sp)
		return own.right
	}
	own.bottom = crossSpots(s, e, f.tiling.Overlap, sp)
	return own.bottom
}

// furnish returns the furniture of one sheet, and what of the page it hides; sp holds what the
// sheet shows of the guide.
func (f furnisher) furnish(s paper.Sheet, sp *space, names []paper.Name) (*paper.Drawing, []geometry.Rect) {
	b := board{space: sp, drawing: paper.Drawing{Bounds: s.Usable()}}
	f.drawJoins(&b, s)
	b.putNames(names, s)
	usable, kept := s.Usable(), rectOnPage(s, s.Kept)
	// Furniture stands a little off the joins and the edge of what is printed.
	calm := kept.Grow(-2 * breath)
	if calm.Empty() {
		calm = kept
	}
	whole := f.panels.whole(s)
	placed := b.putFirst(whole, wish{calm, calm.Min}, wish{usable, usable.Min})
	for _, e := range []paper.Side{paper.LeftSide, paper.TopSide, paper.RightSide, paper.BottomSide} {
		if n := neighbour(s, e); n != "" {
			b.putNeighbour(n, e, s)
		}
	}
	b.putBarsOf(barsAcross, usable.W(), s.Scale.Across, f.panels.Inches, calm)
	b.putBarsOf(barsDown, usable.H(), s.Scale.Down, f.panels.Inches, calm)
	if !placed {
		b.putParts(drawn(whole), f.panels.parts(s))
	}
	b.putSelvedge(f.panels.Mark, s)
	return &b.drawing, b.hidden
}

// drawJoins draws the lines and crosses of the sheet's joins and marks them on the space.
func (f furnisher) drawJoins(b *board, s paper.Sheet) {
	arm := crossReach(f.tiling.Overlap)
	var joins []paper.Side
	for _, e := range []paper.Side{paper.LeftSide, paper.TopSide, paper.RightSide, paper.BottomSide} {
		neighbour := neighbour(s, e)
		if neighbour == "" {
			continue
		}
		joins = append(joins, e)
		for _, p := range f.crosses(s, e, neighbour, b.space) {
			path := cross(p, arm).Map(s.OnPage)
			b.drawing.Stroke(path, crossPen)
			b.space.signs = append(b.space.signs, path.Bounds())
		}
	}
	close(f.joined[s.Name].chosen)
	for _, e := range joins {
		from, to := joinLine(s, e)
		pen := coverPen
		if cut(e) {
			pen = trimPen
		}
		b.drawing.Stroke(geometry.Line(s.OnPage(from), s.OnPage(to)), pen)
		b.space.markLine(s.OnPage(from), s.OnPage(to))
		if lip := lip(s, e); !lip.Empty() {
			b.lips = append(b.lips, lip)
		}
	}
}

// putParts puts a panel for which there is no free place somewhere, whatever else there is: in
// parts where there is room, or on what joins cut away or cover; or else whole across lines.
func (b *board) putParts(whole []paper.Drawing, parts [][]paper.Drawing) {
	usable := b.space.area
	lay := func(part []paper.Drawing, near geometry.Point) bool {
		return b.putFree(part, wish{usable, near}) || b.putOnLip(part)
	}
	if b.putAll(parts, lay) || b.putAcross(whole, usable, true) {
		return
	}
	for i, part := range parts {
		if !lay(part, usable.Min) && !b.putAcross(part, usable, true) && i == 0 {
			b.set(part[len(part)-1], usable.Min)
		}
	}
}

// putBarsOf puts the check bars of one way down; short ones for want of room for those that are
// usual.
func (b *board) putBarsOf(draw func([]bar, barStyle) paper.Drawing, room geometry.Length, scale float64, inches bool, calm geometry.Rect) {
	all := bars(room, scale, inches)
	if b.putBars(draw, all, calm) {
		return
	}
	short := bars(0, scale, inches)
	for i := range all {
		if !b.putBars(draw, all[i:i+1], calm) {
			b.putBars(draw, short[i:i+1], calm)
		}
	}
}

// putBars puts check bars near the lower right corner, on a lip, or across lines.
func (b *board) putBars(draw func([]bar, barStyle) paper.Drawing, all []bar, calm geometry.Rect) bool {
	sign, usable := draw(all, usualBar), b.space.area
	slim := []paper.Drawing{draw(all, slimBar), draw(all, leastBar)}
	return b.putFirst([]lazySign{func() paper.Drawing { return sign }}, wish{calm, calm.Max}, wish{usable, usable.Max}) ||
		b.putFree(slim, wish{usable, usable.Max}) || b.putOnLip(slim) || b.putAcross([]paper.Drawing{sign}, usable, false)
}

// putSelvedge puts the guide's squares along an outer edge of the sheet, where there is room: the
// right one if it can be.
func (b *board) putSelvedge(mark string, s paper.Sheet) {
	if mark == "" {
		return
	}
	u := s.Usable()
	for _, e := range []paper.Side{paper.RightSide, paper.LeftSide, paper.TopSide, paper.BottomSide} {
		signs := []paper.Drawing{selvedge(mark, e == paper.LeftSide || e == paper.RightSide, 1)}
		along := edgeBand(u, e, 0, 1, min(signs[0].Bounds.W(), signs[0].Bounds.H())+3*breath)
		if e == paper.LeftSide || e == paper.RightSide {
			along.near.Y = u.Min.Y
		} else {
			along.near.X = u.Max.X
		}
		if b.putGround(signs, along) || b.putFree(signs, along) {
			return
		}
	}
}

// putNeighbour puts a neighbour's name near the middle of the edge it joins, and in both halves
// of an edge to be cut the word for that.
func (b *board) putNeighbour(name string, e paper.Side, s paper.Sheet) {
	const depth = 25 * geometry.Millimetre
	u := s.Usable()
	signs := neighbourSigns(name, e)
	wanted, edge := edgeBand(u, e, 1./3, 2./3, depth), edgeBand(u, e, 0, 1, depth)
	if !b.putFree(signs, wanted) && !b.putGround(signs, wanted) && !b.putFree(signs, edge) && !b.putGround(signs, edge) &&
		!b.putAcross(signs, wanted.within, true) {
		b.putAcross(signs, edge.within, true)
	}
	if cut(e) {
		lip := lip(s, e)
		for _, half := range [][2]float64{{0.05, 0.45}, {0.55, 0.95}} {
			b.putGround(cutSigns(), edgeBand(lip, e, half[0], half[1], depth))
		}
	}
}

// edgeBand returns the band along one side of r, so deep, from a share of its length to
// another, its nearest point the middle of that side.
func edgeBand(r geometry.Rect, e paper.Side, from, to float64, depth geometry.Length) wish {
	along := func(a, b geometry.Length, f float64) geometry.Length { return a + (b-a)*geometry.Length(f) }
	w := r
	if e == paper.LeftSide || e == paper.RightSide {
		w.Min.Y, w.Max.Y = along(r.Min.Y, r.Max.Y, from), along(r.Min.Y, r.Max.Y, to)
	} else {
		w.Min.X, w.Max.X = along(r.Min.X, r.Max.X, from), along(r.Min.X, r.Max.X, to)
	}
	near := w.Centre()
	switch e {
	case paper.LeftSide:
		w.Max.X, near.X = min(w.Max.X, w.Min.X+depth), w.Min.X
	case paper.RightSide:
		w.Min.X, near.X = max(w.Min.X, w.Max.X-depth), w.Max.X
	case paper.TopSide:
		w.Max.Y, near.Y = min(w.Max.Y, w.Min.Y+depth), w.Min.Y
	case paper.BottomSide:
		w.Min.Y, near.Y = max(w.Min.Y, w.Max.Y-depth), w.Max.Y
	}
	return wish{w, near}
}
