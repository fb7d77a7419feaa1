package bench

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
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
func NewTotals(p *plan.Plan) Totals {
	var t Totals
	pace := p.Job.Printing
	seconds := 0.0
	for _, ip := range p.Items {
		t.Pieces += ip.Item.Quantity
		for _, pp := range ip.Passes {
			prints := len(pp.Prints) * ip.Item.Quantity * facesOf(ip, pp.Pass)
			t.Prints += prints
			colours := colourNames(pp.Pass)
			seconds += float64(prints) * (pace.SecondsAPrint + pace.SecondsAColour*float64(len(colours)-1))
			b := pp.Pass.Block
			paint := float64(prints) * b.Face.Area() * 1e-6 * b.Inked * pace.PaintCover / float64(len(colours))
			for _, c := range colours {
				t.row(b.Name, c).add(prints, paint)
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

// facesOf returns on how many faces of an item a pass is printed.
func facesOf(ip *plan.ItemPlan, p *job.Pass) int {
	if p.Face != "" {
		return 1
	}
	return max(1, len(ip.Item.Faces))
}

// SetPages is the page about the whole job.
func SetPages(plan *plan.Plan) []paper.Page {
	job, t := plan.Job, NewTotals(plan)
	f := newFlow(job)
	f.Title(job.Title, fmt.Sprintf("The whole set: %s, %s. Mark %s.",
		words.Counted(t.Pieces, "piece", "pieces"), words.Counted(t.Prints, "print", "prints"), guide.Mark(job)))
	var rows [][]string
	for _, ip := range plan.Items {
		for _, p := range ip.Passes {
			faces := facesOf(ip, p.Pass)
			rows = append(rows, []string{ip.Item.Name, p.Pass.Name, strconv.Itoa(len(p.Prints)), strconv.Itoa(faces),
				strconv.Itoa(ip.Item.Quantity), strconv.Itoa(len(p.Prints) * faces * ip.Item.Quantity)})
		}
	}
	f.Heading("Prints")
	f.Table([]string{"item", "pass", "prints a face", "faces", "pieces", "in all"}, rows, 2, 3, 4, 5)
	f.Heading("Blocks and colours")
	head, right, rows := []string{"block", "colour", "prints"}, []int{2}, nil
	painted := job.Printing.HasPaintCover && slices.ContainsFunc(t.Rows, func(r Total) bool { return r.Paint > 0 })
	if painted {
		head, right = append(head, "paint"), append(right, 3)
	}
	for _, r := range t.Rows {
		row := []string{r.Block, r.Colour, strconv.Itoa(r.Prints)}
		if painted {
			amount := ""
			if r.Paint > 0 {
				amount = millilitres(r.Paint)
			}
			row = append(row, amount)
		}
		rows = append(rows, row)
	}
	f.Table(head, rows, right...)
	if painted {
		f.Quiet("Paint is face x inked share x your own figure for paint-cover, shared evenly between the colours of a pass: a least amount, with nothing for what stays on pad and brush.")
	} else {
		f.Quiet("For the paint, give paint-cover under [printing] and inked for each block.")
	}
	if job.Printing.HasSecondsPrint {
		f.Heading("Time at the bench")
		text := fmt.Sprintf("%s, at your own pace of %s seconds a print", hours(t.Bench), plainFigure(job.Printing.SecondsAPrint))
		if job.Printing.HasSecondsColour {
			text += fmt.Sprintf(" and %s more for each colour after the first", plainFigure(job.Printing.SecondsAColour))
		}
		f.Text(text + ". Setting up, cleaning and drying come on top.")
	}
	return f.Pages()
}

func plainFigure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func millilitres(v float64) string {
	if v >= 100 {
		return fmt.Sprintf("%.0f ml", v)
	}
	return fmt.Sprintf("%.1f ml", v)
}

// hours writes a time to the minute.
func hours(d time.Duration) string {
	minutes := int(d.Round(time.Minute).Minutes())
	switch h := minutes / 60; {
	case h == 0:
		return words.Counted(minutes, "minute", "minutes")
	case minutes%60 == 0:
		return words.Counted(h, "hour", "hours")
	default:
		return words.Counted(h, "hour", "hours") + " " + words.Counted(minutes%60, "minute", "minutes")
	}
}
