package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// diagonal is the straight repeat with grid and blocks both turned about the centre.
func diagonal(s surface) repeat {
	return s.lattice(lattice{pitch: facePitch, turn: func(p *job.Pass) geometry.Angle { return p.GridTurn }})
}
