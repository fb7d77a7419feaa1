package guide

import (
	"fmt"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
)

// The bars of the ruler page stand in two corners, a pair each, round the text.
const (
	inchesAcross = 7 * geometry.Inch
	inchesDown   = 9 * geometry.Inch
	rulerTick    = 1.5 * geometry.Millimetre // half an end tick
	rulerEdge    = 1.7 * geometry.Millimetre // from the edge of what is printed to a bar
	rulerLabel   = 3.5 * geometry.Millimetre // ISO 3098
	RulerMargin  = 7 * geometry.Millimetre   // what most desk printers cannot reach, as in a job that says nothing of it
)

// rulerPen draws the bars: narrow, so that there is no doubt where one ends.
var rulerPen = paper.Pen{Type: paper.Continuous, Width: 0.25}

// RulerPage makes the printer check page on a paper, 7 mm clear of its edges: a bar of 180 mm
// across and one of 250 mm down to be measured, one of 7 in and one of 9 in for a rule in
// inches, how to go about it, and the lines to write in the job file. It is drawn without any
// correction. A roll's page is as wide as the roll; "one sheet" is A4.
//
// The error is a plain sentence: the paper is too small, and which would do.
func RulerPage(stock paper.Stock) ([]paper.Page, error) {
	// What A4 has inside a margin of 7 mm; on a larger page the bars stand round its middle.
	most := geometry.Size{W: 196, H: 283}
	page := rulerPaper(stock, most.H+2*RulerMargin)
	usable := geometry.Rect{Max: geometry.Pt(page.W, page.H)}.Grow(-RulerMargin)
	if room := usable.Grow(-rulerEdge + geometry.Tolerance); room.W() < paper.RulerAcross || room.H() < paper.RulerDown {
		show := geometry.UnitMM.Format
		return nil, fmt.Errorf("the paper %q is too small for the check bars, %s across and %s down, inside a margin of %s; write a larger one, such as \"A4\" or \"Letter\"",
			stock.Name, show(paper.RulerAcross), show(paper.RulerDown), show(RulerMargin))
	}
	frame := geometry.RectAround(usable.Centre(), geometry.Size{W: min(usable.W(), most.W), H: min(usable.H(), most.H)})

	bars := &paper.Drawing{Bounds: frame}
	drawRulerBars(bars, frame.Grow(-rulerEdge))
	f := paper.NewFlowIn(page, frame.In(geometry.Edges{Top: 20, Right: 27, Bottom: 20, Left: 27}))
	writeRuler(f)
	pages := f.Pages()
	pages[0].Views = append(pages[0].Views, paper.View{Drawing: bars, Area: frame, At: frame.Min})
	return pages, nil
}

// rulerPaper returns the page that a paper makes: a roll's as high as asked, "one sheet" A4.
func rulerPaper(stock paper.Stock, height geometry.Length) geometry.Size {
	switch {
	case stock.OneSheet:
		return geometry.Size{W: 210, H: 297}
	case stock.Roll:
		return geometry.Size{W: stock.Size.W, H: height}
	}
	return stock.Size
}

// drawBar draws a bar to be measured, from the middle of its one end tick to the middle of the
// other.
func drawBar(d *paper.Drawing, a, b geometry.Point) {
	across := geometry.Pt(0, rulerTick)
	if a.X == b.X {
		across = geometry.Pt(rulerTick, 0)
	}
	d.Stroke(geometry.Line(a, b), rulerPen)
	for _, end := range []geometry.Point{a, b} {
		d.Stroke(geometry.Line(end.Sub(across), end.Add(across)), rulerPen)
	}
}

// barName writes what a bar measures, a row after the other.
func barName(d *paper.Drawing, at geometry.Point, anchor paper.Anchor, height geometry.Length, rows ...string) {
	for i, row := range rows {
		down := 1.9 * height * (geometry.Length(i) - geometry.Length(len(rows)-1)/2)
		d.Write(paper.Label{Text: row, At: at.Add(geometry.Pt(0, down)), Anchor: anchor, Height: height})
	}
}

