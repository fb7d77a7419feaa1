package planner

import (
	"underlay/geometry"
)

// Layout is what is to be spread over sheets, and what matters when it is, all in one frame.
type Layout struct {
	Bounds geometry.Rect // all of it
	// Least is what must be shown, within Bounds: the rest may be cut short where that saves
	// sheets. An empty one: all of Bounds.
	Least geometry.Rect
	// Marks are boxes of all that is drawn, the tighter the better: a sheet that has none is
	// left out. nil: something is drawn everywhere.
	Marks []geometry.Rect
	// Whole are the boxes that no join should cut.
	Whole []Box
	// Upright are upright lines, and Level level ones, that joins of the same direction keep clear
	// of.
	Upright, Level []Rule
}

// Rule is a straight line from end to end of a layout, at an x or a y.
type Rule struct {
	At geometry.Length
	// Weight is what a join nearer than 5 mm weighs, as if it cut a box; 0 or more.
	Weight int
}

// Box is something that no join should cut. Of two ways to spread a layout over as many sheets
// the one is taken that cuts boxes of less weight in all; a weight is 1 or more.
type Box struct {
	geometry.Rect
	Weight int
}

// least returns what must be shown.
func (l Layout) least() geometry.Rect {
	if l.Least.Empty() {
		return l.Bounds
	}
	return l.Least
}
