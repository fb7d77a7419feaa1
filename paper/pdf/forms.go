package pdf

import (
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// look is what a shape looks like at every place it is put down in one way: the content of a form
// XObject (ISO 32000-1, 8.10), drawn once and called from the pages.
type look struct {
	shape  *paper.Shape
	turn   geometry.Angle
	scale  paper.Scale
	unit   float64 // PDF units to a millimetre
	pen    paper.Pen
	ink    paper.Ink
	filled bool
}

func penLook(s paper.Stroke) look { return look{pen: s.Pen} }

func fillLook(f paper.Fill) look { return look{ink: f.Ink, filled: true} }

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
			count := func(l look, shape *paper.Shape, at paper.Place) {
				l.shape, l.turn, l.scale, l.unit = shape, at.Turn, v.Scale, s.scale()
				if calls[l]++; calls[l] == 1 {
					met = append(met, l)
				}
			}
			v.Stamps(
				func(m paper.Stroke) { count(penLook(m), m.Shape, m.Place) },
				func(m paper.Fill) {
					if m.Shape.Disc() == 0 || !even(v) { // else a dot
						count(fillLook(m), m.Shape, m.Place)
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

// call draws a shape by its form; false: it has none.
func (c *content) call(l look, shape *paper.Shape, at paper.Place) bool {
	if len(c.forms) == 0 || !shape.Often() {
		return false
	}
	l.shape, l.turn, l.scale, l.unit = shape, at.Turn, c.view.Scale, c.unit
	number, ok := c.forms[l]
	if !ok {
		return false
	}
	x, y := c.point(at.At)
	c.out = append(c.out, "q 1 0 0 1 "...)
	c.number(x)
	c.number(y)
	c.out = fmt.Appendf(c.out, "cm/x%d Do Q\n", number)
	return true
}

// stream returns the form as a stream object: the shape round the form's own origin.
func (l look) stream(z *deflater) []byte {
	d := &paper.Drawing{}
	path := l.shape.Turned(l.turn)
	c := &content{view: paper.View{Drawing: d, Scale: l.scale}, unit: l.unit}
	box := path.Bounds()
	if l.filled {
		c.area(path, l.ink)
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
