package guide

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
)

// nameRoom is the longest name that is shown whole wherever it stands, in letters of the
// smallest height papers are read at.
const nameRoom = 80 * geometry.Millimetre

// Warnings says what will not come out on the papers as it is written: names, and ticks where
// there is no room for them.
func Warnings(j *job.Job) []string {
	var warnings []string
	seen := map[string]bool{}
	check := func(what, name string) {
		if seen[name] {
			return
		}
		seen[name] = true
		warn := func(text string) {
			warnings = append(warnings, fmt.Sprintf("%s %q %s", what, paper.Shorten(name, 2.5, false, nameRoom), text))
		}
		if _, whole := paper.Legible(name); !whole {
			warn("has letters the papers cannot show; each is drawn as □")
		}
		if strings.ContainsAny(name, "\r\n\t\v\f") {
			warn("has a line break or a tab in it; the papers show a space")
		}
		if paper.TextWidth(name, 2.5, false) > nameRoom {
			warn("is long; the papers show the beginning of it")
		}
	}
	check("the title", j.Title)
	for _, b := range j.Blocks {
		check("the block", b.Name)
	}
	for _, it := range j.Items {
		check("the item", it.Name)
		for _, f := range it.Faces {
			check("the face", f)
		}
		for _, z := range it.Zones {
			check("the keep-clear zone", z.Name)
		}
		for _, p := range it.Passes {
			check("the pass", p.Name)
			for _, c := range p.Colours {
				check("the colour", c)
			}
		}
	}
	short := func(what string) {
		warnings = append(warnings, fmt.Sprintf("a reach of %s has no room for %s; write reach = %q to have them",
			j.Units.Format(j.Paper.Reach), what, j.Units.Format(job.UsualReach)))
	}
	switch {
	case j.Paper.Reach < leastReach:
		short("the ticks outside the cloth")
	case j.Paper.Reach < namedReach-geometry.Tolerance:
		short("all the names by the ticks")
	}
	return warnings
}
