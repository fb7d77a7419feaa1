package plan

import (
	"underlay/template/job"
)

// brick sets prints out in rows, each moved along from the one above by a share f of the
// pitch: row k by frac(k f). With 1/2 that is every other row; the origins are then the centred
// rectangular lattice (International Tables for Crystallography A, plane group cm).
func brick(s surface) repeat {
	return s.lattice(lattice{pitch: facePitch, step: func(p *job.Pass) float64 { return p.Step }})
}
