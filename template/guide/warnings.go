package guide

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/sheets"
	"underlay/template/job"
)

// nameRoom is the longest name that is shown whole wherever it stands, in letters of the
// smallest height papers are read at; by ticks, where several passes are told apart, it is longName.
const nameRoom = 80 * geometry.Millimetre

// Warnings says what will not come out on the papers as it is written: names, and ticks where
// there is no room for them.
func Warnings(j *job.Job) []string {
	var warnings []string
	seen := map[string]bool{}
	check := func(what, name string, fits bool) {
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
		if !fits {
			warn("is long; where it has not room the papers show the beginning of it")
		}
	}
	short := func(name string) bool { return paper.TextWidth(name, 2.5, false) <= nameRoom }
	check("the title", j.Title, short(j.Title))
	for _, b := range j.Blocks {
		check("the block", b.Name, short(b.Name))
	}
	for _, it := range j.Items {
		check("the item", it.Name, short(it.Name))
		for _, f := range it.Faces {
			check("the face", f, short(f))
		}
		for _, z := range it.Zones {
			check("the keep-clear zone", z.Name, sheets.Fits(paper.Name{Text: z.Name, Of: z.Rect}))
		}
		byTicks := len(it.Passes) > 1 && j.Paper.Passes != job.PassesApart
		for _, p := range it.Passes {
			check("the pass", p.Name, short(p.Name) && (!byTicks || paper.TextWidth(p.Name, tickText, false) <= longName))
			for _, c := range p.Colours {
				check("the colour", c, short(c))
			}
		}
	}
	warnings = append(warnings, reachWarnings(j)...)
	return warnings
}

// reachWarnings says for what the reach has no room.
func reachWarnings(j *job.Job) []string {
	var warnings []string
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
