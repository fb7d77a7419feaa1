package say

import (
	"fmt"
	"strings"

	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// papers says how many sheets of each paper a guide takes.
func (f *fitText) papers(face plan.FacePlan, counts []guide.SheetCount) {
	what := "The guide takes "
	if name := face.Name(); name != "" {
		what = "The guide for " + words.Shown(name) + " takes "
	}
	var parts []string
	fewest := ""
	for _, c := range counts {
		switch {
		case c.Stock.OneSheet:
			parts = append(parts, "all of it on one sheet")
		case len(parts) == 0:
			parts = append(parts, fmt.Sprintf("%s of %s", words.Counted(c.Sheets, "sheet", "sheets"), c.Stock.Name))
		default:
			parts = append(parts, fmt.Sprintf("%d of %s", c.Sheets, c.Stock.Name))
		}
		if c.Fewest {
			fewest = c.Stock.Name
		}
	}
	if len(parts) == 0 {
		return
	}
	text := what + strings.Join(parts, ", or ")
	if len(parts) > 2 {
		last := len(parts) - 1
		text = what + strings.Join(parts[:last], ", ") + ", or " + parts[last]
	}
	if fewest != "" {
		text += "; the smallest paper with the fewest sheets is " + fewest
	}
	f.say("  ", text+".")
}

// reach says what a shorter reach would save.
func (f *fitText) reach(p *plan.Plan, face plan.FacePlan) {
	if sheets, now, saves := guide.ShorterReach(p, face); saves {
		f.say("  ", fmt.Sprintf("A reach of %s would do with %s of %s and not %d; write reach = \"%s\", or leave reach out.",
			f.u.Format(job.ShortReach), words.Counted(sheets, "sheet", "sheets"), p.Job.Paper.Stock.Name, now, f.u.Format(job.ShortReach)))
	}
}
