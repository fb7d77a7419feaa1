package guide

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/trace"
)

// The window page, in the window's frame: a title and a line above the marks; words between those at
// the top; the bar down between those at the left; the bar across and words between those at the
// foot, and more below them.
const (
	windowHead   = 13.6 * geometry.Millimetre // what the title and a line take above the marks
	windowFoot   = 9.7 * geometry.Millimetre  // what words take below them
	windowText   = 2.5 * geometry.Millimetre
	windowPitch  = 1.75 * windowText
	windowBarOff = 9.5 * geometry.Millimetre // from the opening to a bar
	// WindowAcross and WindowDown are the lengths of the window page's bars.
	WindowAcross = 150 * geometry.Millimetre
	WindowDown   = 200 * geometry.Millimetre
)

// WindowPage makes the page to measure a block with: the window that package trace finds again in a
// photograph, empty, with a bar each way to be measured, and how to go about it. It is drawn without
// any correction. A roll's page is as wide as the roll; "one sheet" is A4.
//
// The error is a plain sentence: the paper is too small, and which would do.
func WindowPage(stock paper.Stock) ([]paper.Page, error) {
	frame := trace.Window()
	all := frame.Bounds().In(geometry.Edges{Top: -windowHead, Bottom: -windowFoot})
	page := rulerPaper(stock, all.H()+2*RulerMargin)
	if room := (geometry.Rect{Max: geometry.Pt(page.W, page.H)}).Grow(geometry.Tolerance - RulerMargin); room.W() < all.W() || room.H() < all.H() {
		show := geometry.UnitMM.Format
		return nil, fmt.Errorf("the paper %q is too small for the window and its marks, %s across and %s down, inside a margin of %s; write a larger one, such as \"A4\" or \"Letter\"",
			stock.Name, show(all.W()), show(all.H()), show(RulerMargin))
	}
	corner := geometry.Pt(page.W/2, page.H/2).Sub(all.Centre())
	usable := geometry.Rect{Max: geometry.Pt(page.W, page.H)}.Grow(-RulerMargin)
	d := &paper.Drawing{Bounds: usable.Move(geometry.Point{}.Sub(corner))}
	drawWindow(d, frame)
	drawWindowBars(d, frame)
	writeWindow(d, frame)
	return []paper.Page{{Size: page, Views: []paper.View{{Drawing: d, Area: d.Bounds, At: usable.Min}}}}, nil
}

// drawWindow draws the opening, the marks and the stitches.
func drawWindow(d *paper.Drawing, f trace.Frame) {
	d.Stroke(f.Opening.Polygon().Path(), rulerPen)
	dot := func(at geometry.Point, radius geometry.Length, ink paper.Ink) {
		d.Fill(geometry.CircleOutline(at, radius).Path(), ink)
	}
	for _, m := range f.Marks {
		dot(m.Centre, f.MarkRadius, paper.Ink{})
		for _, hole := range m.Holes {
			dot(hole, f.HoleRadius, paper.Grey(255))
		}
	}
	for _, s := range f.Stitches {
		dot(s, f.StitchRadius, paper.Ink{})
	}
}

// drawWindowBars draws a bar as long as the opening is wide, below it, and one as long as it is
// high, at its left.
func drawWindowBars(d *paper.Drawing, f trace.Frame) {
	o := f.Opening
	y := o.Max.Y + windowBarOff
	drawBar(d, geometry.Pt(o.Min.X, y), geometry.Pt(o.Min.X+WindowAcross, y))
	barName(d, geometry.Pt(o.Centre().X, y+1), paper.AnchorTop, windowText, "across, 150 mm")
	x := o.Min.X - windowBarOff
	drawBar(d, geometry.Pt(x, o.Min.Y), geometry.Pt(x, o.Min.Y+WindowDown))
	barName(d, geometry.Pt(x-1.2, o.Centre().Y), paper.AnchorRight, windowText, "down,", "200", "mm")
}

// writeWindow says what to do with the page.
func writeWindow(d *paper.Drawing, f trace.Frame) {
	all, o := f.Bounds(), f.Opening
	write := func(at geometry.Point, width geometry.Length, number, text string) {
		const indent = 4.5 * geometry.Millimetre
		d.Write(paper.Label{Text: number, At: at, Anchor: paper.AnchorTopLeft, Height: windowText, Ink: paper.Grey(90)})
		at.X += indent
		for _, row := range paper.Wrap(text, windowText, false, width-indent) {
			d.Write(paper.Label{Text: row, At: at, Anchor: paper.AnchorTopLeft, Height: windowText})
			at.Y += windowPitch
		}
	}
	top := all.Min.Y - windowHead
	title := paper.Label{Text: "Window page", At: geometry.Pt(all.Min.X, top+5), Anchor: paper.AnchorBottomLeft, Height: 5, Bold: true}
	d.Write(title)
	d.Write(paper.Label{Text: "Measure a block with your phone: one print, one photograph.",
		At: geometry.Pt(title.Box().Max.X+5, top+5), Anchor: paper.AnchorBottomLeft, Height: windowText, Ink: paper.Grey(90)})
	write(geometry.Pt(all.Min.X, top+8.7), all.W(), "1.",
		"Print this page at 100 % (“actual size”). Measure both bars: 150 mm across, 200 mm down.")
	write(geometry.Pt(o.Min.X, all.Min.Y+0.5), o.W(), "2.",
		"Press the block once inside the window, dark on the paper, clear of its edge. Or cut the window out, "+
			"with a knife, away from the hand, on a mat, and lay the sheet flat over a print on cloth, none of it covered.")
	write(geometry.Pt(o.Min.X, o.Max.Y+14.6), o.W(), "3.",
		"Photograph it from straight above as well as you can, in even light, without shadow or glare, "+
			"sharp and near: all four buttons in the picture, and little else.")
	write(geometry.Pt(all.Min.X, all.Max.Y+2.2), all.W(), "4.",
		"On the computer: underlay trace photo.jpg. It writes the print as a picture, and the lines to put into a job. "+
			"Where a bar measures something else, tell it: underlay help trace.")
}
