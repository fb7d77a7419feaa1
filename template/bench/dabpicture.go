package bench

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/look"
	"underlay/template/motif"
	"underlay/template/words"
)

// Measures of the pictures of dabbed faces.
const (
	dabPicture   = 32 * geometry.Millimetre  // as wide and as high, at the most
	dabRow       = 10 * geometry.Millimetre  // from a name beside one to the next
	dabTitle     = 6 * geometry.Millimetre   // over it
	dabLead      = 9 * geometry.Millimetre   // from the face to the names
	dabDot       = 1.3 * geometry.Millimetre // at the end of the line from a name
	dabSwap      = 4 * geometry.Millimetre   // how much shorter lines are to get when two names change places
	dabHatchStep = 1.1 * geometry.Millimetre // from line to line
)

// size is how large the face is drawn.
func (d dabbed) size() geometry.Size {
	size := d.block.Size
	k := dabPicture / max(size.W, size.H)
	return geometry.Size{W: k * size.W, H: k * size.H}
}

// height is how high a picture of it is, width how wide with the names of its parts.
func (d dabbed) height(u geometry.Unit) geometry.Length {
	return dabTitle + max(d.size().H, dabRow*geometry.Length(len(d.names(u)))) + 2
}

func (d dabbed) width(u geometry.Unit) geometry.Length {
	var most geometry.Length
	for _, name := range d.names(u) {
		most = max(most, paper.TextWidth(name.colour, 2.5, true), paper.TextWidth(name.part, 2.5, false))
	}
	return d.size().W + 0.5 + dabLead + most
}

// picture draws the face large in a box, each part in its colour, or hatched where its looks are not
// known, and at its right their names, each at the end of a line from its part.
func (d dabbed) picture(j *job.Job, box geometry.Rect) []paper.View {
	title := d.block.Name
	if what := words.InWords(d.passes); what != title {
		title += " (" + what + ")"
	}
	over := &paper.Drawing{Bounds: box}
	over.Write(paper.Label{Text: paper.Shorten(words.UpperFirst(title), 2.5, true, box.W()), At: box.Min.Add(geometry.Pt(0, 3.5)), Anchor: paper.AnchorBottomLeft, Height: 2.5, Bold: true})
	box.Min.Y += dabTitle
	size := d.size()
	face := geometry.RectAt(geometry.Pt(box.Min.X+0.5, box.Centre().Y-size.H/2), size)
	s := scaled{look.Scaled{K: size.W / d.block.Size.W, From: d.block.Face.Bounds().Min, To: face.Min}}

	names := d.names(j.Units)
	var leads []lead
	for i, row := range d.rows(len(names), s, box) {
		at := geometry.Pt(face.Max.X+dabLead, row.y)
		dot := s.At(row.part)
		leads = append(leads, lead{geometry.Chain(dot, geometry.Pt(face.Max.X+dabLead/3, at.Y), at.Sub(geometry.Pt(1.2, 0))), dot})
		for k, text := range []string{names[i].colour, names[i].part} {
			over.Write(paper.Label{Text: paper.Shorten(text, 2.5, k == 0, box.Max.X-at.X), At: at.Add(geometry.Pt(0, 4.2*geometry.Length(k))), Anchor: paper.AnchorLeft,
				Height: 2.5, Bold: k == 0, Role: paper.Role{Kind: "dab", Number: i + 1}})
		}
	}
	views := append(s.dabbedFace(j, d), leadViews(leads, box)...)
	return append(views, paper.View{Drawing: over, Area: over.Bounds, At: over.Bounds.Min})
}

// lead is a line from a dot on a part to its name.
type lead struct {
	line geometry.Path
	dot  geometry.Point
}

// leadViews draws lines with their dots; on dark paint they are seen by the white beside them.
func leadViews(leads []lead, box geometry.Rect) []paper.View {
	var views []paper.View
	for _, k := range []struct {
		ink  paper.Ink
		more geometry.Length
	}{{paper.Grey(255), 0.5}, {paper.Ink{}, 0}} {
		on := &paper.Drawing{Bounds: box}
		dot := paper.NewShape(geometry.CircleOutline(geometry.Point{}, (dabDot+k.more)/2).Path())
		for i, l := range leads {
			on.Stroke(l.line, paper.Pen{Width: 0.25 + k.more, Ink: k.ink})
			on.StampFill(dot, paper.Place{At: l.dot}, k.ink, paper.Role{Kind: "dab", Number: i + 1})
		}
		views = append(views, paper.View{Drawing: on, Area: box, At: box.Min})
	}
	return views
}

