package paper

import (
	"underlay/geometry"
)

// Anchor is one of nine points of a box: its corners, the middles of its sides and its own. Of a
// label it says which point of its box stands at its place. That box runs from the start to the
// end of the text, and from the line the letters stand on to the top of the capitals.
type Anchor int

// The nine anchors. AnchorMiddle is the middle of the box.
const (
	AnchorMiddle Anchor = iota
	AnchorLeft
	AnchorRight
	AnchorTop
	AnchorBottom
	AnchorTopLeft
	AnchorTopRight
	AnchorBottomLeft
	AnchorBottomRight
)

// shares returns how far across and down a box the point lies, as shares of its sides.
func (a Anchor) shares() (across, down geometry.Length) {
	across, down = 0.5, 0.5
	switch a {
	case AnchorLeft, AnchorTopLeft, AnchorBottomLeft:
		across = 0
	case AnchorRight, AnchorTopRight, AnchorBottomRight:
		across = 1
	}
	switch a {
	case AnchorTop, AnchorTopLeft, AnchorTopRight:
		down = 0
	case AnchorBottom, AnchorBottomLeft, AnchorBottomRight:
		down = 1
	}
	return across, down
}

// Of returns where the point lies on a box.
func (a Anchor) Of(box geometry.Rect) geometry.Point {
	across, down := a.shares()
	return box.Min.Add(geometry.Pt(box.W()*across, box.H()*down))
}
