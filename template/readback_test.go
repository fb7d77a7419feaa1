package template

import (
	"bytes"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper/pdf"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

// off is how far a mark may be from its place.
const off = 0.01 * geometry.Millimetre

// papers is a job drawn, and its PDF as pdfium reads it.
type papers struct {
	job    *job.Job
	plan   *plan.Plan
	doc    pdf.Document
	places []SheetPlace
	pdf    []byte
	read   *pdfread.Doc
	pages  []pageRead
	guides []guideRead
}

// pageRead is what stands on a page, in millimetres from its top left corner.
type pageRead struct {
	size  geometry.Size
	paths []pdfread.Path
	texts []pdfread.Text
}

// guideRead is the guide of one face.
type guideRead struct {
	face   plan.FacePlan
	cloth  geometry.Rect
	sheets []*sheetRead
}

// sheetRead is a sheet of a guide with what stands on it in the item's frame.
type sheetRead struct {
	SheetPlace
	page  *pageRead
	lines *lineIndex
	// closed are the closed pieces that are stroked, for each the path it is part of.
	closed []closedPiece
}

type closedPiece struct {
	corners []geometry.Point
	of      *pdfread.Path
}

// layout returns which point of the item's frame lies at a point of the page: the page shows
// (X, Y) at at + (X - area.x, Y - area.y) * scale.
func (s SheetPlace) layout(p geometry.Point) geometry.Point {
	at := s.Sheet.At
	return geometry.Pt(
		s.Sheet.Area.Min.X+(p.X-at.X)/geometry.Length(s.Sheet.Scale.Across),
		s.Sheet.Area.Min.Y+(p.Y-at.Y)/geometry.Length(s.Sheet.Scale.Down))
}

func (s SheetPlace) layoutRect(r geometry.Rect) geometry.Rect {
	return geometry.Rect{Min: s.layout(r.Min), Max: s.layout(r.Max)}
}

// pdfOf plans and draws a job, with all parts there are.
func pdfOf(job *job.Job) (*papers, error) {
	p := &papers{job: job}
	var err error
	if p.plan, err = plan.New(job); err != nil {
		return nil, err
	}
	if p.doc, p.places, err = Document(p.plan, Parts()); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := pdf.Write(&out, p.doc); err != nil {
		return nil, err
	}
	p.pdf = out.Bytes()
	return p, nil
}

// readPapers draws a job and reads its PDF back.
func readPapers(t *testing.T, job *job.Job) *papers {
	t.Helper()
	p, err := pdfOf(job)
	if err != nil {
		t.Fatal(err)
	}
	p.read = pdfread.Open(t, p.pdf)
	for _, page := range p.read.Pages() {
		p.pages = append(p.pages, pageRead{page.SizeMM(), page.Paths(), page.Texts()})
	}
	// The sheets of a guide are on pages that follow each other, the guides of an item in the
	// order of its faces.
	next := 0
	for _, ip := range p.plan.Items {
		for _, face := range ip.Faces() {
			g := guideRead{face: face, cloth: ip.Area.Cloth}
			for ; next < len(p.places); next++ {
				place := p.places[next]
				if place.Part != "guide" {
					continue
				}
				if n := len(g.sheets); place.Item != ip.Item.Name || n > 0 && place.Page != g.sheets[n-1].Page+1 {
					break
				}
				g.sheets = append(g.sheets, readSheet(place, &p.pages[place.Page-1]))
			}
			if len(g.sheets) == 0 {
				t.Fatalf("%s has no guide", face.Label())
			}
			p.guides = append(p.guides, g)
		}
	}
	for _, place := range p.places[next:] {
		if place.Part == "guide" {
			t.Fatalf("page %d is a guide's, but of no face", place.Page)
		}
	}
	return p
}

func readSheet(place SheetPlace, page *pageRead) *sheetRead {
	s := &sheetRead{SheetPlace: place, page: page, lines: newLineIndex()}
	for i := range page.paths {
		path := &page.paths[i]
		if !path.Stroked {
			continue
		}
		for _, piece := range path.Lines.Map(place.layout) {
			corners := corners(piece)
			for i, b := range corners[1:] {
				s.lines.add(line{corners[i], b, path})
			}
			if piece.Closed {
				s.lines.add(line{corners[len(corners)-1], corners[0], path})
				s.closed = append(s.closed, closedPiece{corners, path})
			}
		}
	}
	return s
}

// corners returns the points of straight steps along a piece; of a curve enough of them that
// the steps leave it by much less than off.
func corners(p geometry.Piece) []geometry.Point {
	points := []geometry.Point{p.Start}
	for _, s := range p.Steps {
		a := points[len(points)-1]
		n := 1.0
		if s.Curved { // an eighth of a circle at most, so the bend is a tenth of the chord
			n = math.Ceil(math.Sqrt(50 * float64(s.To.Distance(a))))
		}
		for i := 1.0; i < n; i++ {
			t := i / n
			u := 1 - t
			points = append(points, a.Mul(u*u*u).Add(s.C1.Mul(3*u*u*t)).Add(s.C2.Mul(3*u*t*t)).Add(s.To.Mul(t*t*t)))
		}
		points = append(points, s.To)
	}
	// pdfium ends a closed piece where it began.
	if n := len(points); p.Closed && n > 2 && points[n-1].Distance(points[0]) <= off {
		points = points[:n-1]
	}
	return points
}

// line is a straight piece of a drawn line, and the path it belongs to.
type line struct {
	a, b geometry.Point
	of   *pdfread.Path
}

func (l line) distance(p geometry.Point) geometry.Length {
	d, q := l.b.Sub(l.a), p.Sub(l.a)
	n := float64(d.X*d.X + d.Y*d.Y)
	t := 0.0
	if n > 0 {
		t = math.Max(0, math.Min(1, float64(q.X*d.X+q.Y*d.Y)/n))
	}
	return q.Sub(d.Mul(t)).Norm()
}

// lineIndex finds lines by where they run.
type lineIndex struct {
	all   []line
	cells map[[2]int][]int
}

func newLineIndex() *lineIndex { return &lineIndex{cells: map[[2]int][]int{}} }

const indexCell = 10 * geometry.Millimetre

func cellOf(l geometry.Length) int { return int(math.Floor(float64(l / indexCell))) }

func (x *lineIndex) add(l line) {
	x.all = append(x.all, l)
	b := geometry.Rect{Min: l.a, Max: l.a}.Union(geometry.Rect{Min: l.b, Max: l.b}).Grow(off)
	for i := cellOf(b.Min.X); i <= cellOf(b.Max.X); i++ {
		for j := cellOf(b.Min.Y); j <= cellOf(b.Max.Y); j++ {
			x.cells[[2]int{i, j}] = append(x.cells[[2]int{i, j}], len(x.all)-1)
		}
	}
}

// on tells whether a drawn line runs through p.
func (x *lineIndex) on(p geometry.Point) bool {
	for _, i := range x.cells[[2]int{cellOf(p.X), cellOf(p.Y)}] {
		if x.all[i].distance(p) <= off {
			return true
		}
	}
	return false
}
