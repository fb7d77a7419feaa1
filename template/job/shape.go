package job

import (
	"slices"
)

// Shape is the shape of an item, by its name in the job file.
type Shape string

// The shapes of items. Drum and Cone are lampshades, printed laid flat.
const (
	Rectangle Shape = "rectangle"
	Round     Shape = "round"
	Outline   Shape = "outline"
	FourSided Shape = "four-sided"
	Drum      Shape = "drum"
	Cone      Shape = "cone"
)

// Shapes returns the shapes of items, the usual one first. How each lies on the bench is said in
// the table of package plan.
func Shapes() []Shape { return []Shape{Rectangle, Round, Outline, FourSided, Drum, Cone} }

// Shade tells whether the shape is that of a lampshade: its pattern runs round and closes, and
// has a border at both ends only.
func (s Shape) Shade() bool { return s == Drum || s == Cone }

// EvenBorder tells whether the shape has no sides to speak of, and so one border all round.
func (s Shape) EvenBorder() bool { return s == Round || s == Outline }

// FaceShape is the shape of a block's carved face, by its name in the job file.
type FaceShape string

// The shapes of faces.
const (
	RectangleFace FaceShape = "rectangle"
	RoundFace     FaceShape = "round"
	HexagonFace   FaceShape = "hexagon"
	OutlineFace   FaceShape = "outline"
)

// FaceShapes returns the shapes of faces, the usual one first.
func FaceShapes() []FaceShape {
	return []FaceShape{RectangleFace, RoundFace, HexagonFace, OutlineFace}
}

// Regular tells whether a face of the shape is known by one length, and keeps its form with it.
func (s FaceShape) Regular() bool { return s == RoundFace || s == HexagonFace }

// Side is a side of an item that a frame may run along.
type Side string

// The sides.
const (
	TopSide    Side = "top"
	RightSide  Side = "right"
	BottomSide Side = "bottom"
	LeftSide   Side = "left"
)

// AllSides returns the sides clockwise from the top.
func AllSides() []Side { return []Side{TopSide, RightSide, BottomSide, LeftSide} }

// Sides are those that a frame runs along; none: all four.
type Sides []Side

// Has tells whether the frame runs along a side.
func (s Sides) Has(side Side) bool { return len(s) == 0 || slices.Contains(s, side) }

// Tops is the way the tops face of a frame's prints, and of those in corners.
type Tops string

// The ways.
const (
	TopsOut Tops = "out"
	TopsIn  Tops = "in"
	TopsUp  Tops = "up" // in corners only
)
