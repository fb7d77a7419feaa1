package guide

import (
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
)

// shortest returns how short the reach of a face's guide may be to save sheets: as short as the
// job allows, but not where that would leave out the name of a tape line, or what the figures are
// measured from, for which the whole reach has room.
func shortest(j *job.Job, face plan.FacePlan) geometry.Length {
	least := j.Paper.LeastReach
	if least < j.Paper.Reach && unnamedTapes(j, face, least) > unnamedTapes(j, face, j.Paper.Reach) {
		return j.Paper.Reach
	}
	return least
}

// unnamedTapes returns how many tape lines, and sides of the cloth, find no place for their words
// within a reach.
func unnamedTapes(j *job.Job, face plan.FacePlan, reach geometry.Length) int {
	g := newGuide(j, face, shown(face.Item, reach))
	g.drawTicks()
	n := 0
	for _, name := range g.unnamed {
		if strings.Contains(name, "tape") || strings.HasPrefix(name, "from ") {
			n++
		}
	}
	return n
}
