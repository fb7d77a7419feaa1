// Package svg writes a drawing as one picture at true size, for cutters, screens and drawing
// programs: SVG 1.1 in millimetres of the drawing's own frame, x to the right, y down. It shows
// what paper/pdf prints of the same view, and adds nothing.
package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// Options is how a picture is written. The zero Options is a plain one.
type Options struct {
	// Face carries the typeface in the file (some 200 KB each for regular and bold letters), so that
	// letters keep their size where it is not installed. A picture without it is for a browser's
	// page, and shorter still: shapes are called by SVG 2's plain href.
	Face bool
	// IDs begins the ids of shapes, so that several pictures can stand in one page; "": x.
	IDs string
}

// ids returns what the ids begin with.
func (o Options) ids() string {
	if o.IDs == "" {
		return "x"
	}
	return o.IDs
}

// Write writes d as one picture at true size (SVG 1.1): its width and height are those of
// d.Bounds in millimetres, and a unit of its coordinates is a millimetre of d's own frame. It
// shows the marks that a PDF shows of a view of all of d: the same lines, dashes, widths and
// letters, cut off at Bounds. The same drawing gives the same bytes.
//
// A mark's role becomes the class of the group it is in, and its number an attribute of its own,
// data-number. It fails where d has no size, and where w does.
func Write(w io.Writer, title string, d *paper.Drawing, o Options) error {
	size := d.Bounds.Size()
	if !(size.W > 0 && size.H > 0) || math.IsInf(float64(size.W+size.H), 0) {
		return fmt.Errorf("the drawing is %g x %g mm; a picture needs a width and a height above 0", size.W, size.H)
	}
	return write(w, title, d.Bounds, o, []paper.View{{Drawing: d, Area: d.Bounds, At: d.Bounds.Min}})
}

// WritePage writes all that is on a page, its furniture too, as a picture of the page: its frame
// begins at the page's top left corner, and a printer's correction is in it. All else is as in
// Write.
func WritePage(w io.Writer, title string, p paper.Page, o Options) error {
	if !(p.Size.W > 0 && p.Size.H > 0) || math.IsInf(float64(p.Size.W+p.Size.H), 0) {
		return fmt.Errorf("the page is %g x %g mm; a picture needs a width and a height above 0", p.Size.W, p.Size.H)
	}
	return write(w, title, geometry.Rect{Max: geometry.Point{X: p.Size.W, Y: p.Size.H}}, o, p.Views)
}

func write(w io.Writer, title string, frame geometry.Rect, o Options, views []paper.View) error {
	marks := picture{styles: map[style]string{}, old: o.Face, ids: o.ids()}
	views = slices.Clone(views)
	for i, v := range views {
		views[i] = v.Picked()
	}
	marks.count(views)
	for _, v := range views {
		marks.see(v)
		v.Draw(&marks)
	}
	marks.close()
	marks.line(`</svg>`)
	s := picture{ids: o.ids()}
	s.line(`<?xml version="1.0" encoding="UTF-8"?>`)
	s.line(`<svg xmlns="http://www.w3.org/2000/svg"%s version="1.1" width="%smm" height="%smm" viewBox="%s %s %s %s">`,
		marks.linking(), decimal(frame.W()), decimal(frame.H()), decimal(frame.Min.X), decimal(frame.Min.Y), decimal(frame.W()), decimal(frame.H()))
	s.line(`<title>%s</title>`, escaped(title))
	s.line(ownMark)
	if o.Face {
		s.embedFaces(marks.regular, marks.bold)
	}
	s.define(marks.looks)
	_, err := io.Copy(w, io.MultiReader(&s.out, &marks.out))
	return err
}

// ownMark tells a picture that Write wrote from any other.
const ownMark = `<metadata>underlay</metadata>`

