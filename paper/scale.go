package paper

import (
	"math"

	"underlay/geometry"
)

// Scale is how many millimetres on paper a millimetre of a drawing takes, across the page and down
// it. A factor that is not above 0 stands for 1: the zero Scale is true size.
type Scale struct{ Across, Down float64 }

// full returns s with both factors said.
func (s Scale) full() Scale {
	if !(s.Across > 0) {
		s.Across = 1
	}
	if !(s.Down > 0) {
		s.Down = 1
	}
	return s
}

// Swap returns the scale with across and down for each other.
func (s Scale) Swap() Scale { return Scale{s.Down, s.Across} }

// Of returns what becomes of a way from one point of the drawing to another.
func (s Scale) Of(way geometry.Point) geometry.Point {
	s = s.full()
	return geometry.Point{X: way.X * geometry.Length(s.Across), Y: way.Y * geometry.Length(s.Down)}
}

// distance returns how far apart two points of the drawing are on paper, in millimetres.
func (s Scale) distance(a, b geometry.Point) float64 {
	return math.Hypot(float64(b.X-a.X)*s.Across, float64(b.Y-a.Y)*s.Down)
}
