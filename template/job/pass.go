package job

import (
	"underlay/geometry"
)

// The sides of an item.
var Sides = []string{"top", "right", "bottom", "left"}

// The repeats of a job file, the default first.
var Repeats = []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "frame", "rings"}

// Lattices are the repeats that go on and on both ways.
var Lattices = []string{"straight", "brick", "half-drop", "honeycomb", "diagonal"}

// Spacing is one length across and one down.
type Spacing struct{ Across, Down geometry.Length }

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

// Seated tells whether the pass's prints are placed by those of another pass.
func (p *Pass) Seated() bool { return p.Between != nil || p.On != nil }

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
