package guide

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// strip is what every sheet of a guide says about itself.
func strip(f plan.FacePlan, j *job.Job, drawing *paper.Drawing) paper.Strip {
	lines := []string{f.Label()}
	if len(f.Passes) == 1 {
		lines = append(lines, printWords(f.Passes[0].PassPlan, j.Units), BorderWords(j.Units, f.Passes[0].Choice().Border))
	} else {
		for i, p := range f.Passes {
			if i == 2 && len(f.Passes) > 3 {
				lines = append(lines, fmt.Sprintf("and %d passes more", len(f.Passes)-2))
				break
			}
			lines = append(lines, printWords(p.PassPlan, j.Units))
		}
	}
	if n := LeftOut(f, j, drawing); n > 0 {
		lines = append(lines, words.Counted(n, "print has", "prints have")+" no room for a number: see the bench sheet")
	}
	for i, l := range lines {
		lines[i] = paper.Shorten(l, 2.5, false, 90)
	}
	return paper.Strip{Lines: lines, Mark: Mark(j, f), Inches: j.Units == geometry.UnitInch}
}

// LeftOut returns how many prints of a guide have no number on it, for want of room in the print
// and beside it.
func LeftOut(f plan.FacePlan, j *job.Job, drawing *paper.Drawing) int {
	if j.Paper.Extent == job.EdgesExtent {
		return 0
	}
	n := f.Count()
	for _, l := range drawing.Labels {
		if l.Role.Kind == RoleNumber {
			n--
		}
	}
	return n
}
