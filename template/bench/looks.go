package bench

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/look"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// mostALook is how many ways of colouring are shown on a page.
const mostALook = 6

// Looks draws the item as it will look, a page or more for each face that differs: in each of its
// ways of colouring, side by side; a shade as it stands and laid flat.
func Looks(p *plan.Plan, ip *plan.ItemPlan) []guide.Papers {
	var all []guide.Papers
	for _, face := range ip.Faces() {
		papers := guide.Papers{Name: face.Titled("look"), Mark: guide.Mark(p.Job, face)}
		for some := range slices.Chunk(look.Colourings(face), mostALook) {
			papers.Pages = append(papers.Pages, newLookPage(p.Job, face, some))
		}
		all = append(all, papers)
	}
	return all
}

// lookPage is a page of looks under way. Heading, room and writing are a card's.
type lookPage struct {
	card
	shown      plan.FacePlan // of several pieces the whole cloth
	colourings []job.Colouring
}

func newLookPage(j *job.Job, face plan.FacePlan, colourings []job.Colouring) paper.Page {
	read := newReading(j)
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(read.size.W, read.size.H)}}
	p := &lookPage{card: card{bench: bench{job: j, face: face}, page: d, box: read.box}, shown: face, colourings: colourings}
	p.out = paper.Page{Size: read.size, Views: []paper.View{{Drawing: d, Area: d.Bounds}}}
	if face.Item.Item.Pieces.Several() {
		p.shown = face.Laid()
	}
	p.heading()
	l := p.arranged(p.box.H() - p.notesHeight())
	for i, c := range colourings {
		p.draw(c, l, geometry.Pt(geometry.Length(i%l.columns)*(l.cell.W+cardGap), geometry.Length(i/l.columns)*(l.cell.H+cardGap)).Add(p.box.Min))
	}
	p.box.Min.Y = p.box.Max.Y - p.notesHeight()
	for _, n := range p.notes(l.ratios) {
		p.box.Min.Y += p.write(p.box, paper.Wrap(n, noteHeight, false, p.box.W()), noteHeight, false, quiet) + noteHeight/2
	}
	return p.out
}

// sizes are those of the pictures of one way of colouring, one above the other.
func (p *lookPage) sizes() []geometry.Size {
	flat := p.shown.Item.Area.Cloth.Size()
	if p.shown.Item.Item.Shape.Shade() {
		return []geometry.Size{look.StandingSize(p.shown.Item), flat}
	}
	return []geometry.Size{flat}
}

// arrangement is how the ways of colouring stand on a page: so many side by side, each in a cell of
// its own, its pictures drawn 1 : ratio, with what is said of it below the pictures or beside them.
type arrangement struct {
	columns int
	cell    geometry.Size
	ratios  []float64
	beside  bool
}

// besideWidth is how wide what is said stands beside pictures.
const besideWidth = 48 * geometry.Millimetre

// arranged finds the arrangement in which pictures come out largest.
func (p *lookPage) arranged(height geometry.Length) arrangement {
	var best arrangement
	n := len(p.colourings)
	for columns := 1; columns <= n; columns++ {
		rows := geometry.Length((n + columns - 1) / columns)
		cell := geometry.Size{
			W: (p.box.W() - cardGap*geometry.Length(columns-1)) / geometry.Length(columns),
			H: (height - cardGap*(rows-1)) / rows,
		}
		for _, beside := range []bool{false, true} {
			room := cell
			said := p.mostSaid(cell.W, beside)
			if beside {
				room.W -= besideWidth + cardGap
			} else {
				room.H -= said
			}
			ratios := p.ratios(room)
			if best.columns == 0 || slices.Compare(ratios, best.ratios) < 0 {
				best = arrangement{columns, cell, ratios, beside}
			}
		}
	}
	best.cell.H = p.high(best.ratios)
	if !best.beside {
		best.cell.H += p.mostSaid(best.cell.W, false)
	}
	return best
}

// mostSaid is the most height that what is said of a way of colouring takes.
func (p *lookPage) mostSaid(width geometry.Length, beside bool) geometry.Length {
	if beside {
		width = besideWidth
	}
	var most geometry.Length
	for _, c := range p.colourings {
		most = max(most, p.said(nil, c, geometry.RectAt(geometry.Point{}, geometry.Size{W: width})))
	}
	return most
}

// ratios are the least of those in use at which the pictures of a way of colouring go into some room:
// what is laid flat into half of it where it also stands, and that into what is left.
func (p *lookPage) ratios(room geometry.Size) []float64 {
	sizes := p.sizes()
	ratios := make([]float64, len(sizes))
	left := room.H - p.high(nil)
	for i := len(sizes) - 1; i >= 0; i-- {
		high := left / geometry.Length(i+1)
		ratios[i] = leastRatio(sizes[i], geometry.Size{W: room.W - 2*lookEdge, H: high})
		left -= sizes[i].H / geometry.Length(ratios[i])
	}
	return ratios
}

