package plan

import (
	"cmp"
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// columnByColumn returns the order of printing from one side: column by column, each from the near
// edge; for a right-handed printer from the left, so that the arm does not lie on wet paint. Across, a
// column is what lies at one distance from the side.
func columnByColumn(sites []Site, across bool, hand job.Hand) []int {
	order := make([]int, len(sites))
	for i := range order {
		order[i] = i
	}
	side := 1
	if hand == job.LeftHand {
		side = -1
	}
	column := make([]int, len(sites))
	for i, s := range sites {
		column[i] = s.Column
	}
	if across {
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sites[a].Origin.X, sites[b].Origin.X) })
		for i, s := range order {
			if column[s] = 0; i > 0 {
				before := order[i-1]
				column[s] = column[before]
				if sites[s].Origin.X-sites[before].Origin.X > geometry.Tolerance {
					column[s]++
				}
			}
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(side*cmp.Compare(column[a], column[b]), cmp.Compare(sites[b].Origin.Y, sites[a].Origin.Y))
	})
	return order
}

// inRounds brings an order of printing to rounds, in which no two prints stand next to each other: in
// straight rows two, as on a chessboard; where rows or columns are moved, and every print has six
// beside it, three. The steps to those beside one are next. Round a shade two may meet at the seam all
// the same. The first round keeps to the order; in a later one those come first whose neighbours of
// earlier rounds have dried the longest.
func inRounds(order []int, sites []Site, near [][]int32, next []geometry.Site) {
	rounds := min(3, len(next))
	of := func(s Site) int {
		if rounds == 3 {
			return s.key.I + 2*s.key.J
		}
		return s.key.I + s.key.J
	}
	first := of(sites[order[0]])
	for i, s := range sites {
		sites[i].round = ((of(s)-first)%rounds + rounds) % rounds
	}
	slices.SortStableFunc(order, func(a, b int) int { return sites[a].round - sites[b].round })
	printed := make([]int, len(sites)) // when, from 1; 0: not yet
	for from := 0; from < len(order); {
		to := from
		for to < len(order) && sites[order[to]].round == sites[order[from]].round {
			to++
		}
		latest := func(i int) int {
			last := 0
			for _, n := range near[i] {
				last = max(last, printed[n])
			}
			return last
		}
		slices.SortStableFunc(order[from:to], func(a, b int) int { return latest(a) - latest(b) })
		for at := from; at < to; at++ {
			printed[order[at]] = at + 1
		}
		from = to
	}
}

// Rounds returns how many prints of the pass are made before those are left to dry, and how many
// then, and so on; none where they are made in one go.
func (p *PassPlan) Rounds() []int {
	var rounds []int
	for i, q := range p.Prints {
		if i == 0 || q.round != p.Prints[i-1].round || q.Part != p.Prints[i-1].Part {
			rounds = append(rounds, 0)
		}
		rounds[len(rounds)-1]++
	}
	if !p.Pass.EveryOther || len(rounds) < 2 {
		return nil
	}
	return rounds
}

// roundsNote says in how many goes a pass is printed.
func (p *PassPlan) roundsNote() string {
	rounds := p.Rounds()
	if rounds == nil {
		return ""
	}
	var counts []string
	for _, n := range rounds {
		counts = append(counts, fmt.Sprint(n))
	}
	return fmt.Sprintf("printed in %d goes, of %s prints: no two of one go stand side by side, and each go dries before the next", len(rounds), words.InWords(counts))
}
