package job

import (
	"underlay/geometry"
)

// Spacing is one length across and one down.
type Spacing struct{ Across, Down geometry.Length }

// Pass is one block printed all over one item, in one go.
type Pass struct {
	Name         string
	Block        *Block // of several, the first
	Face         string // "": every face
	Repeat       Repeat
	Gap          Gaps
	GapEven      bool    // a range opens as much across as down
	Exactly      Counts  // prints across and down; 0: as many as fit
	Step         float64 // brick and half-drop; 1/2 unless given
	GridTurn     geometry.Angle
	CentreAcross Centring
	CentreDown   Centring
	Turns        Turns
	Colours      []string // of several sets, the first
	Dabs         []Dab    // colours by part of the face; Colours then has each of theirs once
	Mix          Mix      // of several blocks, or colours in turn
	Order        Order
	EveryOther   bool   // every second print first, the others when those are dry
	Sides        Sides  // frame
	Tops         Tops   // frame
	Corner       *Block // of a frame's four corners; nil: they are taken by its sides
	Rings        int    // 0: as many as fit
	Places       []Place
	Toss         Toss
	Between      *Pass
	OpenEdges    bool
	Over         bool // meant to print over what is there already
	On           *Pass
	Offset       geometry.Point
	Line         int // of its heading in the job file; 0: none
}

// Place is where one print of a placed pass goes: the middle of its face, in the item's frame, and
// how the block is turned there.
type Place struct {
	At   geometry.Point
	Turn geometry.Angle
	Line int // in the job file; 0: none
}

// Toss is how the prints of a tossed pass are strewn.
type Toss struct {
	Seed    uint64 // the same seed strews them the same way again
	Count   int    // 0: as many as fit
	AnyTurn bool   // otherwise all stand upright
}

// Seated tells whether the pass's prints are placed by those of another pass.
func (p *Pass) Seated() bool { return p.Between != nil || p.On != nil }

// Host returns the pass whose prints place this one's; nil where it is not seated.
func (p *Pass) Host() *Pass {
	if p.Between != nil {
		return p.Between
	}
	return p.On
}

// Framed tells whether the pass is a frame, and not seated by another.
func (p *Pass) Framed() bool { return !p.Seated() && p.Repeat.Framed() }

// Slanted tells whether the pass is turned as a whole, and not seated by another.
func (p *Pass) Slanted() bool { return !p.Seated() && p.Repeat.Slanted() }

// Gap is the plain cloth between two prints: from Least to Most, the same unless the job
// gives a range. Negative: a lap.
type Gap struct{ Least, Most geometry.Length }

// Gaps are the gap across and the gap down.
type Gaps struct{ Across, Down Gap }

// Counts are a number of prints across and one down.
type Counts struct{ Across, Down int }

// Meet tells whether there are as many as are asked for; 0 asks for none.
func (n Counts) Meet(asked Counts) bool {
	return (asked.Across == 0 || n.Across == asked.Across) && (asked.Down == 0 || n.Down == asked.Down)
}

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
	ByColumn  Order = "columns"
)
