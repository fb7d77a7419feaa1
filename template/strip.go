package template

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
)

// strip is what every sheet of a guide says about itself.
func (f FacePlan) strip(job *Job) paper.Strip {
	lines := []string{f.Label()}
	if len(f.Passes) == 1 {
		lines = append(lines, f.Passes[0].printWords(job.Units), borderWords(job.Units, f.Passes[0].Choice().Border))
	} else {
		for i, p := range f.Passes {
			if i == 2 && len(f.Passes) > 3 {
				lines = append(lines, fmt.Sprintf("and %d passes more", len(f.Passes)-2))
				break
			}
			lines = append(lines, p.printWords(job.Units))
		}
	}
	for i, l := range lines {
		lines[i] = paper.Shorten(l, 2.5, false, 90)
	}
	return paper.Strip{Lines: lines, Mark: job.Mark(), Inches: job.Units == geometry.UnitInch}
}
