package pdf

import (
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// look is what a shape looks like at every place it is put down in one way: the content of a form
// XObject (ISO 32000-1, 8.10), drawn once and called from the pages. One that is filled has no colour
// of its own: it takes that of the call.
type look struct {
	shape  *paper.Shape
	turn   geometry.Angle // as it is drawn in the form; the call turns all others
	scale  paper.Scale
	unit   float64 // PDF units to a millimetre
	pen    paper.Pen
	filled bool
}

func penLook(s paper.Stroke, v paper.View, unit float64) look {
	l := look{shape: s.Shape, scale: v.Scale, unit: unit, pen: s.Pen}
	if !even(v) { // else turned in the call the pen would be drawn out too
		l.turn = s.Place.Turn
	}
	return l
}

func fillLook(f paper.Fill, v paper.View, unit float64) look {
	return look{shape: f.Shape, scale: v.Scale, unit: unit, filled: true}
}

// forms gives each look that is worth one the number of its form.
type forms map[look]int

// leastCalls is how often a look must come for a form to be shorter than its lines.
const leastCalls = 3

// formsOf finds the looks that come often on the pages, and returns them in the order they are
// first met.
func formsOf(leaves []leaf) (forms, []look) {
	calls := map[look]int{}
	var met []look
	for _, s := range leaves {
		for _, v := range s.page.Views {
			count := func(l look) {
				if calls[l]++; calls[l] == 1 {
					met = append(met, l)
				}
			}
			v.Stamps(
				func(m paper.Stroke) { count(penLook(m, v, s.scale())) },
				func(m paper.Fill) {
					if m.Shape.Disc() == 0 || !even(v) { // else a dot
						count(fillLook(m, v, s.scale()))
					}
				})
		}
	}
	met = slices.DeleteFunc(met, func(l look) bool { return calls[l] < leastCalls })
	numbered := forms{}
	for i, l := range met {
		numbered[l] = i
	}
	return numbered, met
}

// formName is what pages call a form.
func formName(number int) string { return fmt.Sprintf("x%d", number) }

// patch fills a shape by its form; false: it has none.
func (c *content) patch(f paper.Fill) bool {
	number, ok := c.form(f.Shape, fillLook(f, c.view, c.unit))
	if ok {
		c.setInk(f.Ink)
		c.call(number, f.Place, f.Place.Turn)
	}
	return ok
}

// line draws a shape's lines by its form; false: it has none.
func (c *content) line(s paper.Stroke) bool {
	l := penLook(s, c.view, c.unit)
	number, ok := c.form(s.Shape, l)
	if ok {
		c.call(number, s.Place, s.Place.Turn-l.turn)
	}
	return ok
}

func (c *content) form(shape *paper.Shape, l look) (number int, ok bool) {
	if len(c.forms) == 0 || !shape.Often() {
		return 0, false
	}
	number, ok = c.forms[l]
	return number, ok
}

// call draws a form at a place, turned.
func (c *content) call(number int, at paper.Place, turn geometry.Angle) {
	x, y := c.point(at.At)
	c.out = append(c.out, "q "...)
	// In the page's units y runs up, and a scale that is not even leans what is turned.
	sin, cos := turn.SinCos()
	k := c.view.Scale.Of(geometry.Pt(1, 1))
	lean := float64(k.Y / k.X)
	for _, n := range []float64{cos, -sin * lean, sin / lean, cos} {
		c.share(n)
	}
	c.number(x)
	c.number(y)
	c.out = fmt.Appendf(c.out, "cm/x%d Do Q\n", number)
}

// stream returns the form as a stream object: the shape round the form's own origin.
func (l look) stream(z *deflater) []byte {
	d := &paper.Drawing{}
	path := l.shape.Turned(l.turn)
	c := &content{view: paper.View{Drawing: d, Scale: l.scale}, unit: l.unit}
	box := path.Bounds()
	if l.filled {
		c.fill(path)
	} else {
		c.setPen(l.pen, 0, false)
		for _, p := range path {
			c.piece(p)
		}
		c.op("S")
		// A mitre reaches five widths from its corner (ISO 32000-1, 8.4.3.5).
		box = box.Grow(5 * l.pen.Width)
	}
	left, top := c.point(box.Min)
	right, bottom := c.point(box.Max)
	bounds := &content{}
	for _, x := range []float64{left, bottom, right, top} {
		bounds.number(x)
	}
	return z.stream(dict{
		{"Type", name("XObject")}, {"Subtype", name("Form")},
		{"BBox", array{word(bounds.out)}}, {"Resources", dict{}},
	}, c.out)
}