// dabbedFace draws a face with its parts: the last first, so that what the others have lies over it.
func (s scaled) dabbedFace(j *job.Job, d dabbed) []paper.View {
	b := d.block.Face
	area := geometry.Rect{Min: s.At(b.Bounds().Min), Max: s.At(b.Bounds().Max)}
	var views []paper.View
	layer := func(area geometry.Rect, draw func(on *paper.Drawing)) {
		on := &paper.Drawing{Bounds: area}
		draw(on)
		views = append(views, paper.View{Drawing: on, Area: area, At: area.Min})
	}
	for i, dab := range slices.Backward(d.dabs) {
		layer(area, func(on *paper.Drawing) {
			edge := dabEdge(dab, b).Map(s.At)
			ink, known := j.Looks(dab.Colour)
			switch {
			case !known:
				ink = paper.Grey(255)
			case d.block.Picture != nil:
				ink = pale(ink)
			}
			on.Fill(edge, ink)
			on.Stroke(edge, paper.Pen{Width: thinLine})
			if !known {
				on.Stroke(s.dabHatch(d.dabs, i, b), paper.Pen{Width: thinLine})
			}
		})
	}
	if d.block.Picture != nil {
		layer(area, func(on *paper.Drawing) {
			for _, part := range motif.Of(d.block, d.dabs, 0.1/s.K) {
				ink, _ := look.Ink(j, d.dabs[part.Dab].Colour)
				on.Fill(part.Path.Map(s.At), ink)
			}
		})
	}
	// What lies round the face is hidden; lines are cut in their middle, and reach over their end.
	round := area.Grow(clothLine)
	layer(round, func(on *paper.Drawing) {
		on.Fill(append(round.Polygon().Path(), holeOf(b).Map(s.At)...), paper.Grey(255))
	})
	layer(round, func(on *paper.Drawing) { on.Stroke(b.Path().Map(s.At), paper.Pen{Width: clothLine}) })
	return views
}

// pale is an ink as a wash, for paint to stand out on.
func pale(k paper.Ink) paper.Ink {
	wash := func(v uint8) uint8 { return uint8((int(v) + 2*255) / 3) }
	return paper.Ink{R: wash(k.R), G: wash(k.G), B: wash(k.B)}
}

// dabEdge is the edge of where a dab goes, where nothing lay over it; it may run beyond the face.
func dabEdge(d job.Dab, face geometry.Outline) geometry.Path {
	switch d.Part {
	case job.TheMiddle:
		return geometry.CircleOutline(geometry.Point{}, d.Size/2).Path()
	case job.TheCorners:
		var all geometry.Path
		for _, c := range face.Corners().Jutting() {
			all = append(all, geometry.CircleOutline(c, d.Size).Path()...)
		}
		return all
	case job.TheEdge:
		inner, _, _ := face.Inset(d.Size)
		return append(holeOf(face), inner...)
	}
	return face.Path()
}

// holeOf is the path round an outline the other way, against the clock.
func holeOf(o geometry.Outline) geometry.Path {
	if centre, r, round := o.Round(); round {
		return geometry.Arc(centre, r, 0, -360)
	}
	corners := slices.Clone(o.Corners())
	if !clockwise(corners) {
		return corners.Path()
	}
	slices.Reverse(corners)
	return corners.Path()
}

// clockwise tells which way corners run, as seen.
func clockwise(p geometry.Polygon) bool {
	sum := 0.0
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += float64(a.X*b.Y - b.X*a.Y)
	}
	return sum > 0
}

// dabHatches are the ways in which parts are hatched that lie beside each other.
var dabHatches = [...]geometry.Angle{45, -45, 0, 90}

// dabHatch returns lines over what one of the dabs has of a face, in a direction of its own.
func (s scaled) dabHatch(dabs []job.Dab, i int, face geometry.Outline) geometry.Path {
	angle := dabHatches[i%len(dabHatches)]
	level := face.Turn(-angle)
	bounds := level.Bounds()
	var path geometry.Path
	for y := bounds.Min.Y + dabHatchStep/s.K/2; y < bounds.Max.Y; y += dabHatchStep / s.K {
		for _, span := range job.DabSpans(dabs, level, y)[i] {
			path = append(path, geometry.Line(geometry.Pt(span.From, y).Turn(angle), geometry.Pt(span.To, y).Turn(angle))...)
		}
	}
	return path.Map(s.At)
}
