package plan

import (
	"slices"
	"time"

	"underlay/template/job"
	"underlay/template/motif"
)

// Total is what one block needs in one colour over the whole job.
type Total struct {
	Block, Colour string
	Prints        int
	// Paint in millilitres: printed face x inked x the maker's paint-cover; of several colours each
	// has the part of the face that it is dabbed on, or without dabs an even share. 0 where the
	// job does not give these.
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
			ip.eachPrinted(c, func(b *job.Block, prints int, colours []colourShare) {
				all.Prints += prints
				seconds += float64(prints) * (pace.SecondsAPrint + pace.SecondsAColour*float64(len(colours)-1))
				paint := float64(prints) * b.Face.Area() * 1e-6 * pace.PaintCover
				for _, k := range colours {
					t.Rows = addTo(t.Rows, b.Name, k.colour, prints, paint*k.share)
					all.Rows = addTo(all.Rows, b.Name, k.colour, prints, paint*k.share)
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
// prints on all pieces and faces that are, and the colours on it as they are there.
func (ip *ItemPlan) eachPrinted(c job.Colouring, visit func(b *job.Block, prints int, colours []colourShare)) {
	for _, cloth := range ip.Cloths() {
		for _, pp := range cloth.Printed() {
			faces := 0
			for _, f := range cloth.PrintedOn(pp.Pass) {
				if c.On(f) {
					faces++
				}
			}
			for _, b := range pp.Blocks() {
				if n := pp.PrintsOf(b) * c.Pieces * faces; n > 0 {
					visit(b, n, coloursOn(b, pp.Pass, c))
				}
			}
		}
	}
}

// colourShare is a colour on a block, and the share of the block's whole face that carries its paint;
// 0 where the block does not say how much is inked.
type colourShare struct {
	colour string
	share  float64
}

// coloursOn lists the colours on a block of a pass as they are in a colouring, each once: two may
// be swapped for the same one, or dabbed on in two places.
func coloursOn(b *job.Block, p *job.Pass, c job.Colouring) []colourShare {
	var each []colourShare
	add := func(colour string, share float64) {
		colour = c.Colour(colour)
		i := slices.IndexFunc(each, func(k colourShare) bool { return k.colour == colour })
		if i < 0 {
			i = len(each)
			each = append(each, colourShare{colour: colour})
		}
		each[i].share += share
	}
	switch {
	case len(p.Dabs) > 0:
		for i, share := range motif.Shares(b, p.Dabs) {
			if b.Inked == 0 {
				share = 0
			}
			add(p.Dabs[i].Colour, share)
		}
	case len(p.Colours) == 0:
		add("one colour", b.Inked)
	default:
		for _, colour := range p.Colours {
			add(colour, b.Inked/float64(len(p.Colours)))
		}
	}
	return each
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
