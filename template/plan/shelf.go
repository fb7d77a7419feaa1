package plan

import (
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// Shelf says what every block gives on every item, for a job without any pass: the maker's
// shelf, to choose from.
type Shelf struct {
	Job   *job.Job
	Items []ShelfItem
}

// ShelfItem is one item with every block of the job.
type ShelfItem struct {
	*ItemPlan // without passes
	Fits      []ShelfFit
}

// ShelfFit is one block tried on one item.
type ShelfFit struct {
	Block *job.Block
	Pass  *PassPlan // nil: the block does not fit
	Why   string    // where it does not fit, in a few words why; "" where that is not known
}

// ShelfGap is how far apart the prints of a shelf stand: about 1 mm between stand-alone prints
// is common practice, with no published source.
const ShelfGap = 1 * geometry.Millimetre

// IsShelf tells whether a job has no pass at all.
func IsShelf(j *job.Job) bool {
	return !slices.ContainsFunc(j.Items, func(it *job.Item) bool { return len(it.Passes) > 0 })
}

// NewShelf tries every block of a checked job on every item, in a straight repeat.
func NewShelf(job *job.Job) *Shelf {
	shelf := &Shelf{Job: job}
	for _, item := range job.Items {
		area := newArea(item)
		si := ShelfItem{ItemPlan: &ItemPlan{Item: item, Area: area, Flat: area.Flat}}
		for _, block := range job.Blocks {
			fit := ShelfFit{Block: block}
			pass := shelfPass(block)
			pp, err := planPass(job, item, area, pass, mostPrints)
			if err == nil {
				fit.Pass = pp
			} else {
				fit.Why = newLayout(area, pass).tooLarge(job.Units)
			}
			si.Fits = append(si.Fits, fit)
		}
		shelf.Items = append(shelf.Items, si)
	}
	return shelf
}

// shelfPass is a straight pass of a block, its prints ShelfGap apart.
func shelfPass(block *job.Block) *job.Pass {
	gap := job.Gap{Least: ShelfGap, Most: ShelfGap}
	return &job.Pass{
		Name: block.Name, Block: block, Repeat: job.Straight, Gap: job.Gaps{Across: gap, Down: gap},
		CentreAcross: job.OnBest, CentreDown: job.OnBest, Turns: job.Turns{{0}}, Order: job.CentreOut,
	}
}

// tooLarge says in a few words by how much a block is too large, or that it is too small for
// its prints to be worked out; "" where its bounds have room in those of the area.
func (l layout) tooLarge(u geometry.Unit) string {
	room := l.area.Rect.Size()
	if l.area.around > 0 {
		room.W = l.area.around - l.leastGap().Across
	}
	if l.area.Flat != nil {
		room.H = l.area.slant[1] - l.area.slant[0]
	}
	var over string
	if wide := l.cell.W - room.W; wide > geometry.Tolerance {
		over = u.Format(u.Up(wide)) + " too wide"
	}
	if high := l.cell.H - room.H; high > geometry.Tolerance {
		if over != "" {
			over += " and "
		}
		over += u.Format(u.Up(high)) + " too high"
	}
	if over == "" && l.roughCount() > mostPrints {
		over = "too small, for it would make too many prints"
	}
	return over
}
