package pdfread

import (
	"image"
	"image/draw"
	"math"
	"strings"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"
	"github.com/klippa-app/go-pdfium/structs"

	"underlay/geometry"
)

// point is the size of a PDF unit where the page does not set its own (ISO 32000-1, 8.3.2.3).
const point = geometry.Inch / 72

// Page is one page.
type Page struct {
	doc    *Doc
	index  int
	loaded references.FPDF_PAGE // "" until something asks for it
}

func (p *Page) ref() requests.Page {
	d := p.doc
	if p.loaded == "" {
		p.loaded = must[*responses.FPDF_LoadPage](d.t)(
			d.pdf.FPDF_LoadPage(&requests.FPDF_LoadPage{Document: d.doc, Index: p.index})).Page
		d.t.Cleanup(func() { d.pdf.FPDF_ClosePage(&requests.FPDF_ClosePage{Page: p.loaded}) })
	}
	return requests.Page{ByReference: &p.loaded}
}

// unit returns the size of a PDF unit on the page.
func (p *Page) unit() geometry.Length { return point * geometry.Length(p.doc.userUnit(p.index)) }

// SizeMM returns the size of the page.
func (p *Page) SizeMM() geometry.Size {
	p.doc.t.Helper()
	unit := p.unit()
	s := must[*responses.FPDF_GetPageSizeByIndexF](p.doc.t)(
		p.doc.pdf.FPDF_GetPageSizeByIndexF(&requests.FPDF_GetPageSizeByIndexF{Document: p.doc.doc, Index: p.index})).Size
	return geometry.Size{W: unit * geometry.Length(s.Width), H: unit * geometry.Length(s.Height)}
}

// Colour is red, green and blue, 0 to 255.
type Colour struct{ R, G, B uint }

// Path is one path as it is painted.
type Path struct {
	Lines   geometry.Path
	Stroked bool
	Filled  bool
	Width   geometry.Length   // of the pen, where stroked
	Dashes  []geometry.Length // lengths of dashes and gaps in turn; none: a continuous line
	Phase   geometry.Length   // how far into the dashes each piece begins
	Stroke  Colour
	Fill    Colour
}

// Text is one string as it is painted.
type Text struct {
	Text string
	Box  geometry.Rect   // holds its ink
	Size geometry.Length // of the type: one em
	Fill Colour
}

// Paths returns the painted paths in the order of painting, those in forms where they come out.
// Clip paths are not taken into account. A line of no length with round ends is the disc it
// leaves, filled.
func (p *Page) Paths() []Path {
	p.doc.t.Helper()
	var paths []Path
	p.objects(enums.FPDF_PAGEOBJ_PATH, func(o object) { paths = append(paths, o.path()) })
	return paths
}

// Texts returns the painted strings in the order of painting.
func (p *Page) Texts() []Text {
	p.doc.t.Helper()
	d := p.doc
	page := must[*responses.FPDFText_LoadPage](d.t)(
		d.pdf.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: p.ref()})).TextPage
	defer d.pdf.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: page})
	var texts []Text
	p.objects(enums.FPDF_PAGEOBJ_TEXT, func(o object) { texts = append(texts, o.text(page)) })
	return texts
}

// Render returns the page as it is printed at so many dots an inch, black on white.
func (p *Page) Render(dpi int) *image.Gray {
	p.doc.t.Helper()
	out := image.NewGray(image.Rectangle{})
	p.render(dpi, func(rendered image.Image) {
		out = image.NewGray(rendered.Bounds())
		draw.Draw(out, out.Bounds(), rendered, out.Bounds().Min, draw.Src)
	})
	return out
}

// RenderColour returns the page as it is printed at so many dots an inch, in colour on white.
func (p *Page) RenderColour(dpi int) *image.RGBA {
	p.doc.t.Helper()
	out := image.NewRGBA(image.Rectangle{})
	p.render(dpi, func(rendered image.Image) {
		out = image.NewRGBA(rendered.Bounds())
		draw.Draw(out, out.Bounds(), rendered, out.Bounds().Min, draw.Src)
	})
	return out
}

// render hands out the page as an image that is gone afterwards.
func (p *Page) render(dpi int, use func(image.Image)) {
	p.doc.t.Helper()
	r := must[*responses.RenderPageInDPI](p.doc.t)(
		p.doc.pdf.RenderPageInDPI(&requests.RenderPageInDPI{Page: p.ref(), DPI: dpi}))
	defer r.Cleanup()
	use(r.Result.RenderedImage)
}

// object is one of the things painted on a page.
type object struct {
	page   *Page
	ref    references.FPDF_PAGEOBJECT
	matrix structs.FPDF_FS_MATRIX
	unit   geometry.Length // size of a PDF unit
	height geometry.Length // of the page
}

