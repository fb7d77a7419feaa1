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
	// Bench is the time at the bench at the maker's own pace; 0 where it is not given.
	Bench time.Duration
}

// NewTotals adds up the job: every face of every piece of every item.
func NewTotals(p *Plan) Totals {
	var t Totals
	pace := p.Job.Printing
	seconds := 0.0
	for _, ip := range p.Items {
		t.Pieces += ip.Item.Quantity * ip.Item.Pieces.Count()
		for _, cloth := range ip.Cloths() {
			for _, pp := range cloth.Printed() {
				each := ip.Item.Quantity * ip.Item.Pieces.Count() * len(cloth.PrintedOn(pp.Pass))
				colours := colourNames(pp.Pass)
				for _, b := range pp.Blocks() {
					prints := pp.PrintsOf(b) * each
					t.Prints += prints
					seconds += float64(prints) * (pace.SecondsAPrint + pace.SecondsAColour*float64(len(colours)-1))
					paint := float64(prints) * b.Face.Area() * 1e-6 * b.Inked * pace.PaintCover / float64(len(colours))
					for _, c := range colours {
						t.row(b.Name, c).add(prints, paint)
					}
				}
			}
		}
	}
	if pace.HasSecondsPrint {
		t.Bench = time.Duration(seconds * float64(time.Second))
	}
	return t
}

func (t *Totals) row(block, colour string) *Total {
	i := slices.IndexFunc(t.Rows, func(r Total) bool { return r.Block == block && r.Colour == colour })
	if i < 0 {
		t.Rows = append(t.Rows, Total{Block: block, Colour: colour})
		i = len(t.Rows) - 1
	}
	return &t.Rows[i]
}

func (t *Total) add(prints int, paint float64) {
	t.Prints += prints
	t.Paint += paint
}

// colourNames are a pass's colours; one without a name where the job names none.
func colourNames(p *job.Pass) []string {
	if len(p.Colours) == 0 {
		return []string{"one colour"}
	}
	return slices.Clone(p.Colours)
}
