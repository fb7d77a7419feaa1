package paper

import (
	"math"
)

// Dashes returns the lengths of a line's dashes and gaps in turn, in millimetres; none for a
// continuous line. ISO 128-2 gives them as multiples of the line's width: dot 0.5, gap 3,
// short dash 6, dash 12, long dash 24. Lines narrower than 0.25 mm are dashed as that width is: finer ones run
// together on a poor printer. It loses dots shorter than that, which are made as long.
func (p Pen) Dashes() []float64 {
	const dot, gap, short, dash, long = 0.5, 3, 6, 12, 24
	var pattern []float64
	switch p.Type {
	case Dashed:
		pattern = []float64{dash, gap}
	case Chain:
		pattern = []float64{long, gap, dot, gap}
	case DoubleChain:
		pattern = []float64{long, gap, dot, gap, dot, gap}
	case Dotted:
		pattern = []float64{dot, gap}
	case LongShort:
		pattern = []float64{long, gap, short, gap}
	}
	for i := range pattern {
		pattern[i] = max(pattern[i]*max(float64(p.Width), 0.25), 0.25)
	}
	return pattern
}

// phase returns where in the pattern a line is that has run along millimetres of it.
func phase(pattern []float64, along float64) float64 {
	var period float64
	for _, d := range pattern {
		period += d
	}
	if period == 0 {
		return 0
	}
	return math.Mod(along, period)
}
