package bench

import (
	"fmt"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/sheets"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/say"
	"underlay/template/words"
)

// Overview is the first page of a guide: a small picture of the layout over its sheets, how
// to join them, what to check, and what the lines mean.
func Overview(j *job.Job, g guide.Guide) []paper.Page {
	face, drawing, theSheets := g.Face, g.Drawing, g.Sheets
	left := g.Left(j)
	f := newFlow(j)
	f.Title(words.UpperFirst(face.Label()), fmt.Sprintf("Guide at true size: %s. Mark %s.", onPaper(theSheets, j.Paper.Stock), guide.Mark(j, face)))
	if text := say.Pieces(j.Units, face.Item); text != "" {
		f.Text(words.UpperFirst(text) + "; each has prints of the same numbers.")
	}
	for _, p := range face.Passes {
		f.Text(fmt.Sprintf("%s: %s, prints %d to %d.", p.Pass.Name, guide.Summary(p.PassPlan, j.Units), p.First, p.Last()))
	}
	f.Space(3)
	// Below the picture: the words, some 86 mm, and the legend.
	legend := legendHeight(j, face, drawing)
	f.Figure(max(60, f.Room()-86-legend-geometry.Length(10*len(left))), func(box geometry.Rect) []paper.View { return sheets.Overview(drawing, theSheets, box) })
	number := func(i int) string { return strconv.Itoa(i+1) + "." }

	f.Heading("Print and check")
	f.Points(number, []string{
		"Print at 100 % (“actual size”), not “fit to page”.",
		"Measure a check bar both ways on one sheet, before cutting: " + barWords(j) + ".",
	})
	for _, text := range left {
		f.Text(words.UpperFirst(text) + ".")
	}
	if s := j.Paper.Stock; (s.Roll || s.OneSheet) && j.Printer.Scale() != (paper.Scale{Across: 1, Down: 1}) {
		f.Text("Drawn for the printer whose bars are in [printer], across the " + across(s) + ". Another printer, as in a copy shop, needs bars of its own, or none.")
	}
	if len(theSheets) > 1 {
		f.Heading("Join")
		if inStrips(theSheets) {
			f.Points(number, []string{
				"Cut the strips out along their frames, away from the hand, on a mat. Lay them out as in the picture, as each names its neighbours.",
				"Cut a strip’s end along its line marked “cut”.",
				"Lay the cut end on its neighbour’s dashed line so that " + meetWords(j) + ". Tape it; go on all the way round.",
			})
		} else {
			f.Points(number, []string{
				"Lay the sheets out as in the picture. Each names its neighbours at its edges.",
				"Cut a sheet along its line marked “cut”, away from the hand, on a mat.",
				"Lay the cut edge on its neighbour’s dashed line so that " + meetWords(j) + ". Tape it; go on row by row.",
				"Lay a straight edge along a line that runs over the joins: it must not bend.",
			}[:joinSteps(j)])
		}
		if j.Paper.Extent == job.EdgesExtent {
			f.Text("The guide makes a ring, which must close: measure from corner to corner of the cloth’s edge, both ways across. The two must be equally long.")
		}
	}
	f.Heading("The lines")
	f.Figure(legend, func(box geometry.Rect) []paper.View { return []paper.View{drawLegend(j, face, drawing, box)} })
	return f.Pages()
}

// onPaper says how many sheets of what a guide is on.
func onPaper(sheets []paper.Sheet, s paper.Stock) string {
	if inStrips(sheets) {
		n := (paper.Tiling{Sheets: sheets}).Leaves()
		return words.Counted(len(sheets), "strip", "strips") + " on " + words.Counted(n, "sheet", "sheets") + " of " + s.Name
	}
	n := len(sheets)
	if s.OneSheet {
		return "one sheet"
	}
	return words.Counted(n, "sheet", "sheets") + " on " + s.Name
}

// inStrips tells whether sheets are strips of which several are on a page.
func inStrips(sheets []paper.Sheet) bool { return len(sheets) > 0 && len(sheets[0].Joined) > 0 }

// across says what goes through the printer across.
func across(s paper.Stock) string {
	if s.Roll {
		return "width of the roll"
	}
	return "shorter side of the page"
}

// meetWords says what falls on what where two sheets are laid right.
func meetWords(job *job.Job) string {
	if job.Paper.Overlap < sheets.LeastCrossed {
		return "the lines of both run on"
	}
	return "the crosses of both fall on each other"
}

// joinSteps is how many of the steps of joining go for a job: in a ring of sheets no line runs
// over all the joins.
func joinSteps(j *job.Job) int {
	if j.Paper.Extent == job.EdgesExtent {
		return 3
	}
	return 4
}

func barWords(job *job.Job) string {
	if job.Units == geometry.UnitInch {
		return "50 mm or 2 in"
	}
	return "50 mm"
}
