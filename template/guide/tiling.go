package guide

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// checkRoll refuses a roll that does not take in the width of one print: its guide would be
// all joins.
func checkRoll(j *job.Job, ip *plan.ItemPlan) error {
	if !j.Paper.Stock.Roll {
		return nil
	}
	across := j.Printer.Scale().OnPage(false).Across
	usable := (j.Paper.Stock.Size.W - 2*j.Paper.Margin) / geometry.Length(across)
	for _, p := range ip.Passes {
		if w := p.Cell().W; w > usable+geometry.Tolerance {
			return job.Problems{j.Problem(ip.Item.Line, "item %s: the paper %q shows %s inside its margins, less than one print of the block %s, %s wide; write a wider roll, or a sheet such as \"A4\"",
				words.Quote(ip.Item.Name), j.Paper.Stock.Name, j.Units.Format(usable), words.Quote(p.Pass.Block.Name), j.Units.Format(w))}
		}
	}
	return nil
}

// MostSheets is the most sheets a job may take.
const MostSheets = 2000

// bounds is the part of the item's frame its guide takes up.
func bounds(ip *plan.ItemPlan, job *job.Job) geometry.Rect {
	r := ip.Area.ClothBounds
	if path, _ := seamLap(ip); path != nil {
		r = r.Union(path.Bounds())
	}
	return r.Grow(job.Paper.Reach)
}

// Tile spreads an item's guide over the job's paper. With the extent "edges" the sheets that
// lie wholly on the cloth, clear of its edge, are left out.
func Tile(j *job.Job, ip *plan.ItemPlan) (paper.Tiling, error) {
	p := j.Paper
	t, err := paper.Tile(bounds(ip, j), SetupOf(j))
	if cloth := ip.Item.Outline; err == nil && p.Extent == job.EdgesExtent && !cloth.None() {
		t = t.Without(func(s paper.Sheet) bool {
			return cloth.HoldsClear(geometry.RectOutline(s.Area), 0.01*geometry.Millimetre)
		})
	}
	return t, err
}

// countSheets returns how many sheets tile makes, without making millions of them: a grid of
// n has at least 4 sqrt(n) - 4 along its edges.
func countSheets(j *job.Job, ip *plan.ItemPlan) (int, error) {
	p := j.Paper
	n, err := paper.CountSheets(bounds(ip, j), SetupOf(j))
	const tooMany = (MostSheets/4 + 2) * (MostSheets/4 + 2)
	if err != nil || p.Extent != job.EdgesExtent || n <= MostSheets || n > tooMany {
		return n, err
	}
	t, err := Tile(j, ip)
	return len(t.Sheets), err
}

// sheetWords says why a guide cannot be spread over the paper, in the maker's unit.
func sheetWords(j *job.Job, err error) string {
	if long, ok := errors.AsType[paper.TooLong](err); ok {
		return long.Words(j.Units)
	}
	return err.Error()
}

// SetupOf is what the job's guides are printed on.
func SetupOf(j *job.Job) paper.Setup {
	return paper.Setup{Stock: j.Paper.Stock, Margin: j.Paper.Margin, Overlap: j.Paper.Overlap, Scale: j.Printer.Scale()}
}

// checkSheets refuses a guide of more sheets than a job may take, where the guides before it
// took so many, and says what would do.
func checkSheets(j *job.Job, ip *plan.ItemPlan, before int) error {
	p := j.Paper
	if err := checkRoll(j, ip); err != nil {
		return err
	}
	n, err := countSheets(j, ip)
	if err != nil {
		return job.Problems{j.Problem(ip.Item.Line, "item %s: %s", words.Quote(ip.Item.Name), sheetWords(j, err))}
	}
	if before+n <= MostSheets {
		return nil
	}
	what := "write a larger paper"
	for _, s := range largerStocks() {
		setup := SetupOf(j)
		setup.Stock = s
		if m, err := paper.CountSheets(bounds(ip, j), setup); err == nil && before+m <= MostSheets {
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