// Own tells whether a file is a picture that Write wrote.
func Own(file []byte) bool {
	head, _, _ := bytes.Cut(file, []byte("</metadata>"))
	return bytes.HasPrefix(file, []byte("<?xml")) && bytes.HasSuffix(append(head, "</metadata>"...), []byte("</title>\n"+ownMark))
}

// picture writes the marks of a drawing, runs of those alike in a group.
type picture struct {
	out           bytes.Buffer
	view          paper.View
	same, even    bool             // the view's drawing is in the picture's frame, or at its scale
	open          string           // what the open group's marks have in common; "": none is open
	style         style            // that of the mark last drawn
	styles        map[style]string // what the styles met so far are in attributes
	regular, bold bool             // the faces met
	numbers       map[look]int     // of the shapes drawn once, in looks
	looks         []look
	old           bool   // for readers of SVG 1.1 only
	ids           string // what ids begin with
	dots          bool   // a path of dots is open
}

// see goes on with another view.
func (s *picture) see(v paper.View) {
	s.view, s.even = v, v.Scale.Of(geometry.Pt(1, 1)) == geometry.Pt(1, 1)
	s.same = s.even && v.At == v.Area.Min
}

// place returns where a point of the view's drawing lies in the picture.
func (s *picture) place(p geometry.Point) geometry.Point {
	if s.same {
		return p
	}
	return s.view.Place(p)
}

func (s *picture) line(format string, args ...any) {
	fmt.Fprintf(&s.out, format, args...)
	s.out.WriteByte('\n')
}

// embedFaces carries the faces that labels are set in.
func (s *picture) embedFaces(regular, bold bool) {
	for i, used := range []bool{regular, bold} {
		if !used {
			continue
		}
		s.line(`<style type="text/css">@font-face { font-family: "%s"; font-weight: %s; src: url("data:font/ttf;base64,%s") format("truetype"); }</style>`,
			family, [...]string{"normal", "bold"}[i], base64.StdEncoding.EncodeToString(paper.Typeface(i == 1)))
	}
}

// Patch fills an area.
func (s *picture) Patch(p paper.Patch) {
	if r := p.Shape.Disc(); p.Whole && r > 0 && s.even {
		s.dot(p, r)
		return
	}
	s.group(style{kind: p.Role.Kind, how: filled, pen: paper.Pen{Ink: p.Ink}})
	switch {
	case p.Whole && s.use(p.Shape, p.Place, p.Role):
	case p.Whole:
		s.path(p.Path(), p.Role)
	default:
		s.path(p.Cut, p.Role)
	}
}

// dot draws a disc as a line of no length with round ends (SVG 1.1, 11.4), those without a number
// of their own in one path.
func (s *picture) dot(p paper.Patch, radius geometry.Length) {
	s.group(style{kind: p.Role.Kind, how: dotted, pen: paper.Pen{Ink: p.Ink}, size: 2 * radius})
	if p.Role.Number != 0 || !s.dots {
		s.end()
		s.out.WriteString(`<path d="`)
	}
	s.to('M', p.Place.At)
	s.out.WriteString("h0")
	if s.dots = p.Role.Number == 0; !s.dots {
		s.finish(append(s.out.AvailableBuffer(), '"'), p.Role)
	}
}

// end ends the path of dots, if there is one.
func (s *picture) end() {
	if s.dots {
		s.line(`"/>`)
		s.dots = false
	}
}

// Line draws a line.
func (s *picture) Line(l paper.Line) {
	s.group(style{kind: l.Role.Kind, how: stroked, pen: l.Pen})
	switch {
	case l.Whole && s.use(l.Shape, l.Place, l.Role):
		return
	case l.Whole && l.Dashes == nil:
		s.path(l.Path(), l.Role)
		return
	case l.Whole:
		for _, p := range l.Path() {
			l.Cut = append(l.Cut, paper.Run{Piece: p})
		}
	case l.Dashes == nil:
		var whole geometry.Path
		for _, r := range l.Cut {
			whole = append(whole, r.Piece)
		}
		s.path(whole, l.Role)
		return
	}
	// SVG 1.1 does not say whether dashes begin anew with each piece of a path: one path each.
	for _, r := range l.Cut {
		if len(r.Piece.Steps) == 0 {
			continue
		}
		s.out.WriteString(`<path d="`)
		s.piece(r.Piece)
		b := append(s.out.AvailableBuffer(), '"')
		if p := l.Phase(r); p > 0 {
			b = append(appendDecimal(append(b, ` stroke-dashoffset="`...), geometry.Length(p)), '"')
		}
		s.finish(b, l.Role)
	}
}

