package paper

import (
	"fmt"
	"sync"

	"underlay/geometry"
	"underlay/paper/internal/cores"
)

// Strip is what every sheet of a guide says about itself, besides its name.
type Strip struct {
	Lines  []string // short: they share one row or stand under each other
	Mark   string   // tells loose sheets of one guide from those of another; "": none
	Inches bool     // a check bar of 2 in beside the one of 50 mm
}

// nameInk is the grey of a sheet's name: it is large, and no line of the guide.
var nameInk = Grey(150)

// Sheets returns a page for each sheet of the tiling that shows something of d, and those
// sheets, their neighbours' names set accordingly. Each page has two views: the guide, and in
// the page's own frame its furniture: the sheet's name and the strip's mark, the strip's lines
// and "sheet A1 of 6", check bars both ways, and at each join the line to cut or to lay the
// cut edge on, crosses at the same points of the layout on both sheets, and the neighbour's
// name.
//
// All of it keeps inside the margin. Names and strip stand where d leaves room; failing that
// on a white ground in what a join cuts away or covers; failing that across as few lines as
// can be. Text never stands on text: where it would have to, all but the name is left out.
func Sheets(d *Drawing, t Tiling, strip Strip) ([]Sheet, []Page) {
	if len(t.Sheets) == 0 {
		return nil, nil
	}
	areas := make([]geometry.Rect, len(t.Sheets))
	for i, s := range t.Sheets {
		areas[i] = s.Area
	}
	d, split := settle(d, areas)
	subsets := map[string]*Subset{}
	for i, subset := range split {
		subsets[t.Sheets[i].Name] = subset
	}
	t = t.Without(func(s Sheet) bool { return !s.shows(d, subsets[s.Name]) })
	f := newFurnisher(t, strip)
	// All pages of a tiling are alike, so one raster serves one after the other.
	spaces := sync.Pool{New: func() any { return newSpace(t.Sheets[0].Usable()) }}
	pages := make([]Page, len(t.Sheets))
	cores.Each(len(pages), func(i int) {
		s := t.Sheets[i]
		sp := spaces.Get().(*space)
		defer spaces.Put(sp)
		sp.clear()
		sp.markGuide(d, subsets[s.Name], s)
		furniture := f.furnish(s, sp, d.Names)
		pages[i] = Page{Size: s.Page, Views: []View{
			{Drawing: d, Area: s.Area, At: s.At, Scale: s.Scale, Marks: subsets[s.Name]},
			pageView(furniture),
		}}
	})
	return t.Sheets, pages
}

// pageView shows a drawing made in the page's own frame, in its place.
func pageView(d *Drawing) View {
	return View{Drawing: d, Area: d.Bounds, At: d.Bounds.Min}
}

// smallFill is the largest fill, a dot or an arrow's head, that no sign may stand on; a
// larger one is a tint.
const smallFill = 25 * geometry.Millimetre

// markGuide marks what the sheet shows of d.
func (s *space) markGuide(d *Drawing, subset *Subset, sheet Sheet) {
	for _, i := range subset.Strokes {
		s.markPath(d.Strokes[i].Path(), sheet.OnPage)
	}
	for _, i := range subset.Fills {
		fill := d.Fills[i]
		if b := sheet.rectOnPage(fill.Bounds()); max(b.W(), b.H()) <= smallFill {
			s.markText(b)
		} else {
			s.markPath(fill.Path(), sheet.OnPage)
		}
	}
	for _, i := range subset.Labels {
		s.markText(sheet.rectOnPage(d.Labels[i].Extent()))
	}
}

// furnisher makes the furniture of the sheets of a tiling, of several at once.
type furnisher struct {
	tiling Tiling
	strip  Strip
	joined map[string]*joined // by the sheet's name
}

// joined is where the crosses stand on the joins that a sheet chooses for itself and the
// neighbour there, in the layout's frame.
type joined struct {
	chosen        chan struct{} // closed when they are
	right, bottom []geometry.Point
}

func newFurnisher(t Tiling, strip Strip) furnisher {
	f := furnisher{t, strip, map[string]*joined{}}
	for _, s := range t.Sheets {
		f.joined[s.Name] = &joined{chosen: make(chan struct{})}
	}
	return f
}

// crosses returns where the crosses stand on the sheet's join to a neighbour. On the left and
// at the top it waits for the neighbour to choose: sheets are begun by rows, from the left.
func (f furnisher) crosses(s Sheet, e side, neighbour string, sp *space) []geometry.Point {
	own, other := f.joined[s.Name], f.joined[neighbour]
	switch e {
	case leftSide:
		<-other.chosen
		return other.right
	case topSide:
		<-other.chosen
		return other.bottom
	case rightSide:
		own.right = s.crossSpots(e, f.tiling.Overlap, sp)
		return own.right
	}
	own.bottom = s.crossSpots(e, f.tiling.Overlap, sp)
	return own.bottom
}

