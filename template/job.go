package template

import (
	"underlay/geometry"
	"underlay/paper"
)

// Job is a checked job: what to print on what. One made by ReadJob or by QuickJob is known
// good: every name is resolved, every length is in range.
type Job struct {
	Title    string
	Units    geometry.Unit
	Paper    Paper
	Printer  Printer
	Printing Printing
	Blocks   []*Block
	Items    []*Item
	// Source is the job file as it was read, byte for byte; for a job given by flags, a job
	// file that says the same.
	Source []byte
	// File is the job file's name as shown to the maker; "" for a job given by flags.
	File string
}

// Paper says on what, and how, the guide is printed.
type Paper struct {
	Stock   paper.Stock
	Margin  geometry.Length // what the printer cannot reach, every edge
	Overlap geometry.Length // what neighbouring sheets share
	Reach   geometry.Length // how far the guide runs past the cloth
	Extent  Extent
	Lines   Lines
}

// Extent is how much of the guide is printed.
type Extent string

// The extents.
const (
	FullExtent  Extent = "full"
	EdgesExtent Extent = "edges"
)

// Lines is how wide the lines are drawn.
type Lines string

// The line weights.
const (
	FineLines   Lines = "fine"
	StrongLines Lines = "strong"
)

// Printer is what the printer's check bars measured; zero lengths: not measured.
type Printer struct {
	Across geometry.Length // nominal 180 mm
	Down   geometry.Length // nominal 250 mm
}

// Printing is how the maker works.
type Printing struct {
	Hand             Hand
	SecondsAPrint    float64 // 0: not given
	SecondsAColour   float64 // 0: not given
	PaintCover       float64 // millilitres per square metre of printed face; 0: not given
	HasSecondsPrint  bool
	HasSecondsColour bool
	HasPaintCover    bool
}

// Hand is the hand the printer works with.
type Hand string

// The hands.
const (
	RightHand Hand = "right"
	LeftHand  Hand = "left"
)

// Block is a carved stamp.
type Block struct {
	Name       string
	Shape      string           // "rectangle", "round", "hexagon" or "outline"
	Size       geometry.Size    // of the carved face
	Face       geometry.Outline // centre of its bounds at (0, 0), top of the block upwards
	Wood       geometry.Outline // in the face's frame; None where not given
	WoodOffset geometry.Point   // the wood's centre from the face's
	Inked      float64          // share of the face that carries paint; 0: not given
}

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

// isShade tells whether an item is a lampshade, printed laid flat.
func (it *Item) isShade() bool { return it.Shape == "drum" || it.Shape == "cone" }

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

// Pass is one block printed all over one item, in one go.
type Pass struct {
	Name         string
	Block        *Block
	Face         string // "": every face
	Repeat       string
	Gap          Gaps
	Step         float64 // brick and half-drop; 1/2 unless given
	GridTurn     geometry.Angle
	CentreAcross Centring
	CentreDown   Centring
	Turns        [][]int // quarter turns in degrees, rows of the matrix; never empty
	Colours      []string
	Order        Order
	Sides        []string // frame
	Tops         string   // frame: "out" or "in"
	Rings        int      // 0: as many as fit
	Between      *Pass
	OpenEdges    bool
	On           *Pass
	Offset       geometry.Point
	Line         int // of its heading in the job file; 0: none
}

// seated tells whether the pass's prints are placed by those of another pass.
func (p *Pass) seated() bool { return p.Between != nil || p.On != nil }

// Gap is the plain cloth between two prints: from Least to Most, the same unless the job
// gives a range. Negative: a lap.
type Gap struct{ Least, Most geometry.Length }

// Gaps are the gap across and the gap down.
type Gaps struct{ Across, Down Gap }

// Centring says what sits on a centre line of the printable area.
type Centring string

// The centrings. OnBest is for job files; a plan has one of the other two, or none.
const (
	OnBest  Centring = "best"
	OnPrint Centring = "print"
	OnJoint Centring = "joint"
)

// Order is the order of printing.
type Order string

// The orders.
const (
	CentreOut Order = "centre-out"
	RowByRow  Order = "rows"
)
