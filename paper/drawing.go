package paper

import "underlay/geometry"

// LineType is one of the line types of ISO 128-2.
type LineType int

// The types used here, by their ISO 128-2 numbers.
const (
	Continuous  LineType = iota // 01
	Dashed                      // 02
	Chain                       // 04, long-dashed dotted
	DoubleChain                 // 05, long-dashed double-dotted
	Dotted                      // 07
)

// Ink is a colour as 8-bit red, green and blue. The zero Ink is black.
type Ink struct{ R, G, B uint8 }

// Grey returns a grey: 0 is black, 255 white.
func Grey(level uint8) Ink { return Ink{level, level, level} }

// Pen is how a line is drawn. Width is one of the widths of ISO 128-2.
type Pen struct {
	Type  LineType
	Width geometry.Length
	Ink   Ink
}

// Stroke is a path drawn with a pen.
type Stroke struct {
	Path geometry.Path
	Pen  Pen
}

// Fill is a closed path filled with ink.
type Fill struct {
	Path geometry.Path
	Ink  Ink
}

// Label is one line of upright text. Height is the height of the capitals, h of ISO 3098:
// one of 1.8, 2.5, 3.5, 5, 7, 10, 14 and 20 mm for what is meant to be read.
type Label struct {
	Text   string
	At     geometry.Point
	Anchor Anchor
	Height geometry.Length
	Bold   bool
	Ink    Ink
}

// Drawing is what can be printed: fills below, lines over them, text on top. Bounds is the
// part of the plane it takes up; its frame is its maker's.
type Drawing struct {
	Bounds  geometry.Rect
	Fills   []Fill
	Strokes []Stroke
	Labels  []Label
}

// Stroke adds a line.
func (d *Drawing) Stroke(path geometry.Path, pen Pen) {
	d.Strokes = append(d.Strokes, Stroke{path, pen})
}

// Fill adds a filled path.
func (d *Drawing) Fill(path geometry.Path, ink Ink) { d.Fills = append(d.Fills, Fill{path, ink}) }

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
