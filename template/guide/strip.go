package guide

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// strip is what every sheet of a guide says about itself.
func strip(f plan.FacePlan, job *job.Job) paper.Strip {
	lines := []string{f.Label()}
	if len(f.Passes) == 1 {
		lines = append(lines, printWords(f.Passes[0].PassPlan, job.Units), BorderWords(job.Units, f.Passes[0].Choice().Border))
	} else {
		for i, p := range f.Passes {
			if i == 2 && len(f.Passes) > 3 {
				lines = append(lines, fmt.Sprintf("and %d passes more", len(f.Passes)-2))
				break
			}
			lines = append(lines, printWords(p.PassPlan, job.Units))
		}
	}
	for i, l := range lines {
		lines[i] = paper.Shorten(l, 2.5, false, 90)
	}
	return paper.Strip{Lines: lines, Mark: Mark(job, f), Inches: job.Units == geometry.UnitInch}
}
