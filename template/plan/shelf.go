package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// Shelf says what every block gives on every item, for a job without any pass: the maker's
// shelf, to choose from.
type Shelf struct {
	Job   *job.Job
	Gap   geometry.Length // between prints; round a shade it is opened until the repeat closes
	Items []ShelfItem
}

// ShelfItem is one item with every block of the job.
type ShelfItem struct {
	*ItemPlan            // without passes
	Fits      []ShelfFit // the best first
}

// ShelfFit is one block tried on one item.
type ShelfFit struct {
	Block  *job.Block
	Turned bool   // it lies on its side, which gives more prints
	Choice Choice // of no print: the block does not fit
	Why    string // where it does not fit, in a few words why; "" where that is not known
}

// Fits tells whether at least one print does.
func (f ShelfFit) Fits() bool { return f.Choice.Count > 0 }

// ShelfGap is how far apart the prints of a shelf stand unless the maker says: about 1 mm between
// stand-alone prints is common practice, with no published source.
const ShelfGap = 1 * geometry.Millimetre

// The most a shelf tries: so many blocks on items, and so many prints in all.
const (
	mostPairs       = 10_000
	mostShelfPrints = 10_000_000
)

// IsShelf tells whether a job has no pass at all.
func IsShelf(j *job.Job) bool {
	return !slices.ContainsFunc(j.Items, func(it *job.Item) bool { return len(it.Passes) > 0 })
}

// NewShelf tries every block of a checked job on every item, in a straight repeat with the gap
// given, upright and on its side. On each item the block whose prints take up most of the cloth
// comes first. Of each it keeps how many prints there are and what border they leave, and not
// the prints. The error is of type Problems: a shelf of more than can be tried.
func NewShelf(j *job.Job, gap geometry.Length) (*Shelf, error) {
	if n := len(j.Blocks) * len(j.Items); n > mostPairs {
		return nil, shelfProblem(j, fmt.Sprintf("there are %s pairs of a block and an item, and %s are tried at once",
			words.PlainNumber(float64(n)), words.PlainNumber(mostPairs)))
	}
	shelf := &Shelf{Job: j, Gap: gap}
	prints := 0.0
	for _, item := range j.Items {
		ip := newItemPlan(item, j.Printing.Hand)
		shelf.Items = append(shelf.Items, ShelfItem{ItemPlan: ip})
		for _, block := range j.Blocks {
			for _, l := range shelfLayouts(j, ip.Item, ip.Area, block, gap) {
				if n := l.roughCount(); n <= 2*mostPrints {
					prints += n
				}
			}
		}
	}
	if prints > mostShelfPrints {
		return nil, shelfProblem(j, fmt.Sprintf("this makes about %s prints to try, and %s are tried at once", words.PlainNumber(prints), words.PlainNumber(mostShelfPrints)))
	}
	for i := range shelf.Items {
		si := &shelf.Items[i]
		for _, block := range j.Blocks {
			fit := ShelfFit{Block: block}
			for turned, l := range shelfLayouts(j, si.Item, si.Area, block, gap) {
				fit.try(l, turned > 0)
			}
			si.Fits = append(si.Fits, fit)
		}
		slices.SortStableFunc(si.Fits, func(a, b ShelfFit) int { return cmp.Compare(b.taken(gap), a.taken(gap)) })
	}
	return shelf, nil
}

// shelfLayouts are the ways a block lies on an item: upright, and on its side where that makes
// another face of it.
func shelfLayouts(j *job.Job, item *job.Item, area Area, block *job.Block, gap geometry.Length) []layout {
	turns := []int{0, 90}
	if block.Size.W == block.Size.H {
		turns = turns[:1]
	}
	layouts := make([]layout, len(turns))
	for i, turn := range turns {
		layouts[i] = newLayout(area, shelfPass(block, turn, gap))
		layouts[i].item, layouts[i].units = item, j.Units
	}
	return layouts
}

func shelfProblem(j *job.Job, text string) job.Problems {
	return job.Problems{j.Problem(0, "%s; leave some blocks or items out", text)}
}

// try works one way of laying the block out, and keeps it where it gives more prints than those
// tried before.
func (f *ShelfFit) try(l layout, turned bool) {
	choices, taken, _, err := l.choose(repeatOf(l), mostPrints)
	switch {
	case err == nil && choices[taken].Count > f.Choice.Count:
		f.Choice, f.Turned, f.Why = choices[taken], turned, ""
	case err != nil && !turned:
		f.Why = l.tooLarge(l.units)
	}
}

// taken is how much of the cloth a block's prints take up, each with the gap beside it, in square
// millimetres: of two blocks on one item, the one of which more is leaves less cloth over.
func (f ShelfFit) taken(gap geometry.Length) float64 {
	return math.Round(float64(f.Choice.Count) * float64((f.Block.Size.W+gap)*(f.Block.Size.H+gap)))
}

// shelfPass is a straight pass of a block.
func shelfPass(block *job.Block, turn int, apart geometry.Length) *job.Pass {
	gap := job.Gap{Least: apart, Most: apart}
	return &job.Pass{
		Name: block.Name, Block: block, Repeat: job.Straight, Gap: job.Gaps{Across: gap, Down: gap},
		CentreAcross: job.OnBest, CentreDown: job.OnBest, Turns: job.Turns{{turn}}, Order: job.CentreOut,
	}
}

// tooLarge says in a few words by how much a block is too large, or that it is too small for
// its prints to be worked out; "" where its bounds have room in those of the area.
func (l layout) tooLarge(u geometry.Unit) string {
	room := l.area.surface.room(l)
	over := overWords(geometry.Size{W: l.cell.W - room.W, H: l.cell.H - room.H}, u)
	if over == "" && l.roughCount() > mostPrints {
		return "too small, for it would make too many prints"
	}
	return over
}
