package job

import (
	"underlay/geometry"
)

// Item is a thing to print on.
type Item struct {
	Name    string
	Shape   Shape
	Size    geometry.Size    // of the bounding box as it lies flat, face up
	Outline geometry.Outline // top left corner of its bounds at (0, 0)
	// Corners are those of a four-sided item: top left, top right, bottom right, bottom left.
	Corners    [4]geometry.Point
	Border     geometry.Edges
	Hem        geometry.Length
	Quantity   int
	Faces      []string // names; one nameless face where the job gives none
	Zones      []Zone
	Shade      Shade // zero where the item is not a shade
	Passes     []*Pass
	Colourways []Colourway
	// MoveAlong is the length of the table, where the cloth is printed stretch by stretch; 0: it is
	// not moved.
	MoveAlong geometry.Length
	// Pieces are those of one cloth that is cut apart; of one of them is all the rest here.
	Pieces Pieces
	Line   int // of its heading in the job file; 0: none
}

// Zone is a part of an item not to print on.
type Zone struct {
	Name string
	Face string // the one that it is on, as seen there; "": it goes through
	Rect geometry.Rect
}

// Shade is the shape of a drum or a cone as it stands.
type Shade struct {
	Top, Bottom geometry.Length // diameters; the same for a drum
	Height      geometry.Length
	Lap         geometry.Length // seam, drawn outside, unprinted
}
