package paper

import (
	"underlay/geometry"
)

// Canvas is what the marks of a view are drawn on: a page of a PDF, a picture. Marks come in the
// order they lie on each other, cut off at the view's area, in the drawing's own frame.
type Canvas interface {
	// Patch fills an area.
	Patch(Patch)
	// Line draws a line.
	Line(Line)
	// Text sets a line of text.
	Text(Text)
}

// Patch is a fill, or what an area shows of it. Whole tells that this is all of it: Cut is nil.
type Patch struct {
	Fill
	Whole bool
	Cut   geometry.Path
}

// Line is a stroke, or what an area shows of it. Whole tells that this is all of it: Cut is nil.
type Line struct {
	Stroke
	Dashes []float64 // the pen's, see Pen.Dashes
	Whole  bool
	Cut    []Run
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
	Role    Role
}

// Picked returns the view with its marks picked.
func (v View) Picked() View {
	if v.Marks == nil {
		v.Marks = Everything(v.Drawing, v.Area)
	}
	return v
}

// Draw draws what the view shows.
func (v View) Draw(c Canvas) {
	v = v.Picked()
	for _, i := range v.Marks.Fills {
		f := v.Drawing.Fills[i]
		if f.Shape.none() {
			continue
		}
		if v.Area.Holds(f.Bounds()) {
			c.Patch(Patch{Fill: f, Whole: true})
		} else if cut := clipFill(f.Path(), v.Area); len(cut) > 0 {
			c.Patch(Patch{Fill: f, Cut: cut})
		}
	}
	scale := v.Scale.full()
	for _, i := range v.Marks.Strokes {
		s := v.Drawing.Strokes[i]
		if s.Shape.none() {
			continue
		}
		l := Line{Stroke: s, Dashes: s.Pen.Dashes()}
		if l.Whole = v.Area.Holds(s.Bounds()); !l.Whole {
			l.Cut = clip(s.Path(), v.Area, scale, l.Dashes == nil)
		}
		if l.Whole || len(l.Cut) > 0 {
			c.Line(l)
		}
	}
	labels := make([]Label, 0, len(v.Marks.Labels))
	for _, i := range v.Marks.Labels {
		labels = append(labels, v.Drawing.Labels[i])
	}
	for _, i := range v.Marks.Names {
		labels = append(labels, v.Drawing.Names[i].Whole()...)
	}
	for _, l := range labels {
		if l.Ground {
			box := l.GroundBox().Intersect(v.Area)
			c.Patch(Patch{Fill: Fill{Shape: Once(box.Polygon().Path()), Ink: Grey(255), Role: Role{Kind: "ground"}}, Whole: true})
		}
	}
	for _, l := range labels {
		if letters, _ := Legible(l.Text); letters != "" && l.Height > 0 {
			f := faceOf(l.Bold)
			em := f.em(l.Height)
			c.Text(Text{letters, l.start(em * geometry.Length(f.advance(0, letters))), em, l.Bold, l.Ink, l.Role})
		}
	}
}

// Stamps calls line and fill with the marks that the view shows whole and whose shapes were made
// for many places.
func (v View) Stamps(line func(Stroke), fill func(Fill)) {
	v = v.Picked()
	for _, i := range v.Marks.Fills {
		if f := v.Drawing.Fills[i]; f.Shape.often && v.Area.Holds(f.Bounds()) {
			fill(f)
		}
	}
	for _, i := range v.Marks.Strokes {
		if s := v.Drawing.Strokes[i]; s.Shape.often && v.Area.Holds(s.Bounds()) {
			line(s)
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
