package paper

import "underlay/geometry"

// The two bars of the ruler page, as long as they are drawn before any correction.
const (
	RulerAcross = 180 * geometry.Millimetre
	RulerDown   = 250 * geometry.Millimetre
)

// Scale is what a printer needs drawn larger or smaller to come out at true size: drawn =
// true size * scale. Across is the short way of an upright sheet, the way the print head or
// the laser sweeps; Down is the way the paper travels. The zero Scale corrects nothing.
type Scale struct{ Across, Down float64 }

// Correction returns the scale for a printer that made the bars of the ruler page across and
// down long. A length of 0 stands for a bar that was not measured, and corrects nothing.
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

// OnPage returns the factors along a page's own x and y. A lying page is wider than tall, but
// it goes through the printer on the same paper as an upright one, turned by the driver: its
// x is then the printer's way down, and its y the printer's way across.
func (s Scale) OnPage(lying bool) (x, y float64) {
	x, y = s.Across, s.Down
	if x <= 0 {
		x = 1
	}
	if y <= 0 {
		y = 1
	}
	if lying {
		return y, x
	}
	return x, y
}
