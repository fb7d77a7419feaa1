package paper

import (
	"underlay/geometry"
)

// LineType is one of the line types of ISO 128-2.
type LineType int

// The types used here, by their ISO 128-2 numbers.
const (
	Continuous  LineType = iota // 01
	Dashed                      // 02
	Chain                       // 04, long-dashed dotted
	DoubleChain                 // 05, long-dashed double-dotted
	Dotted                      // 07
	LongShort                   // 08, long-dashed short-dashed
)

// Pen is how a line is drawn. Width is one of the widths of ISO 128-2.
type Pen struct {
	Type  LineType
	Width geometry.Length
	Ink   Ink
}

// Role is what a mark is for, in the words of whoever draws: an edge, a crease, print 12, a tick of
// column 3. Nothing here reads it; it goes along into files that can carry it. The zero Role says
// nothing.
type Role struct {
	Kind   string // one word in small letters
	Number int    // of the thing it belongs to; 0: none
}

// Stroke is a shape drawn with a pen.
type Stroke struct {
	Shape *Shape
	Place Place
	Pen   Pen
	Role  Role
}

// Path returns the way of the pen.
func (s Stroke) Path() geometry.Path { return s.Shape.put(s.Place) }

// Bounds returns an upright rectangle that holds the way of the pen.
func (s Stroke) Bounds() geometry.Rect { return s.Shape.boundsAt(s.Place) }

// Fill is a closed shape filled with ink.
type Fill struct {
	Shape *Shape
	Place Place
	Ink   Ink
	Role  Role
}

// Path returns the edge of what is filled.
func (f Fill) Path() geometry.Path { return f.Shape.put(f.Place) }

// Bounds returns an upright rectangle that holds what is filled.
func (f Fill) Bounds() geometry.Rect { return f.Shape.boundsAt(f.Place) }

// Label is one line of upright text. Height is the height of the capitals, h of ISO 3098:
// one of 1.8, 2.5, 3.5, 5, 7, 10, 14 and 20 mm for what is meant to be read.
type Label struct {
	Text   string
	At     geometry.Point
	Anchor Anchor
	Height geometry.Length
	Bold   bool
	Ink    Ink
	Role   Role
	// Ground lays white paper under the letters, over all lines and fills.
	Ground bool
}

// Drawing is what can be printed: fills below, lines over them, text on top. Bounds is the
// part of the plane it takes up; its frame is its maker's.
type Drawing struct {
	Bounds  geometry.Rect
	Fills   []Fill
	Strokes []Stroke
	Labels  []Label
	Names   []Name
}

// Stroke adds a line.
func (d *Drawing) Stroke(path geometry.Path, pen Pen) {
	d.Strokes = append(d.Strokes, Stroke{Shape: Once(path), Pen: pen})
}

// Stamp draws a shape's lines at a place.
func (d *Drawing) Stamp(s *Shape, at Place, pen Pen, role Role) {
	at.Turn = at.Turn.Normal()
	d.Strokes = append(d.Strokes, Stroke{s, at, pen, role})
}

// Fill adds a filled path.
func (d *Drawing) Fill(path geometry.Path, ink Ink) {
	d.Fills = append(d.Fills, Fill{Shape: Once(path), Ink: ink})
}

// StampFill fills a closed shape at a place.
func (d *Drawing) StampFill(s *Shape, at Place, ink Ink, role Role) {
	at.Turn = at.Turn.Normal()
	d.Fills = append(d.Fills, Fill{s, at, ink, role})
}

// Write adds a label.
func (d *Drawing) Write(l Label) { d.Labels = append(d.Labels, l) }

// View shows the part Area of a drawing on a page: the drawing's point (X, Y) lies at
// At + Scale.Of((X, Y) - Area.Min), from the page's top left corner. Nothing outside Area is
// drawn; lines keep their width whatever the scale.
// Marks names the marks to draw, where that has been worked out before (see Split); nil:
// the fills and strokes that touch Area, and the labels that lie wholly in it.
type View struct {
	Drawing *Drawing
	Area    geometry.Rect
	At      geometry.Point
	Scale   Scale
	Marks   *Subset
}

// Page is one piece of paper.
type Page struct {
	Size  geometry.Size
	Views []View
}

// Part is a run of pages with a name, shown in the reader's list of contents. Children are
// parts within it; their pages follow its own.
type Part struct {
	Name     string
	Pages    []Page
	Children []Part
}

// PageView shows a drawing made in the page's own frame, in its place.
func PageView(d *Drawing) View {
	return View{Drawing: d, Area: d.Bounds, At: d.Bounds.Min}
}

// Add draws e on d, moved by p.
func (d *Drawing) Add(e Drawing, p geometry.Point) {
	for _, f := range e.Fills {
		f.Place.At = f.Place.At.Add(p)
		d.Fills = append(d.Fills, f)
	}
	for _, s := range e.Strokes {
		s.Place.At = s.Place.At.Add(p)
		d.Strokes = append(d.Strokes, s)
	}
	for _, l := range e.Labels {
		l.At = l.At.Add(p)
		d.Write(l)
	}
	for _, n := range e.Names {
		n.Of = n.Of.Move(p)
		d.Name(n)
	}
}
