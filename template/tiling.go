package template

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// checkRoll refuses a roll that does not take in the width of one print: its guide would be
// all joins.
func (j *Job) checkRoll(ip *ItemPlan) error {
	if !j.Paper.Stock.Roll {
		return nil
	}
	across := j.Printer.Scale().OnPage(false).Across
	usable := (j.Paper.Stock.Size.W - 2*j.Paper.Margin) / geometry.Length(across)
	for _, p := range ip.Passes {
		if w := p.Cell().W; w > usable+geometry.Tolerance {
			return Problems{j.problem(ip.Item.Line, "item %s: the paper %q shows %s inside its margins, less than one print of the block %s, %s wide; write a wider roll, or a sheet such as \"A4\"",
				quote(ip.Item.Name), j.Paper.Stock.Name, j.Units.Format(usable), quote(p.Pass.Block.Name), j.Units.Format(w))}
		}
	}
	return nil
}

// mostSheets is the most sheets a job may take.
const mostSheets = 2000

// layout is the part of the item's frame its guide takes up.
func (ip *ItemPlan) layout(job *Job) geometry.Rect {
	r := ip.Area.cloth
	if path, _ := seamLap(ip); path != nil {
		r = r.Union(path.Bounds())
	}
	return r.Grow(job.Paper.Reach)
}

// tile spreads an item's guide over the job's paper. With the extent "edges" the sheets that
// lie wholly on the cloth, clear of its edge, are left out.
func (j *Job) tile(ip *ItemPlan) (paper.Tiling, error) {
	p := j.Paper
	t, err := paper.Tile(ip.layout(j), j.Setup())
	if cloth := ip.Item.Outline; err == nil && p.Extent == EdgesExtent && !cloth.None() {
		t = t.Without(func(s paper.Sheet) bool {
			return cloth.HoldsClear(geometry.RectOutline(s.Area), 0.01*geometry.Millimetre)
		})
	}
	return t, err
}

// countSheets returns how many sheets tile makes, without making millions of them: a grid of
// n has at least 4 sqrt(n) - 4 along its edges.
func (j *Job) countSheets(ip *ItemPlan) (int, error) {
	p := j.Paper
	n, err := paper.CountSheets(ip.layout(j), j.Setup())
	const tooMany = (mostSheets/4 + 2) * (mostSheets/4 + 2)
	if err != nil || p.Extent != EdgesExtent || n <= mostSheets || n > tooMany {
		return n, err
	}
	t, err := j.tile(ip)
	return len(t.Sheets), err
}

// sheetWords says why a guide cannot be spread over the paper, in the maker's unit.
func (j *Job) sheetWords(err error) string {
	if long, ok := errors.AsType[paper.TooLong](err); ok {
		return long.Words(j.Units)
	}
	return err.Error()
}

// Scale is what the printer needs drawn larger or smaller.
func (p Printer) Scale() paper.Scale { return paper.Correction(p.Across, p.Down) }

// Setup is what the job's guides are printed on.
func (j *Job) Setup() paper.Setup {
	return paper.Setup{Stock: j.Paper.Stock, Margin: j.Paper.Margin, Overlap: j.Paper.Overlap, Scale: j.Printer.Scale()}
}

// checkSheets refuses a guide of more sheets than a job may take, where the guides before it
// took so many, and says what would do.
func (j *Job) checkSheets(ip *ItemPlan, before int) error {
	p := j.Paper
	if err := j.checkRoll(ip); err != nil {
		return err
	}
	n, err := j.countSheets(ip)
	if err != nil {
		return Problems{j.problem(ip.Item.Line, "item %s: %s", quote(ip.Item.Name), j.sheetWords(err))}
	}
	if before+n <= mostSheets {
		return nil
	}
	what := "write a larger paper"
	for _, s := range largerStocks() {
		setup := j.Setup()
		setup.Stock = s
		if m, err := paper.CountSheets(ip.layout(j), setup); err == nil && before+m <= mostSheets {
			what = fmt.Sprintf("paper %q takes %s", s.Name, plainNumber(float64(m)))
			break
		}
	}
	if p.Extent != EdgesExtent {
		what += `, and extent = "edges" leaves out the sheets inside the cloth`
	}
	return Problems{j.problem(ip.Item.Line, "item %s: its guide takes %s sheets of %s, and a job may take %s; %s",
		quote(ip.Item.Name), plainNumber(float64(n)), p.Stock.Name, plainNumber(mostSheets), what)}
}

// largerStocks are the papers to offer: what most printers take, then ever larger ones.
func largerStocks() []paper.Stock {
	stocks := slices.DeleteFunc(paper.Stocks(), func(s paper.Stock) bool {
		return !slices.Contains([]string{"A0", "A1", "A2", "A3", "A4"}, s.Name)
	})
	slices.SortFunc(stocks, func(a, b paper.Stock) int { return cmp.Compare(a.Size.W, b.Size.W) })
	return stocks
}
