package guide

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// checkRoll refuses a roll that does not take in one print either way: its guide would be all
// joins.
func checkRoll(j *job.Job, ip *plan.ItemPlan) error {
	if !j.Paper.Stock.Roll {
		return nil
	}
	across := j.Printer.Scale().OnPage(false).Across
	usable := (j.Paper.Stock.Size.W - 2*j.Paper.Margin) / geometry.Length(across)
	for _, p := range ip.Passes {
		place := p.Pass.Place()
		if w := min(place.W, place.H); w > usable+geometry.Tolerance {
			return job.Problems{j.Problem(ip.Item.Line, "item %s: the paper %q shows %s inside its margins, less than one print of the block %s, %s wide; write a wider roll, or a sheet such as \"A4\"",
				words.Quote(ip.Item.Name), j.Paper.Stock.Name, j.Units.Format(usable), words.Quote(p.Pass.Block.Name), j.Units.Format(w))}
		}
	}
	return nil
}

// MostSheets is the most sheets a job may take.
const MostSheets = 2000

// mostCounted is the most sheets of which some may turn out to have nothing to show: a ring
// round n of them takes at least 4 sqrt(n) - 4.
const mostCounted = (MostSheets/4 + 2) * (MostSheets/4 + 2)

// atMost returns how many sheets of a setup a guide takes if none of them is empty, and whether
// a job may take as many, or as many as are left of them.
func atMost(j *job.Job, ip *plan.ItemPlan, setup paper.Setup, before int) (n int, may bool, err error) {
	l := planner.Layout{Bounds: bounds(ip, j), Least: shown(ip, j.Paper.LeastReach)}
	n, err = planner.CountSheets(l, setup)
	return n, before+n <= MostSheets || j.Paper.Extent == job.EdgesExtent && n <= mostCounted, err
}

// sheetWords says why a guide cannot be spread over the paper, in the maker's unit.
func sheetWords(j *job.Job, err error) string {
	if long, ok := errors.AsType[planner.TooLong](err); ok {
		return long.Words(j.Units)
	}
	return err.Error()
}

// checkSheets refuses a guide of more sheets than a job may take, where the guides before it
// took so many, before it is drawn.
func checkSheets(j *job.Job, ip *plan.ItemPlan, before int) error {
	if err := checkRoll(j, ip); err != nil {
		return err
	}
	n, may, err := atMost(j, ip, SetupOf(j), before)
	if err != nil {
		return job.Problems{j.Problem(ip.Item.Line, "item %s: %s", words.Quote(ip.Item.Name), sheetWords(j, err))}
	}
	if !may {
		return tooManySheets(j, ip, n, before)
	}
	return nil
}

// tooManySheets refuses a guide of n sheets and says what would do.
func tooManySheets(j *job.Job, ip *plan.ItemPlan, n, before int) error {
	p := j.Paper
	what := "write a larger paper"
	for _, s := range largerStocks() {
		setup := SetupOf(j)
		setup.Stock = s
		if m, _, err := atMost(j, ip, setup, before); err == nil && before+m <= MostSheets {
			what = fmt.Sprintf("paper %q takes %s", s.Name, words.PlainNumber(float64(m)))
			break
		}
	}
	if p.Extent != job.EdgesExtent {
		what += `, and extent = "edges" leaves out the sheets inside the cloth`
	}
	return job.Problems{j.Problem(ip.Item.Line, "item %s: its guide takes %s sheets of %s, and a job may take %s; %s",
		words.Quote(ip.Item.Name), words.PlainNumber(float64(n)), p.Stock.Name, words.PlainNumber(MostSheets), what)}
}

// largerStocks are the papers to offer: what most printers take, then ever larger ones.
func largerStocks() []paper.Stock {
	stocks := slices.DeleteFunc(paper.Stocks(), func(s paper.Stock) bool {
		return !slices.Contains([]string{"A0", "A1", "A2", "A3", "A4"}, s.Name)
	})
	slices.SortFunc(stocks, func(a, b paper.Stock) int { return cmp.Compare(a.Size.W, b.Size.W) })
	return stocks
}
