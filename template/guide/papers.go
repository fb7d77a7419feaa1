package guide

import (
	"cmp"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
	"underlay/template/job"
	"underlay/template/plan"
)

// SheetCount is how many sheets of a paper a guide takes.
type SheetCount struct {
	Stock  paper.Stock
	Sheets int
	// Fewest marks the smallest of the papers that take the fewest sheets, "one sheet" not
	// counted.
	Fewest bool
}

// SheetCounts returns how many sheets a face's guide takes of each paper common where the
// job's units are, of the job's own, and of "one sheet" (which is always one): the smallest
// first, rolls after sheets. Margin, overlap, reach, extent and correction are the job's. They
// are the sheets that Document makes, those that would be empty left out; where there are more
// than a job may take, the empty ones are counted too. A paper too small for margin and
// overlap, or too short for one sheet, is not listed.
func SheetCounts(p *plan.Plan, face plan.FacePlan) []SheetCount {
	face = face.Laid()
	j := p.Job
	g := drawIn(j, face, bounds(face.Item, j))
	planner := planner.NewPlanner(g.sheetLayout(shortest(j, face)))
	var counts []SheetCount
	fewest := -1
	for _, stock := range commonStocks(j) {
		setup := SetupOf(j)
		setup.Stock = stock
		n, may, err := atMost(j, face.Item, setup, 0)
		if err != nil {
			continue
		}
		if may {
			tiling, err := g.spread(planner, setup)
			if err != nil {
				continue
			}
			n = tiling.Leaves()
		}
		if !stock.OneSheet && (fewest < 0 || n < counts[fewest].Sheets) {
			fewest = len(counts)
		}
		counts = append(counts, SheetCount{Stock: stock, Sheets: n})
	}
	if fewest >= 0 {
		counts[fewest].Fewest = true
	}
	return counts
}

// ShorterReach returns how many sheets of the job's paper a face's guide would take with a reach
// of ShortReach, and how many it takes, where the job asks for a longer one and that takes more.
func ShorterReach(p *plan.Plan, face plan.FacePlan) (sheets, now int, saves bool) {
	face = face.Laid()
	j := p.Job
	if j.Paper.LeastReach <= job.ShortReach || unnamedTapes(j, face, job.ShortReach) > unnamedTapes(j, face, j.Paper.Reach) {
		return 0, 0, false
	}
	g := drawIn(j, face, bounds(face.Item, j))
	var counts [2]int
	for i, least := range []geometry.Length{job.ShortReach, j.Paper.LeastReach} {
		if _, may, err := atMost(j, face.Item, SetupOf(j), 0); err != nil || !may {
			return 0, 0, false
		}
		tiling, err := g.spread(planner.NewPlanner(g.sheetLayout(least)), SetupOf(j))
		if err != nil {
			return 0, 0, false
		}
		counts[i] = tiling.Leaves()
	}
	return counts[0], counts[1], counts[0] < counts[1]
}

// commonStocks returns the papers a maker with the job's units can buy, the job's own, and
// "one sheet", in order of size.
func commonStocks(j *job.Job) []paper.Stock {
	names := []string{"A4", "A3", "A2", "A1", "A0"}
	if j.Units == geometry.UnitInch {
		names = []string{"Letter", "Legal", "Tabloid", "ANSI C", "ANSI D", "ANSI E"}
	}
	var stocks []paper.Stock
	for _, s := range paper.Stocks() {
		if slices.Contains(names, s.Name) || s.Name == j.Paper.Stock.Name {
			stocks = append(stocks, s)
		}
	}
	one := paper.Stock{Name: "one sheet", OneSheet: true}
	for _, s := range []paper.Stock{j.Paper.Stock, one} {
		if !slices.ContainsFunc(stocks, func(t paper.Stock) bool { return t.Name == s.Name }) {
			stocks = append(stocks, s)
		}
	}
	slices.SortStableFunc(stocks, func(a, b paper.Stock) int {
		kind := func(s paper.Stock) int {
			switch {
			case s.OneSheet:
				return 2
			case s.Roll:
				return 1
			}
			return 0
		}
		return cmp.Or(cmp.Compare(kind(a), kind(b)), cmp.Compare(a.Size.W*a.Size.H, b.Size.W*b.Size.H))
	})
	return stocks
}
