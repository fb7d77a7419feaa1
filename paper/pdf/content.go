package pdf

import (
	"math"
	"strconv"
	"unicode/utf16"

	"underlay/geometry"
	"underlay/paper"
)

// pointsPerMM is the size of a millimetre in PDF units of 1/72 inch (ISO 32000-1, 8.3.2.3).
const pointsPerMM = 72 / 25.4

// content writes one view of a drawing as PDF operators (ISO 32000-1, 8.4 and 8.5).
type content struct {
	out  []byte
	view paper.View
	// unit is how many PDF units a millimetre takes; height is the page's, in PDF units.
	unit, height float64
	pen          paper.Pen // as last written; valid once penSet
	penSet       bool
	phase        float64
	round        bool // the ends of lines
	forms        forms
	ink          paper.Ink // for fills and text; valid once inkSet
	inkSet       bool
	bold         bool // the font; valid once fontSet
	fontSet      bool
	used         *lettersUsed
}

// point returns where a point of the drawing lies on the page in PDF units from the page's bottom left corner, y up.
func (c *content) point(p geometry.Point) (x, y float64) {
	q := c.view.Place(p)
	return float64(q.X) * c.unit, c.height - float64(q.Y)*c.unit
}

// number writes a number to a thousandth of a PDF unit, 0.00035 mm.
func (c *content) number(x float64) {
	n := int64(math.Round(x * 1000))
	if n < 0 {
		c.out = append(c.out, '-')
		n = -n
	}
	c.out = strconv.AppendInt(c.out, n/1000, 10)
	if f := n % 1000; f > 0 {
		c.out = append(c.out, '.', byte('0'+f/100), byte('0'+f/10%10), byte('0'+f%10))
		for c.out[len(c.out)-1] == '0' {
			c.out = c.out[:len(c.out)-1]
		}
	}
	c.out = append(c.out, ' ')
}

// share writes a number of about 1 at the most to a millionth: of a metre of paper, 0.001 mm.
func (c *content) share(x float64) {
	x = math.Round(x*1e6)/1e6 + 0 // adding 0 makes 0 of -0
	c.out = append(strconv.AppendFloat(c.out, x, 'f', -1, 64), ' ')
}

// op writes an operator and the numbers it takes.
func (c *content) op(operator string, numbers ...float64) {
	for _, x := range numbers {
		c.number(x)
	}
	c.out = append(append(c.out, operator...), '\n')
}

// draw writes the view.
func (c *content) draw() {
	c.open()
	c.view.Draw(c)
	c.shut()
}

// open begins the view: nothing drawn until shut shows outside its area.
func (c *content) open() {
	c.op("q")
	x, y := c.point(c.view.Area.Min)
	right, bottom := c.point(c.view.Area.Max)
	c.op("re", x, bottom, right-x, y-bottom)
	c.op("W n")
}

func (c *content) shut() { c.op("Q") }

func (c *content) colour(i paper.Ink, grey, rgb string) {
	if i.R == i.G && i.G == i.B {
		c.op(grey, float64(i.R)/255)
		return
	}
	c.op(rgb, float64(i.R)/255, float64(i.G)/255, float64(i.B)/255)
}

func (c *content) setInk(i paper.Ink) {
	if !c.inkSet || c.ink != i {
		c.colour(i, "g", "rg")
	}
	c.ink, c.inkSet = i, true
}

// setPen makes strokes come out as p draws them, the dash pattern begun phase into itself, with
// round ends or (as at a page's beginning) without.
func (c *content) setPen(p paper.Pen, phase float64, round bool) {
	if c.round != round {
		c.op("J", map[bool]float64{true: 1}[round])
		c.round = round
	}
	if !c.penSet || c.pen.Ink != p.Ink {
		c.colour(p.Ink, "G", "RG")
	}
	if !c.penSet || c.pen.Width != p.Width {
		c.op("w", float64(p.Width)*c.unit)
	}
	if !c.penSet || c.pen.Type != p.Type || p.Type != paper.Continuous && (c.pen.Width != p.Width || c.phase != phase) {
		c.out = append(c.out, '[')
		for _, d := range p.Dashes() {
			c.number(d * c.unit)
		}
		c.out = append(c.out, ']', ' ')
		c.op("d", phase*c.unit)
	}
	c.pen, c.penSet, c.phase = p, true, phase
}