// furnish returns the furniture of one sheet; sp holds what it shows of the guide.
func (f furnisher) furnish(s Sheet, sp *space, names []Name) *Drawing {
	b := board{space: sp, drawing: Drawing{Bounds: s.Usable()}}
	f.drawJoins(&b, s)
	b.putNames(names, s)
	usable, kept := s.Usable(), s.rectOnPage(s.Kept)
	// Furniture stands a little off the joins and the edge of what is printed.
	calm := kept.Grow(-2 * breath)
	if calm.Empty() {
		calm = kept
	}
	b.putName(s.Name, f.strip.Mark, calm)
	for _, e := range []side{leftSide, topSide, rightSide, bottomSide} {
		if n := s.neighbour(e); n != "" {
			b.putNeighbour(n, e, s)
		}
	}
	b.putBars(barsAcross, bars(usable.W(), s.Scale.Across, f.strip.Inches), calm)
	b.putBars(barsDown, bars(usable.H(), s.Scale.Down, f.strip.Inches), calm)

	lines := append(append([]string(nil), f.strip.Lines...), fmt.Sprintf("sheet %s of %d", s.Name, len(f.tiling.Sheets)))
	foot := geometry.Pt(calm.Min.X, calm.Max.Y)
	b.putStrip(stripSigns(lines), wish{calm, foot})
	return &b.drawing
}

// drawJoins draws the lines and crosses of the sheet's joins and marks them on the space.
func (f furnisher) drawJoins(b *board, s Sheet) {
	arm := crossReach(f.tiling.Overlap)
	var joins []side
	for _, e := range []side{leftSide, topSide, rightSide, bottomSide} {
		neighbour := s.neighbour(e)
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
		from, to := s.joinLine(e)
		pen := coverPen
		if e.cut() {
			pen = trimPen
		}
		b.drawing.Stroke(geometry.Line(s.OnPage(from), s.OnPage(to)), pen)
		b.space.markLine(s.OnPage(from), s.OnPage(to))
		if lip := s.lip(e); !lip.Empty() {
			b.lips = append(b.lips, lip)
		}
	}
}

// putName puts the sheet's name somewhere, whatever else there is.
func (b *board) putName(name, guide string, calm geometry.Rect) {
	large := nameSigns(name, guide, nameHeights, nameInk)
	// Across lines the letters are black, so as not to break a line where they cross it.
	small := nameSigns(name, guide, tightHeights, Ink{})
	usable := b.space.area
	if !b.putFirst(large, wish{calm, calm.Min}, wish{usable, usable.Min}) &&
		!b.putOnLip(large) && !b.putAcross(small, usable) {
		b.set(small[len(small)-1], usable.Min)
	}
}

// putBars puts check bars near the lower right corner, one alone where there is no place for
// all together. They may cross lines.
func (b *board) putBars(draw func([]bar) Drawing, all []bar, calm geometry.Rect) {
	signs, usable := []Drawing{draw(all)}, b.space.area
	if b.putFirst(signs, wish{calm, calm.Max}, wish{usable, usable.Max}) || b.putAcross(signs, usable) || len(all) == 1 {
		return
	}
	for i := range all {
		b.putBars(draw, all[i:i+1], calm)
	}
}

// stripBand is how far up the foot of a sheet the strip is sought before it is broken into
// more rows, or sought elsewhere.
const stripBand = 30 * geometry.Millimetre

// putStrip puts the title strip at the foot of the sheet, or elsewhere; the letters are small
// only where large ones fit nowhere.
func (b *board) putStrip(byHeight [][]Drawing, w wish) {
	band := w
	band.within.Min.Y = max(w.within.Min.Y, w.within.Max.Y-stripBand)
	for _, signs := range byHeight {
		if b.putFirst(signs, band, w) {
			return
		}
	}
	for _, signs := range byHeight {
		if b.putOnLip(signs) {
			return
		}
	}
	b.putAcross(byHeight[len(byHeight)-1], b.space.area)
}

// putNeighbour puts a neighbour's name near the middle of the edge it joins, and in both halves
// of an edge to be cut the word for that.
func (b *board) putNeighbour(name string, e side, s Sheet) {
	const depth = 25 * geometry.Millimetre
	u := s.Usable()
	signs := neighbourSigns(name, e)
	wanted, edge := edgeBand(u, e, 1./3, 2./3, depth), edgeBand(u, e, 0, 1, depth)
	if !b.putFree(signs, wanted) && !b.putGround(signs, wanted) && !b.putAcross(signs, wanted.within) &&
		!b.putFree(signs, edge) {
		b.putAcross(signs, edge.within)
	}
	if e.cut() {
		lip := s.lip(e)
		for _, half := range [][2]float64{{0.05, 0.45}, {0.55, 0.95}} {
			b.putGround(cutSigns(), edgeBand(lip, e, half[0], half[1], depth))
		}
	}
}

// edgeBand returns the band along one side of r, so deep, from a share of its length to
// another, its nearest point the middle of that side.
func edgeBand(r geometry.Rect, e side, from, to float64, depth geometry.Length) wish {
	along := func(a, b geometry.Length, f float64) geometry.Length { return a + (b-a)*geometry.Length(f) }
	w := r
	if e == leftSide || e == rightSide {
		w.Min.Y, w.Max.Y = along(r.Min.Y, r.Max.Y, from), along(r.Min.Y, r.Max.Y, to)
	} else {
		w.Min.X, w.Max.X = along(r.Min.X, r.Max.X, from), along(r.Min.X, r.Max.X, to)
	}
	near := w.Centre()
	switch e {
	case leftSide:
		w.Max.X, near.X = min(w.Max.X, w.Min.X+depth), w.Min.X
	case rightSide:
		w.Min.X, near.X = max(w.Min.X, w.Max.X-depth), w.Max.X
	case topSide:
		w.Max.Y, near.Y = min(w.Max.Y, w.Min.Y+depth), w.Min.Y
	case bottomSide:
		w.Min.Y, near.Y = max(w.Min.Y, w.Max.Y-depth), w.Max.Y
	}
	return wish{w, near}
}
