package job

import (
	"underlay/geometry"
)

// The shapes of an item, the default first.
var Shapes = []string{"rectangle", "round", "outline", "drum", "cone"}

// Item is a thing to print on.
type Item struct {
	Name     string
	Shape    string           // "rectangle", "round", "outline", "drum" or "cone"
	Size     geometry.Size    // of the bounding box as it lies flat, face up
	Outline  geometry.Outline // top left corner of its bounds at (0, 0)
	Border   geometry.Edges
	Hem      geometry.Length
	Quantity int
	Faces    []string // names; one nameless face where the job gives none
	Zones    []Zone
	Shade    Shade // zero where the item is not a shade
	Passes   []*Pass
	Line     int // of its heading in the job file; 0: none
}

// IsShade tells whether an item is a lampshade, printed laid flat.
func (it *Item) IsShade() bool { return it.Shape == "drum" || it.Shape == "cone" }

// Zone is a part of an item not to print on.
type Zone struct {
	Name string
	Rect geometry.Rect
}

// Shade is the shape of a drum or a cone as it stands.
type Shade struct {
	Top, Bottom geometry.Length // diameters; the same for a drum
	Height      geometry.Length
	Lap         geometry.Length // seam, drawn outside, unprinted
}
