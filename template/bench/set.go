package bench

import (
	"fmt"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// SetPages is the page about the whole job.
func SetPages(p *plan.Plan) []paper.Page {
	job, t := p.Job, plan.NewTotals(p)
	f := newFlow(job)
	f.Title(job.Title, fmt.Sprintf("The whole set: %s, %s. Mark %s.",
		words.Counted(t.Pieces, "piece", "pieces"), words.Counted(t.Prints, "print", "prints"), guide.SetMark(job)))
	var rows [][]string
	for _, ip := range p.Items {
		for _, pp := range ip.Passes {
			faces := plan.FacesOf(ip, pp.Pass)
			rows = append(rows, []string{ip.Item.Name, pp.Pass.Name, strconv.Itoa(len(pp.Prints)), strconv.Itoa(faces),
				strconv.Itoa(ip.Item.Quantity), strconv.Itoa(len(pp.Prints) * faces * ip.Item.Quantity)})
		}
	}
	f.Heading("Prints")
	f.Table([]string{"item", "pass", "prints a face", "faces", "pieces", "in all"}, rows, 2, 3, 4, 5)
	f.Heading("Blocks and colours")
	head, right, rows := []string{"block", "colour", "prints"}, []int{2}, nil
	painted := job.Printing.HasPaintCover && slices.ContainsFunc(t.Rows, func(r plan.Total) bool { return r.Paint > 0 })
	if painted {
		head, right = append(head, "paint"), append(right, 3)
	}
	for _, r := range t.Rows {
		row := []string{r.Block, r.Colour, strconv.Itoa(r.Prints)}
		if painted {
			amount := ""
			if r.Paint > 0 {
				amount = say.Paint(r.Paint)
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
		text := fmt.Sprintf("%s, at your own pace of %s seconds a print", say.Time(t.Bench), figure(job.Printing.SecondsAPrint))
		if job.Printing.HasSecondsColour {
			text += fmt.Sprintf(" and %s more for each colour after the first", figure(job.Printing.SecondsAColour))
		}
		f.Text(text + ". Setting up, cleaning and drying come on top.")
	}
	return f.Pages()
}

// figure writes a number of the maker's own.
func figure(v float64) string { return geometry.Decimals(v, 6) }
