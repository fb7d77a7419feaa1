package plan

import (
	"slices"
	"time"

	"underlay/template/job"
)

// Total is what one block needs in one colour over the whole job.
type Total struct {
	Block, Colour string
	Prints        int
	// Paint in millilitres: printed face x inked x the maker's paint-cover, shared evenly
	// between the colours of a pass. 0 where the job does not give these.
	Paint float64
}

// Totals are what the whole job takes.
type Totals struct {
	Pieces int // items, all quantities together
	Prints int
	Rows   []Total // by block, then colour, as they come in the job
	// Colourings are what the pieces in each of its colours take, of the items with colourways.
	Colourings []ColouringTotal
	// Bench is the time at the bench at the maker's own pace; 0 where it is not given.
	Bench time.Duration
}

// ColouringTotal is what the pieces of an item that are printed in the same colours take.
type ColouringTotal struct {
	job.Colouring
	Item   *job.Item
	Prints int
	Rows   []Total
}

// NewTotals adds up the job: every face of every piece of every item, in its colours.
func NewTotals(p *Plan) Totals {
	var t Totals
	pace := p.Job.Printing
	seconds := 0.0
	for _, ip := range p.Items {
		t.Pieces += ip.Item.Quantity * ip.Item.Pieces.Count()
		for _, c := range ip.Item.Colourings() {
			all := ColouringTotal{Colouring: c, Item: ip.Item}
			ip.eachPrinted(c, func(b *job.Block, prints int, colours []string) {
				all.Prints += prints
				each := distinct(colours)
				seconds += float64(prints) * (pace.SecondsAPrint + pace.SecondsAColour*float64(len(each)-1))
				paint := float64(prints) * b.Face.Area() * 1e-6 * b.Inked * pace.PaintCover / float64(len(colours))
				for _, colour := range each {
					share := paint * float64(countOf(colours, colour))
					t.Rows = addTo(t.Rows, b.Name, colour, prints, share)
					all.Rows = addTo(all.Rows, b.Name, colour, prints, share)
				}
			})
			t.Prints += all.Prints
			if len(ip.Item.Colourways) > 0 {
				t.Colourings = append(t.Colourings, all)
			}
		}
	}
	if pace.HasSecondsPrint {
		t.Bench = time.Duration(seconds * float64(time.Second))
	}
	return t
}

// eachPrinted calls visit for each block of each pass that is printed in a colouring: with its
// prints on all pieces and faces that are, and the colours of the pass as they are there.
func (ip *ItemPlan) eachPrinted(c job.Colouring, visit func(b *job.Block, prints int, colours []string)) {
	for _, cloth := range ip.Cloths() {
		for _, pp := range cloth.Printed() {
			faces := 0
			for _, f := range cloth.PrintedOn(pp.Pass) {
				if c.On(f) {
					faces++
				}
			}
			colours := colourNames(pp.Pass)
			for i, name := range colours {
				colours[i] = c.Colour(name)
			}
			for _, b := range pp.Blocks() {
				if n := pp.PrintsOf(b) * c.Pieces * faces; n > 0 {
					visit(b, n, colours)
				}
			}
		}
	}
}

// distinct returns colours without those that come again: two may be swapped for the same one.
func distinct(colours []string) []string {
	var each []string
	for _, c := range colours {
		if !slices.Contains(each, c) {
			each = append(each, c)
		}
	}
	return each
}

func countOf(colours []string, colour string) int {
	n := 0
	for _, c := range colours {
		if c == colour {
			n++
		}
	}
	return n
}

// addTo adds prints and paint to the row of a block and a colour.
func addTo(rows []Total, block, colour string, prints int, paint float64) []Total {
	i := slices.IndexFunc(rows, func(r Total) bool { return r.Block == block && r.Colour == colour })
	if i < 0 {
		i = len(rows)
		rows = append(rows, Total{Block: block, Colour: colour})
	}
	rows[i].Prints += prints
	rows[i].Paint += paint
	return rows
}

// colourNames are a pass's colours; one without a name where the job names none.
func colourNames(p *job.Pass) []string {
	if len(p.Colours) == 0 {
		return []string{"one colour"}
	}
	return slices.Clone(p.Colours)
}