// drawRulerBars draws the bars in millimetres from the top left corner of r, those in inches
// from its bottom right corner.
func drawRulerBars(d *paper.Drawing, r geometry.Rect) {
	const clear = 2 * geometry.Millimetre
	bar := func(a, b geometry.Point) { drawBar(d, a, b) }
	write := func(at geometry.Point, anchor paper.Anchor, rows ...string) {
		barName(d, at, anchor, rulerLabel, rows...)
	}
	a, b := r.Min, r.Max
	bar(a, a.Add(geometry.Pt(paper.RulerAcross, 0)))
	write(a.Add(geometry.Pt(paper.RulerAcross/2, clear)), paper.AnchorTop, "across, 180 mm")
	bar(a, a.Add(geometry.Pt(0, paper.RulerDown)))
	write(a.Add(geometry.Pt(clear, paper.RulerDown/2)), paper.AnchorLeft, "down,", "250 mm")
	bar(b.Sub(geometry.Pt(inchesAcross, 0)), b)
	write(b.Sub(geometry.Pt(inchesAcross/2, clear)), paper.AnchorBottom, "7 in")
	bar(b.Sub(geometry.Pt(0, inchesDown)), b)
	write(b.Sub(geometry.Pt(clear, inchesDown/2)), paper.AnchorRight, "9 in")
}

// writeRuler says what to do with the page.
func writeRuler(f *paper.Flow) {
	number := func(i int) string { return strconv.Itoa(i+1) + "." }
	f.Title("Ruler page", "Does your printer draw at true size? Print this page and measure two bars.")
	f.Heading("Print")
	f.Points(number, []string{
		"Print at 100 % (“actual size”), not “fit to page”.",
		"Use the printer, the paper and the settings you will use for the guides.",
	})
	f.Heading("Measure")
	f.Points(number, []string{
		"Lay a steel rule along the bar at the top, then along the bar at the left.",
		"Measure from the middle of one end tick to the middle of the other, as near to a tenth of a millimetre as you can read.",
	})
	f.Heading("Write")
	f.Text("If both bars measure what they say, there is nothing to write. If not, put these lines in the job file, with what you measured:")
	f.Space(2)
	f.Figure(rulerFormHeight, func(box geometry.Rect) []paper.View { return []paper.View{rulerForm(box)} })
	f.Space(2)
	f.Text("Guides are then drawn larger or smaller by as much, and come out at true size. This page never is: it shows the printer as it is.")
	f.Heading("More than 3 % off")
	show := func(l geometry.Length, off float64) string {
		return geometry.UnitMM.Number(l * geometry.Length(1+off))
	}
	f.Text(fmt.Sprintf("Not %s to %s mm across, or not %s to %s mm down: the page was printed “fit to page”. Print it again at 100 %%.",
		show(paper.RulerAcross, -job.MostOff), show(paper.RulerAcross, job.MostOff), show(paper.RulerDown, -job.MostOff), show(paper.RulerDown, job.MostOff)))
	f.Heading("With a rule in inches")
	f.Text("Measure the bars at the foot and at the right, 7 in and 9 in. Where they are true, so are the others. If not, measure the bars of 180 mm and 250 mm; the job file takes inches too, such as across = \"7 1/16 in\".")
}

// rulerFormHeight is the height of the lines to fill in.
const rulerFormHeight = 31 * geometry.Millimetre

// rulerForm draws the lines of the job file with blanks for what was measured, and beside
// them as a true printer would have them.
func rulerForm(box geometry.Rect) paper.View {
	const h, row, inset, blank = rulerLabel, 8 * geometry.Millimetre, 4 * geometry.Millimetre, 18 * geometry.Millimetre
	quiet := paper.Grey(90)
	d := &paper.Drawing{Bounds: box}
	half := (box.W() - 6) / 2
	for i, head := range []string{"what you measured", "a true printer"} {
		x := box.Min.X + geometry.Length(i)*(half+6)
		frame := geometry.RectAt(geometry.Pt(x, box.Min.Y), geometry.Size{W: half, H: box.H()}).Grow(-0.2)
		d.Stroke(frame.Polygon().Path(), paper.Pen{Type: paper.Continuous, Width: 0.18, Ink: quiet})
		d.Write(paper.Label{Text: head, At: geometry.Pt(x+half-2, frame.Max.Y-2), Anchor: paper.AnchorBottomRight, Height: 1.8, Ink: quiet})
		y := box.Min.Y + inset + h
		put := func(x geometry.Length, text string) geometry.Length {
			d.Write(paper.Label{Text: text, At: geometry.Pt(x, y), Anchor: paper.AnchorBottomLeft, Height: h})
			return x + paper.TextWidth(text, h, false)
		}
		put(x+inset, "[printer]")
		for k, key := range []string{"across", "down"} {
			y += row
			measured := []string{"180", "250"}[k] + " mm\""
			end := put(x+inset, key+" = \"")
			if i == 0 {
				d.Stroke(geometry.Line(geometry.Pt(end+0.5, y+0.6), geometry.Pt(end+blank, y+0.6)), paper.Pen{Type: paper.Continuous, Width: 0.18})
				end, measured = end+blank+1.5, "mm\""
			}
			put(end, measured)
		}
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}
