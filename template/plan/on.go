package plan

import (
	"fmt"

	"underlay/template/job"
	"underlay/template/words"
)

// on registers prints on those of an earlier pass: each moved from its origin by the offset,
// turned as it is, and turned with it. They are printed in the order of that pass.
func on() repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			t := l.target.Choice()
			sites := l.registered()
			c := Choice{Pitch: t.Pitch, dropped: len(l.target.Prints) - len(sites)}
			if c.Pitch != (job.Spacing{}) {
				c.Gap = job.Spacing{Across: c.Pitch.Across - l.pass.Block.Size.W, Down: c.Pitch.Down - l.pass.Block.Size.H}
			}
			w := l.describe(c, sites)
			if w.dropped == 0 {
				w.Columns, w.Rows = t.Columns, t.Rows
			}
			w.RowCounts, w.ColumnCounts = nil, nil
			return []way{w}, nil
		},
		order: func(sites []Site, _ job.Hand) []int {
			order := make([]int, len(sites))
			for i := range order {
				order[i] = i
			}
			return order
		},
		notes: func(l layout, c Choice) []string {
			return append(l.droppedNote(c),
				fmt.Sprintf("each print is set on one of %s and in the order of that pass, so it needs no tape of its own and errors do not add up", words.Quote(l.target.Pass.Name)))
		},
	}
}

// registered returns the prints that lie on the area.
func (l layout) registered() []Site {
	var sites []Site
	for _, p := range l.target.Prints {
		s := p.Site
		s.Block, s.Part = nil, 0
		s.Origin = s.Origin.Add(l.pass.Offset.Turn(s.Turn))
		if s = l.area.surface.wrapped(l.area, s, p.Origin); l.holds(s) {
			sites = append(sites, s)
		}
	}
	return sites
}
