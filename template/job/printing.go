package job

import (
	"underlay/geometry"
	"underlay/paper"
)

// MostOff is how far off the bars of the ruler page may be measured, as a share of their length.
const MostOff = 0.03

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

// Scale is what the printer needs drawn larger or smaller.
func (p Printer) Scale() paper.Scale { return paper.Correction(p.Across, p.Down) }