// leastRatio is the least ratio in use at which a size goes into a room.
func leastRatio(s, room geometry.Size) float64 {
	const most = 1e5
	for decade := 1.0; ; decade *= 10 {
		for _, n := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8} {
			k := geometry.Length(1 / (n * decade))
			if s.W*k <= room.W && s.H*k <= room.H || n*decade >= most {
				return n * decade
			}
		}
	}
}

// lookEdge is kept free round a picture, for its edge.
const lookEdge = 1 * geometry.Millimetre

// high is the height of all pictures of a way of colouring with their captions; of what goes with
// them, where no ratios are given.
func (p *lookPage) high(ratios []float64) geometry.Length {
	sizes := p.sizes()
	h := cardGap * geometry.Length(len(sizes)-1)
	for i, s := range sizes {
		h += 2 * lookEdge
		if ratios != nil {
			h += s.H / geometry.Length(ratios[i])
		}
		if len(sizes) > 1 {
			h += captionRow
		}
	}
	return h
}

// draw draws one way of colouring into its cell.
func (p *lookPage) draw(c job.Colouring, l arrangement, at geometry.Point) {
	cell := geometry.RectAt(at, l.cell)
	sizes := p.sizes()
	wide := geometry.Length(0)
	for i, s := range sizes {
		if len(sizes) > 1 {
			caption := [...]string{"As it stands, from the front", "Laid flat"}[i] + ", " + ratioWords(l.ratios[i])
			p.write(geometry.Rect{Min: at, Max: cell.Max}, []string{caption}, noteHeight, true, paper.Ink{})
			at.Y += captionRow
		}
		k := geometry.Length(1 / l.ratios[i])
		box := geometry.RectAt(at, geometry.Size{W: s.W*k + 2*lookEdge, H: s.H*k + 2*lookEdge})
		if i == 0 && len(sizes) > 1 {
			p.out.Views = append(p.out.Views, look.Standing(p.job, p.shown, c, box))
		} else {
			p.out.Views = append(p.out.Views, look.Flat(p.job, p.shown, c, box))
		}
		wide = max(wide, box.W())
		at.Y = box.Max.Y
		if i < len(sizes)-1 {
			at.Y += cardGap
		}
	}
	text := geometry.Rect{Min: geometry.Pt(cell.Min.X, at.Y), Max: cell.Max}
	if l.beside {
		text = geometry.RectAt(geometry.Pt(cell.Min.X+wide+cardGap, cell.Min.Y), geometry.Size{W: besideWidth, H: cell.H()})
	}
	p.said(p.page, c, text)
}

// Measures of what is said.
const (
	swatchSide = 5 * geometry.Millimetre
	swatchRow  = 7 * geometry.Millimetre
	noteHeight = 2.5 * geometry.Millimetre
	nameHeight = 3.5 * geometry.Millimetre
)

// said writes what a way of colouring is called, of how many pieces it is, and its paints, each a
// swatch with its name, at the top of a box; it returns how high that is. A nil drawing: only how high.
func (p *lookPage) said(d *paper.Drawing, c job.Colouring, box geometry.Rect) geometry.Length {
	y := box.Min.Y + 2
	if len(p.face.Item.Asked().Colourways) > 0 {
		name := words.UpperFirst(say.Colouring(c)) + ": " + words.Counted(c.Pieces, "piece", "pieces")
		for _, line := range paper.Wrap(name, nameHeight, true, box.W()) {
			if d != nil {
				d.Write(paper.Label{Text: line, At: geometry.Pt(box.Min.X, y+nameHeight), Anchor: paper.AnchorBottomLeft, Height: nameHeight, Bold: true})
			}
			y += 1.75 * nameHeight
		}
	}
	x := box.Min.X
	row := swatchRow // how high the row of swatches is
	for _, s := range look.Swatches(p.job, p.shown, c) {
		lines := paper.Wrap(words.Shown(s.Name), noteHeight, false, box.W()-swatchSide-2)
		wide, high := swatchSide+2, swatchRow+1.75*noteHeight*geometry.Length(len(lines)-1)
		for _, line := range lines {
			wide = max(wide, swatchSide+2+paper.TextWidth(line, noteHeight, false))
		}
		if x > box.Min.X && x+wide > box.Max.X {
			x, y, row = box.Min.X, y+row, swatchRow
		}
		row = max(row, high)
		if d != nil {
			s.Draw(d, geometry.RectAt(geometry.Pt(x, y), geometry.Size{W: swatchSide, H: swatchSide}))
			for i, line := range lines {
				d.Write(paper.Label{Text: line, At: geometry.Pt(x+swatchSide+2, y+(swatchSide+noteHeight)/2+1.75*noteHeight*geometry.Length(i)), Anchor: paper.AnchorBottomLeft, Height: noteHeight})
			}
		}
		x += wide + cardGap
	}
	return y + row - box.Min.Y
}
