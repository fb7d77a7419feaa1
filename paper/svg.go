package paper

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"underlay/geometry"
)

// WriteSVG writes d as one picture at true size (SVG 1.1): its width and height are those of
// d.Bounds in millimetres, and a unit of its coordinates is a millimetre of d's own frame. It
// shows the marks that WritePDF draws of a view of all of d: the same lines, dashes, widths and
// letters, cut off at Bounds. The typeface goes into the file, so that letters keep their size
// where it is not installed. The same drawing gives the same bytes.
//
// It fails where d has no size, and where w does.
func WriteSVG(w io.Writer, title string, d *Drawing) error {
	size := d.Bounds.Size()
	if !(size.W > 0 && size.H > 0) || math.IsInf(float64(size.W+size.H), 0) {
		return fmt.Errorf("the drawing is %g x %g mm; a picture needs a width and a height above 0", size.W, size.H)
	}
	marks := everything(d, d.Bounds)
	s := &svgWriter{area: d.Bounds, pens: map[Pen]string{}}
	s.line(`<?xml version="1.0" encoding="UTF-8"?>`)
	s.line(`<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%smm" height="%smm" viewBox="%s %s %s %s">`,
		decimal(size.W), decimal(size.H), decimal(d.Bounds.Min.X), decimal(d.Bounds.Min.Y), decimal(size.W), decimal(size.H))
	s.line(`<title>%s</title>`, escaped(title))
	s.embedFaces(d, marks)
	for _, i := range marks.Fills {
		s.fill(d.Fills[i])
	}
	for _, i := range marks.Strokes {
		s.stroke(d.Strokes[i])
	}
	for _, i := range marks.Labels {
		s.label(d.Labels[i])
	}
	s.group("")
	s.line(`</svg>`)
	_, err := s.out.WriteTo(w)
	return err
}

// svgWriter writes the marks of a drawing, runs of those alike in a group.
type svgWriter struct {
	out  bytes.Buffer
	area geometry.Rect
	open string         // what the open group's marks have in common; "": none is open
	pens map[Pen]string // what the pens met so far are in attributes
}

func (s *svgWriter) line(format string, args ...any) {
	fmt.Fprintf(&s.out, format, args...)
	s.out.WriteByte('\n')
}

// group goes on in a group with the attributes given, a new one where they are others.
func (s *svgWriter) group(attributes string) {
	if attributes == s.open {
		return
	}
	if s.open != "" {
		s.line(`</g>`)
	}
	if attributes != "" {
		s.line(`<g %s>`, attributes)
	}
	s.open = attributes
}

// svgFamily is the name the embedded typeface goes by.
const svgFamily = "Go"

// embedFaces carries the faces that labels are set in.
func (s *svgWriter) embedFaces(d *Drawing, marks *Subset) {
	var used [2]bool
	for _, i := range marks.Labels {
		if d.Labels[i].Bold {
			used[1] = true
		} else {
			used[0] = true
		}
	}
	for i, weight := range []string{"normal", "bold"} {
		if !used[i] {
			continue
		}
		s.line(`<style type="text/css">@font-face { font-family: "%s"; font-weight: %s; src: url("data:font/ttf;base64,%s") format("truetype"); }</style>`,
			svgFamily, weight, base64.StdEncoding.EncodeToString(faceOf(i == 1).ttf))
	}
}

func (s *svgWriter) fill(f Fill) {
	path := clipFill(f.Path, s.area)
	if len(path) == 0 {
		return
	}
	s.group(fmt.Sprintf(`fill="%s"`, f.Ink.hex()))
	s.out.WriteString(`<path d="`)
	for _, p := range path {
		s.piece(p)
	}
	s.line(`"/>`)
}

func (s *svgWriter) stroke(k Stroke) {
	pattern := k.Pen.dashes()
	runs := clip(k.Path, s.area, scale{1, 1}, pattern == nil)
	if len(runs) == 0 {
		return
	}
	s.group(s.attributes(k.Pen, pattern))
	if pattern == nil {
		s.out.WriteString(`<path d="`)
		for _, r := range runs {
			s.piece(r.piece)
		}
		s.line(`"/>`)
		return
	}
	// SVG 1.1 does not say whether dashes begin anew with each piece of a path: one path each.
	for _, r := range runs {
		s.out.WriteString(`<path d="`)
		s.piece(r.piece)
		s.out.WriteByte('"')
		if p := phase(pattern, r.along); p > 0 {
			fmt.Fprintf(&s.out, ` stroke-dashoffset="%s"`, decimal(geometry.Length(p)))
		}
		s.line(`/>`)
	}
}

// attributes returns what draws as a pen does.
func (s *svgWriter) attributes(p Pen, pattern []float64) string {
	if known, ok := s.pens[p]; ok {
		return known
	}
	// A PDF's lines end butt and meet in a mitre up to ten times their width (ISO 32000-1,
	// Table 52); the first is what SVG does too, the second is four times there.
	a := fmt.Sprintf(`fill="none" stroke="%s" stroke-width="%s" stroke-miterlimit="10"`, p.Ink.hex(), decimal(p.Width))
	if pattern != nil {
		var dashes []string
		for _, l := range pattern {
			dashes = append(dashes, decimal(geometry.Length(l)))
		}
		a += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Join(dashes, " "))
	}
	s.pens[p] = a
	return a
}

// piece writes the way of the pen along a piece.
func (s *svgWriter) piece(p geometry.Piece) {
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
func (s *svgWriter) to(command byte, points ...geometry.Point) {
	b := append(s.out.AvailableBuffer(), command)
	for i, p := range points {
		if i > 0 {
			b = append(b, ' ')
		}
		b = appendDecimal(append(appendDecimal(b, p.X), ' '), p.Y)
	}
	s.out.Write(b)
}

func (s *svgWriter) label(l Label) {
	text, _ := Legible(l.Text)
	if text == "" || l.Height <= 0 {
		return
	}
	weight := ""
	if l.Bold {
		weight = ` font-weight="bold"`
	}
	s.group(fmt.Sprintf(`font-family="%s, sans-serif" font-size="%s"%s fill="%s"`,
		svgFamily, decimal(faceOf(l.Bold).em(l.Height)), weight, l.Ink.hex()))
	p := l.start()
	s.line(`<text x="%s" y="%s">%s</text>`, decimal(p.X), decimal(p.Y), escaped(text))
}

// decimal writes a number of millimetres to a ten-thousandth.
func decimal(l geometry.Length) string { return string(appendDecimal(nil, l)) }

func appendDecimal(b []byte, l geometry.Length) []byte {
	// Adding 0 makes 0 of -0.
	return strconv.AppendFloat(b, math.Round(float64(l)*1e4)/1e4+0, 'f', -1, 64)
}

// hex writes an ink the way a style sheet does.
func (i Ink) hex() string { return fmt.Sprintf("#%02x%02x%02x", i.R, i.G, i.B) }

func escaped(text string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(text)) // a Buffer takes everything
	return b.String()
}