// path writes a path drawn as its group says.
func (s *picture) path(path geometry.Path, r paper.Role) {
	s.out.WriteString(`<path d="`)
	for _, p := range path {
		s.piece(p)
	}
	s.finish(append(s.out.AvailableBuffer(), '"'), r)
}

// finish writes the end of an element of a mark, after what of it is still to be written.
func (s *picture) finish(b []byte, r paper.Role) {
	s.out.Write(append(appendNumber(b, r), "/>\n"...))
}

// appendNumber adds the attribute that says which thing a mark belongs to.
func appendNumber(b []byte, r paper.Role) []byte {
	if r.Number == 0 {
		return b
	}
	return append(strconv.AppendInt(append(b, ` data-number="`...), int64(r.Number), 10), '"')
}

// piece writes the way of the pen along a piece.
func (s *picture) piece(p geometry.Piece) {
	if len(p.Steps) == 0 {
		return
	}
	s.to('M', p.Start)
	for _, step := range p.Steps {
		if step.Curved {
			s.to('C', step.C1, step.C2, step.To)
		} else {
			s.to('L', step.To)
		}
	}
	if p.Closed {
		s.out.WriteByte('Z')
	}
}

// to writes a command of path data and the points it takes.
func (s *picture) to(command byte, points ...geometry.Point) {
	b := append(s.out.AvailableBuffer(), command)
	for i, p := range points {
		if i > 0 {
			b = append(b, ' ')
		}
		p = s.place(p)
		b = appendDecimal(append(appendDecimal(b, p.X), ' '), p.Y)
	}
	s.out.Write(b)
}

// Text sets a line of text.
func (s *picture) Text(t paper.Text) {
	s.regular, s.bold = s.regular || !t.Bold, s.bold || t.Bold
	s.group(style{kind: t.Role.Kind, how: written, pen: paper.Pen{Ink: t.Ink}, size: t.Size, bold: t.Bold})
	at := s.place(t.At)
	b := s.out.AvailableBuffer()
	if s.even {
		b = appendAt(append(b, `<text`...), at)
	} else {
		k := s.view.Scale.Of(geometry.Pt(1, 1))
		b = fmt.Appendf(b, `<text transform="matrix(%.9g 0 0 %.9g %s %s)"`, float64(k.X), float64(k.Y), decimal(at.X), decimal(at.Y))
	}
	b = append(append(appendNumber(b, t.Role), '>'), escaped(t.Letters)...)
	s.out.Write(append(b, "</text>\n"...))
}

// appendAt adds the attributes that say where something stands.
func appendAt(b []byte, p geometry.Point) []byte {
	b = append(appendDecimal(append(b, ` x="`...), p.X), `" y="`...)
	return append(appendDecimal(b, p.Y), '"')
}

// decimal writes a number of millimetres to a thousandth.
func decimal(l geometry.Length) string { return string(appendDecimal(nil, l)) }

func appendDecimal(b []byte, l geometry.Length) []byte {
	// Adding 0 makes 0 of -0.
	return strconv.AppendFloat(b, math.Round(float64(l)*1e3)/1e3+0, 'f', -1, 64)
}

// escaped returns text as it stands in XML.
func escaped(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r > '~' || strings.ContainsRune(`"'&<>`, r) }) {
		return text
	}
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(text)) // a Buffer takes everything
	return b.String()
}
