package paper

import (
	"underlay/geometry"
)

// The two bars of the ruler page, as long as they are drawn before any correction.
const (
	RulerAcross = 180 * geometry.Millimetre
	RulerDown   = 250 * geometry.Millimetre
)

// Correction returns the scale for a printer that made the bars of the ruler page across and down
// long: what it needs drawn larger or smaller to come out at true size. Across is the short way
// of an upright sheet, the way the print head or the laser sweeps; down is the way the paper
// travels. A length of 0 stands for a bar that was not measured, and corrects nothing.
func Correction(across, down geometry.Length) Scale {
	s := Scale{1, 1}
	if across > 0 {
		s.Across = float64(RulerAcross / across)
	}
	if down > 0 {
		s.Down = float64(RulerDown / down)
	}
	return s
}

// OnPage returns a printer's correction along a page's own x and y. A lying page is wider than
// tall, but it goes through the printer on the same paper as an upright one, turned by the driver:
// its x is then the printer's way down, and its y the printer's way across. So it is with a length
// of a roll that lies along the roll: across is the roll's width.
func (s Scale) OnPage(lying bool) Scale {
	if lying {
		return s.full().Swap()
	}
	return s.full()
}
