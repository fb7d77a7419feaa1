package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// onDrum sets a lattice out round a drum laid flat. A whole number goes round C, the width of
// the flat shade: n = floor(C / (w + g)) with the least gap g, and the gap is then C/n - w.
// Rows are as on any cloth. The prints that lie across the seam are named at the left edge.
func onDrum(t lattice) repeat {
	r := t.repeat()
	r.ways = func(l layout) ([]Choice, error) {
		n, _, err := t.closing(l, l.mostRoundDrum())
		if err != nil {
			return nil, err
		}
		if n == 0 {
			return nil, errNoneRound
		}
		gap := job.Spacing{Across: l.area.around/geometry.Length(n) - l.cell.W, Down: l.pass.Gap.Down.Least}
		if t.oneGap {
			gap.Down = gap.Across
		}
		choices := t.waysFrom(l, gap)
		for i := range choices {
			choices[i].Columns = n
		}
		return choices, nil
	}
	r.notes = func(l layout, c Choice) []string { return t.closingNotes(l, c, l.mostRoundDrum()) }
	r.sizes, r.middle = t.drumSizes, t.middle
	return r
}

// mostRoundDrum is how many prints go round with the least gap.
func (l layout) mostRoundDrum() int {
	pitch := l.cell.W + l.pass.Gap.Across.Least
	return int(math.Floor(float64((l.area.around + geometry.Tolerance) / pitch)))
}
