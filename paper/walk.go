package paper

import "underlay/geometry"

// Canvas is what the marks of a view are drawn on: a page of a PDF, a picture. Marks come in the
// order they lie on each other, cut off at the view's area, in the drawing's own frame.
type Canvas interface {
	// Fill fills closed pieces.
	Fill(path geometry.Path, ink Ink)
	// Line draws a line.
	Line(Line)
	// Text sets a line of text.
	Text(Text)
}

// Line is a stroke, or what an area shows of it.
type Line struct {
	Pen    Pen
	Dashes []float64 // the pen's, see Pen.Dashes
	Runs   []Run
}

// Phase returns how far into the dashes a run begins, in millimetres: a pattern that begins there
// falls as it would have on the whole piece of the path.
func (l Line) Phase(r Run) float64 { return phase(l.Dashes, r.Along) }

// Text is a label as it is set: only letters that the typeface has, from a point on the line the
// letters stand on. Size is that of the type, one em.
type Text struct {
	Letters string
	At      geometry.Point
	Size    geometry.Length
	Bold    bool
	Ink     Ink
}

// Draw draws what the view shows.
func (v View) Draw(c Canvas) {
	marks := v.Marks
	if marks == nil {
		marks = everything(v.Drawing, v.Area)
	}
	for _, i := range marks.Fills {
		f := v.Drawing.Fills[i]
		if path := clipFill(f.Path, v.Area); len(path) > 0 {
			c.Fill(path, f.Ink)
		}
	}
	scale := v.Scale.full()
	for _, i := range marks.Strokes {
		s := v.Drawing.Strokes[i]
		l := Line{Pen: s.Pen, Dashes: s.Pen.Dashes()}
		if l.Runs = clip(s.Path, v.Area, scale, l.Dashes == nil); len(l.Runs) > 0 {
			c.Line(l)
		}
	}
	for _, i := range marks.Labels {
		l := v.Drawing.Labels[i]
		if letters, _ := Legible(l.Text); letters != "" && l.Height > 0 {
			c.Text(Text{letters, l.start(), faceOf(l.Bold).em(l.Height), l.Bold, l.Ink})
		}
	}
}

// Place returns where a point of the drawing lies on the page, from its top left corner.
func (v View) Place(p geometry.Point) geometry.Point {
	return v.At.Add(v.Scale.Of(p.Sub(v.Area.Min)))
}

// Whole returns a view of all of a drawing at true size, on a page as large as it.
func Whole(d *Drawing) View {
	return View{Drawing: d, Area: d.Bounds}
}
