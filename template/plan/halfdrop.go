package plan

import (
	"underlay/template/job"
)

// halfDrop sets prints out in columns, each moved down from the one left of it by a share f of
// the pitch: column k by frac(k f). It is the brick repeat with rows and columns exchanged.
func halfDrop(s surface) repeat {
	return s.lattice(lattice{pitch: facePitch, step: func(p *job.Pass) float64 { return p.Step }, columns: true})
}
