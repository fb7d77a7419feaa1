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
	more := f.more(m, pass)
	if len(more.Ways) == 0 {
		return ""
	}
	var ways []string
	for _, w := range more.Ways {
		ways = append(ways, w.Text)
	}
	return fmt.Sprintf("%s %s.", more.What, strings.Join(ways, ", or "))
}

// more says what one more print across, or down, would take.
func (f *fitText) more(m plan.NearMiss, pass *job.Pass) More {
	way := "across"
	if m.Down {
		way = "down"
	}
	what := strconv.Itoa(m.Count) + " " + way
	switch {
	case m.Count == 0 && m.Prints > 0:
		what = fmt.Sprintf("Room for more %s, %d prints in all,", way, m.Prints)
	case m.Count == 0:
		what = "Room for more " + way
	}
	more := More{Down: m.Down, What: what + " needs"}
	add := func(c Change, l *geometry.Length, format string) {
		if l != nil {
			more.Ways = append(more.Ways, Way{c, f.u.Up(*l), fmt.Sprintf(format, f.change(*l))})
		}
	}
	add(MoreCloth, m.Cloth, "%s more cloth")
	add(LessBorder, m.Border, "a border %s less on both sides")
	switch gap := pass.Gap.Across; {
	case pass.Gap.Down.Least < 0 || gap.Least < 0:
		add(LessGap, m.Gap, "prints %s closer")
	case gap.Most > gap.Least || pass.Gap.Down.Most > pass.Gap.Down.Least:
		add(LessGap, m.Gap, "a least gap %s less")
	default:
		add(LessGap, m.Gap, "a gap %s less")
	}
	add(SmallerBlock, m.Block, "a block %s smaller")
	return more
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
