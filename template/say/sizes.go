package say

import (
	"fmt"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
)

// nearMiss says what one more print across, or down, would take; "" where nothing would do.
func (f *fitText) nearMiss(m plan.NearMiss, pass *job.Pass) string {
	way := "across"
	if m.Down {
		way = "down"
	}
	var ways []string
	add := func(l *geometry.Length, format string) {
		if l != nil {
			ways = append(ways, fmt.Sprintf(format, f.change(*l)))
		}
	}
	add(m.Cloth, "%s more cloth")
	add(m.Border, "a border %s less on both sides")
	switch gap := pass.Gap.Across; {
	case pass.Gap.Down.Least < 0 || gap.Least < 0:
		add(m.Gap, "prints %s closer")
	case gap.Most > gap.Least || pass.Gap.Down.Most > pass.Gap.Down.Least:
		add(m.Gap, "a least gap %s less")
	default:
		add(m.Gap, "a gap %s less")
	}
	add(m.Block, "a block %s smaller")
	what := strconv.Itoa(m.Count) + " " + way
	switch {
	case len(ways) == 0:
		return ""
	case m.Count == 0 && m.Prints > 0:
		what = fmt.Sprintf("Room for more %s, %d prints in all,", way, m.Prints)
	case m.Count == 0:
		what = "Room for more " + way
	}
	return fmt.Sprintf("%s needs %s.", what, strings.Join(ways, ", or "))
}

// change writes the least change that will do, so it is never rounded down. A sixteenth of an
// inch is a coarse step for that: the millimetres are given too.
func (f *fitText) change(l geometry.Length) string {
	up := f.u.Format(f.u.Up(l))
	if f.u == geometry.UnitInch {
		up += " (" + geometry.UnitMM.Format(geometry.UnitMM.Up(l)) + ")"
	}
	return up
}
