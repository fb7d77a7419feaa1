package guide

import (
	"slices"
	"strings"

	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

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

// Left says, a sentence each, what the guide has no room for: numbers of prints, and words by
// ticks.
func (g Guide) Left(j *job.Job) []string {
	var left []string
	if n := LeftOut(g.Face, j, g.Drawing); n > 0 {
		left = append(left, words.Counted(n, "print has", "prints have")+" no room for a number on the guide; look for it on the bench sheet")
	}
	var names []string
	for _, name := range g.Unnamed {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) > 0 {
		left = append(left, "the guide has no room for the words "+strings.Join(quoted(names), ", "))
	}
	return left
}

func quoted(names []string) []string {
	all := make([]string, len(names))
	for i, name := range names {
		all[i] = words.Quote(name)
	}
	return all
}