func (p *Page) objects(kind enums.FPDF_PAGEOBJ, visit func(object)) {
	d, page := p.doc, p.ref()
	n := must[*responses.FPDFPage_CountObjects](d.t)(
		d.pdf.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: page})).Count
	whole := object{page: p, matrix: identity, unit: p.unit(), height: p.SizeMM().H}
	for i := range n {
		ref := must[*responses.FPDFPage_GetObject](d.t)(
			d.pdf.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: page, Index: i})).PageObject
		whole.within(ref, kind, visit)
	}
}

// within visits an object that o holds, if it is of the kind, or what it holds itself, if it is
// a form.
func (o object) within(ref references.FPDF_PAGEOBJECT, kind enums.FPDF_PAGEOBJ, visit func(object)) {
	d := o.page.doc
	found := must[*responses.FPDFPageObj_GetType](d.t)(
		d.pdf.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: ref})).Type
	if found != kind && found != enums.FPDF_PAGEOBJ_FORM {
		return
	}
	inner := must[*responses.FPDFPageObj_GetMatrix](d.t)(
		d.pdf.FPDFPageObj_GetMatrix(&requests.FPDFPageObj_GetMatrix{PageObject: ref})).Matrix
	o.ref, o.matrix = ref, times(inner, o.matrix)
	if found == kind {
		visit(o)
		return
	}
	n := must[*responses.FPDFFormObj_CountObjects](d.t)(
		d.pdf.FPDFFormObj_CountObjects(&requests.FPDFFormObj_CountObjects{PageObject: ref})).Count
	for i := range n {
		held := must[*responses.FPDFFormObj_GetObject](d.t)(
			d.pdf.FPDFFormObj_GetObject(&requests.FPDFFormObj_GetObject{PageObject: ref, Index: uint64(i)})).PageObject
		o.within(held, kind, visit)
	}
}

var identity = structs.FPDF_FS_MATRIX{A: 1, D: 1}

// times returns the matrix of one transformation after another (ISO 32000-1, 8.3.4).
func times(first, then structs.FPDF_FS_MATRIX) structs.FPDF_FS_MATRIX {
	return structs.FPDF_FS_MATRIX{
		A: first.A*then.A + first.B*then.C, B: first.A*then.B + first.B*then.D,
		C: first.C*then.A + first.D*then.C, D: first.C*then.B + first.D*then.D,
		E: first.E*then.A + first.F*then.C + then.E, F: first.E*then.B + first.F*then.D + then.F,
	}
}

// place turns a point in PDF units from the bottom left corner into ours.
func (o object) place(x, y float64) geometry.Point {
	return geometry.Pt(o.unit*geometry.Length(x), o.height-o.unit*geometry.Length(y))
}

// mapped turns a point of the object into ours.
func (o object) mapped(x, y float32) geometry.Point {
	m := o.matrix
	f := func(a, b, c float32) float64 {
		return float64(a)*float64(x) + float64(b)*float64(y) + float64(c)
	}
	return o.place(f(m.A, m.C, m.E), f(m.B, m.D, m.F))
}

// length turns a length in the object's units into ours.
func (o object) length(l float32) geometry.Length {
	m := o.matrix
	return o.unit * geometry.Length(float64(l)*math.Sqrt(math.Abs(float64(m.A*m.D-m.B*m.C))))
}

func (o object) path() Path {
	d := o.page.doc
	mode := must[*responses.FPDFPath_GetDrawMode](d.t)(
		d.pdf.FPDFPath_GetDrawMode(&requests.FPDFPath_GetDrawMode{PageObject: o.ref}))
	p := Path{Lines: o.lines(), Stroked: mode.Stroke, Filled: mode.FillMode != enums.FPDF_FILLMODE_NONE}
	if p.Filled {
		p.Fill = o.fill()
	}
	if !p.Stroked {
		return p
	}
	c := must[*responses.FPDFPageObj_GetStrokeColor](d.t)(
		d.pdf.FPDFPageObj_GetStrokeColor(&requests.FPDFPageObj_GetStrokeColor{PageObject: o.ref})).StrokeColor
	p.Stroke = Colour{c.R, c.G, c.B}
	p.Width = o.length(must[*responses.FPDFPageObj_GetStrokeWidth](d.t)(
		d.pdf.FPDFPageObj_GetStrokeWidth(&requests.FPDFPageObj_GetStrokeWidth{PageObject: o.ref})).StrokeWidth)
	if at, ok := o.dot(p.Lines); ok {
		return Path{Lines: geometry.CircleOutline(at, p.Width/2).Path(), Filled: true, Fill: p.Stroke}
	}
	if must[*responses.FPDFPageObj_GetDashCount](d.t)(
		d.pdf.FPDFPageObj_GetDashCount(&requests.FPDFPageObj_GetDashCount{PageObject: o.ref})).DashCount > 0 {
		for _, l := range must[*responses.FPDFPageObj_GetDashArray](d.t)(
			d.pdf.FPDFPageObj_GetDashArray(&requests.FPDFPageObj_GetDashArray{PageObject: o.ref})).DashArray {
			p.Dashes = append(p.Dashes, o.length(l))
		}
		p.Phase = o.length(must[*responses.FPDFPageObj_GetDashPhase](d.t)(
			d.pdf.FPDFPageObj_GetDashPhase(&requests.FPDFPageObj_GetDashPhase{PageObject: o.ref})).DashPhase)
	}
	return p
}

