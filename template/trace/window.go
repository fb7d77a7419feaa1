package trace

import "underlay/geometry"

// The window's opening, and what stands round it.
const (
	openingWidth  = 150 * geometry.Millimetre
	openingHeight = 200 * geometry.Millimetre
	markRadius    = 8 * geometry.Millimetre
	markOff       = 12.5 * geometry.Millimetre // a mark's middle from the opening, across and down
	holeRadius    = 1.4 * geometry.Millimetre
	holeOff       = 4.4 * geometry.Millimetre // a hole's middle from the mark's
	stitchRadius  = 1.25 * geometry.Millimetre
	stitchOff     = 4.5 * geometry.Millimetre // a stitch's middle from the opening
	stitchPitch   = 25 * geometry.Millimetre
)

// Frame is what the window page shows, in the window's frame: white paper, and black on it the
// marks, one at each corner of the opening, and the stitches along its sides.
//
// The marks are buttons: black discs with two, three, four and five holes, clockwise from the top
// left. A disc on white is dark all round its middle and light all round itself, at any turn, and
// aslant it is an ellipse, which hardly anything else in a picture is so exactly. The number of
// holes tells which corner it is, whichever way the picture lies, and where the holes are tells a
// button from what only looks like one. Ink that runs, a pale print, a blurred picture and a
// threshold a little off make discs and holes larger or smaller evenly all round: their middles
// stay where they are, and nothing but middles is measured. The stitches are dots, looked for only
// where the marks say they must be: they tell how the lens bends straight lines, and whether the
// sheet lies flat. Up to half of them may be lost.
type Frame struct {
	Opening      geometry.Rect
	Marks        [4]Mark // top left, top right, bottom right, bottom left
	MarkRadius   geometry.Length
	HoleRadius   geometry.Length
	Stitches     []geometry.Point
	StitchRadius geometry.Length
}

// Mark is a disc with holes; their number tells it from the others.
type Mark struct {
	Corner string // where it stands, in words
	Centre geometry.Point
	Holes  []geometry.Point
}

// fewestHoles is how many holes the mark at the top left has; each of the others has one more than
// the last.
const fewestHoles = 2

// Window returns what stands round the window.
func Window() Frame {
	f := Frame{
		Opening:    geometry.Rect{Max: geometry.Pt(openingWidth, openingHeight)},
		MarkRadius: markRadius, HoleRadius: holeRadius, StitchRadius: stitchRadius,
	}
	corners := [4]string{"top left", "top right", "bottom right", "bottom left"}
	for i, at := range f.Opening.Grow(markOff).Polygon() {
		m := Mark{Corner: corners[i], Centre: at}
		n := fewestHoles + i
		for k := range n {
			turn := geometry.Angle(360 * float64(k) / float64(n))
			m.Holes = append(m.Holes, at.Add(geometry.Pt(0, -holeOff).Turn(turn)))
		}
		f.Marks[i] = m
	}
	for x := stitchPitch; x < openingWidth; x += stitchPitch {
		f.Stitches = append(f.Stitches, geometry.Pt(x, -stitchOff), geometry.Pt(x, openingHeight+stitchOff))
	}
	for y := stitchPitch; y < openingHeight; y += stitchPitch {
		f.Stitches = append(f.Stitches, geometry.Pt(-stitchOff, y), geometry.Pt(openingWidth+stitchOff, y))
	}
	return f
}

// Bounds returns the part of the window's frame that marks and opening take up.
func (f Frame) Bounds() geometry.Rect {
	return geometry.Rect{Min: f.Marks[0].Centre, Max: f.Marks[2].Centre}.Grow(f.MarkRadius)
}
