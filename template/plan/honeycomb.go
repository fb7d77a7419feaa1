package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// honeycomb sets round prints or hexagons out so that each has six neighbours, all with the
// same gap: rows (w + g) sqrt(3)/2 apart, every other one moved by half a pitch. Circles that
// touch then cover pi / (2 sqrt 3) of the plane, the most there is (Lagrange; Thue).
func honeycomb(s surface) repeat {
	return s.lattice(lattice{
		pitch: func(l layout, gap job.Spacing) job.Spacing {
			p := l.cell.W + gap.Across
			return job.Spacing{Across: p, Down: p * geometry.Length(math.Sqrt(3)/2)}
		},
		step:   func(*job.Pass) float64 { return 0.5 },
		oneGap: true,
	})
}