// dot returns where a stroked path is all in one point, if its ends are round.
func (o object) dot(path geometry.Path) (geometry.Point, bool) {
	if len(path) != 1 || len(path[0].Steps) != 1 || path[0].Steps[0].To != path[0].Start {
		return geometry.Point{}, false
	}
	d := o.page.doc
	ends := must[*responses.FPDFPageObj_GetLineCap](d.t)(
		d.pdf.FPDFPageObj_GetLineCap(&requests.FPDFPageObj_GetLineCap{PageObject: o.ref})).LineCap
	return path[0].Start, ends == enums.FPDF_LINECAP_ROUND
}

// lines reads the way of the pen.
func (o object) lines() geometry.Path {
	d := o.page.doc
	n := must[*responses.FPDFPath_CountSegments](d.t)(
		d.pdf.FPDFPath_CountSegments(&requests.FPDFPath_CountSegments{PageObject: o.ref})).Count
	var path geometry.Path
	var controls []geometry.Point
	for i := range n {
		s := must[*responses.FPDFPath_GetPathSegment](d.t)(
			d.pdf.FPDFPath_GetPathSegment(&requests.FPDFPath_GetPathSegment{PageObject: o.ref, Index: i})).PathSegment
		at := must[*responses.FPDFPathSegment_GetPoint](d.t)(
			d.pdf.FPDFPathSegment_GetPoint(&requests.FPDFPathSegment_GetPoint{PathSegment: s}))
		kind := must[*responses.FPDFPathSegment_GetType](d.t)(
			d.pdf.FPDFPathSegment_GetType(&requests.FPDFPathSegment_GetType{PathSegment: s})).Type
		q := o.mapped(at.X, at.Y)
		if kind == enums.FPDF_SEGMENT_MOVETO {
			path = append(path, geometry.Piece{Start: q})
			continue
		}
		piece := &path[len(path)-1]
		switch {
		case kind == enums.FPDF_SEGMENT_LINETO:
			piece.Steps = append(piece.Steps, geometry.Step{To: q})
		case len(controls) < 2:
			controls = append(controls, q)
			continue
		default:
			piece.Steps = append(piece.Steps, geometry.Step{To: q, C1: controls[0], C2: controls[1], Curved: true})
			controls = nil
		}
		if must[*responses.FPDFPathSegment_GetClose](d.t)(
			d.pdf.FPDFPathSegment_GetClose(&requests.FPDFPathSegment_GetClose{PathSegment: s})).IsClose {
			piece.Closed = true
		}
	}
	return path
}

func (o object) fill() Colour {
	d := o.page.doc
	c := must[*responses.FPDFPageObj_GetFillColor](d.t)(
		d.pdf.FPDFPageObj_GetFillColor(&requests.FPDFPageObj_GetFillColor{PageObject: o.ref})).FillColor
	return Colour{c.R, c.G, c.B}
}

func (o object) text(page references.FPDF_TEXTPAGE) Text {
	d := o.page.doc
	b := must[*responses.FPDFPageObj_GetBounds](d.t)(
		d.pdf.FPDFPageObj_GetBounds(&requests.FPDFPageObj_GetBounds{PageObject: o.ref}))
	s := must[*responses.FPDFTextObj_GetText](d.t)(
		d.pdf.FPDFTextObj_GetText(&requests.FPDFTextObj_GetText{PageObject: o.ref, TextPage: page})).Text
	return Text{
		// pdfium adds a space where it takes the next string for a word of the same line.
		Text: strings.TrimRight(s, " "),
		Box: geometry.Rect{
			Min: o.place(float64(b.Left), float64(b.Top)),
			Max: o.place(float64(b.Right), float64(b.Bottom)),
		},
		Size: o.length(must[*responses.FPDFTextObj_GetFontSize](d.t)(
			d.pdf.FPDFTextObj_GetFontSize(&requests.FPDFTextObj_GetFontSize{PageObject: o.ref})).FontSize),
		Fill: o.fill(),
	}
}