// piece writes the way of the pen along a piece.
func (c *content) piece(p geometry.Piece) {
	if len(p.Steps) == 0 {
		return
	}
	to := func(p geometry.Point) {
		x, y := c.point(p)
		c.number(x)
		c.number(y)
	}
	to(p.Start)
	c.op("m")
	for _, s := range p.Steps {
		if s.Curved {
			to(s.C1)
			to(s.C2)
			to(s.To)
			c.op("c")
			continue
		}
		to(s.To)
		c.op("l")
	}
	if p.Closed {
		c.op("h")
	}
}

// Patch fills an area: a form where there is one for its shape, a dot as a line's end.
func (c *content) Patch(p paper.Patch) {
	switch {
	case p.Whole && p.Shape.Disc() > 0 && even(c.view):
		c.dot(p.Place.At, p.Shape.Disc(), p.Ink)
	case p.Whole && c.patch(p.Fill):
	case p.Whole:
		c.area(p.Path(), p.Ink)
	default:
		c.area(p.Cut, p.Ink)
	}
}

// area fills closed pieces.
func (c *content) area(path geometry.Path, ink paper.Ink) {
	c.setInk(ink)
	c.fill(path)
}

// fill fills closed pieces with the ink that is set.
func (c *content) fill(path geometry.Path) {
	for _, p := range path {
		c.piece(p)
	}
	c.op("f")
}

// even tells whether a circle comes out as one.
func even(v paper.View) bool {
	unit := v.Scale.Of(geometry.Pt(1, 1))
	return unit.X == unit.Y
}

// dot draws a disc as a line of no length with round ends (ISO 32000-1, 8.5.3.2).
func (c *content) dot(at geometry.Point, radius geometry.Length, ink paper.Ink) {
	width := c.view.Scale.Of(geometry.Pt(2*radius, 0)).X
	c.setPen(paper.Pen{Type: paper.Continuous, Width: width, Ink: ink}, 0, true)
	x, y := c.point(at)
	c.op("m", x, y)
	c.op("l", x, y)
	c.op("S")
}

// Line draws a line: a form where there is one for its shape.
func (c *content) Line(l paper.Line) {
	switch {
	case l.Whole && c.line(l.Stroke):
	case l.Whole:
		c.setPen(l.Pen, 0, false)
		for _, p := range l.Path() {
			c.piece(p)
		}
		c.op("S")
	default:
		c.runs(l)
	}
}

// runs draws what is left of a line that is cut off. A pattern begins anew with each piece:
// pieces drawn from their start go together.
func (c *content) runs(l paper.Line) {
	drawn := false
	for _, r := range l.Cut {
		if l.Dashes != nil && r.Along > 0 {
			continue
		}
		if !drawn {
			c.setPen(l.Pen, 0, false)
			drawn = true
		}
		c.piece(r.Piece)
	}
	if drawn {
		c.op("S")
	}
	if l.Dashes == nil {
		return
	}
	for _, r := range l.Cut {
		if r.Along > 0 {
			c.setPen(l.Pen, l.Phase(r), false)
			c.piece(r.Piece)
			c.op("S")
		}
	}
}

// Text writes a line of text, in type of one PDF unit set in its place and size. The faces
// are in the file such that a letter's code is its number in UTF-16.
func (c *content) Text(t paper.Text) {
	if !c.fontSet || c.bold != t.Bold {
		c.out = append(append(append(c.out, '/'), fontName(t.Bold)...), " 1 Tf\n"...)
		c.bold, c.fontSet = t.Bold, true
	}
	c.setInk(t.Ink)
	c.op("q")
	x, y := c.point(t.At)
	size := c.view.Scale.Of(geometry.Pt(t.Size, t.Size))
	c.op("cm", float64(size.X)*c.unit, 0, 0, float64(size.Y)*c.unit, x, y)
	c.out = append(c.out, "BT ("...)
	for _, r := range t.Letters {
		c.used.of(t.Bold).add(r)
		for _, u := range utf16.AppendRune(nil, r) {
			c.byte(byte(u >> 8))
			c.byte(byte(u))
		}
	}
	c.op(") Tj ET")
	c.shut()
}

// byte writes a byte of a string in parentheses (ISO 32000-1, 7.3.4.2).
func (c *content) byte(b byte) {
	switch b {
	case '(', ')', '\\':
		c.out = append(c.out, '\\')
	case '\r':
		c.out = append(c.out, '\\')
		b = 'r'
	}
	c.out = append(c.out, b)
}
