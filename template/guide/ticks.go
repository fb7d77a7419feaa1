package guide

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// Measures of the ticks, from the cloth outwards.
const (
	tickClear  = 1.5 * geometry.Millimetre // plain paper between cloth and ticks
	tickLength = 5 * geometry.Millimetre
	bandDepth  = 6.5 * geometry.Millimetre // each pass has its ticks in a band of its own
	tickText   = 2.5 * geometry.Millimetre // ISO 3098
	nameText   = 3.5 * geometry.Millimetre
	tapeHead   = 1.6 * geometry.Millimetre
)

// run is the ticks along one direction: across, of lines that run up and down.
type run struct {
	g        *guide
	down     bool            // the lines run across, their ticks are left and right of the cloth
	from, to geometry.Length // the cloth along the run
}

// drawTicks draws the ticks of columns and rows, creases and tapes, on both ends of each line,
// with their names and their distance from the cloth's left or top edge.
func (g *guide) drawTicks() {
	reach := g.reach
	if reach < tickClear+tickLength {
		return
	}
	for _, r := range []run{
		{g, false, g.cloth.Min.X, g.cloth.Max.X},
		{g, true, g.cloth.Min.Y, g.cloth.Max.Y},
	} {
		families := make([][][]span, len(g.face.Passes))
		some := false
		for i, p := range g.face.Passes {
			families[i] = r.families(p, len(g.face.Passes) > 1)
			some = some || len(families[i]) > 0
		}
		if some {
			g.caption(r)
		}
		var all []family
		for _, of := range families {
			for _, spans := range of {
				depth := tickClear + bandDepth*geometry.Length(len(all)%g.bands())
				all = append(all, r.newFamily(spans, depth))
			}
		}
		// Lines first, so that no name is written where one is still to come.
		for _, f := range all {
			r.drawEdges(f)
		}
		for i, p := range g.face.Passes {
			r.drawLines(p, families[i])
		}
		beyond := tickClear + bandDepth*geometry.Length(min(len(all), g.bands()))
		for _, f := range all {
			r.writeNames(f, beyond)
		}
		for _, f := range all {
			r.writeDistances(f, beyond)
		}
	}
}

// bands is how many bands of ticks the reach has room for, names of tapes and creases outside
// them.
func (g *guide) bands() int {
	return max(1, int((g.reach-tickClear-9)/bandDepth))
}

// at returns the point of the run at l, out from the cloth by depth, on its first side (above,
// or left of the cloth) or its second.
func (r run) at(l, depth geometry.Length, second bool) geometry.Point {
	c := r.g.cloth
	switch {
	case !r.down && !second:
		return geometry.Pt(l, c.Min.Y-depth)
	case !r.down:
		return geometry.Pt(l, c.Max.Y+depth)
	case !second:
		return geometry.Pt(c.Min.X-depth, l)
	}
	return geometry.Pt(c.Max.X+depth, l)
}

// line draws a tick at l from one depth to another, at both ends of the line.
func (r run) line(l, from, to geometry.Length, pen paper.Pen) {
	for _, second := range []bool{false, true} {
		r.g.Stroke(geometry.Line(r.at(l, from, second), r.at(l, to, second)), pen)
		b := geometry.Line(r.at(l, from, second), r.at(l, to, second)).Bounds().Grow(0.2)
		r.g.crowd.Take(b)
	}
}

// write puts a label at both ends: along the run its middle at l (side 0), or all of it before
// (-1) or after (1) l; its inner edge at depth. It tells whether there was room at both.
func (r run) write(text string, l geometry.Length, side int, depth, height geometry.Length, bold bool) bool {
	var labels []paper.Label
	for _, second := range []bool{false, true} {
		labels = append(labels, r.label(text, l, side, depth, height, bold, second))
		box := labels[len(labels)-1].Extent().Grow(0.3)
		if !r.g.crowd.Free(box) || !r.g.Bounds.Holds(box) {
			return false
		}
	}
	for _, label := range labels {
		r.g.Write(label)
		r.g.crowd.Take(label.Extent().Grow(0.3))
	}
	return true
}

func (r run) label(text string, l geometry.Length, side int, depth, height geometry.Length, bold, second bool) paper.Label {
	var anchors [3]paper.Anchor // by side + 1
	switch {
	case !r.down && !second:
		anchors = [3]paper.Anchor{paper.AnchorBottomRight, paper.AnchorBottom, paper.AnchorBottomLeft}
	case !r.down:
		anchors = [3]paper.Anchor{paper.AnchorTopRight, paper.AnchorTop, paper.AnchorTopLeft}
	case !second:
		anchors = [3]paper.Anchor{paper.AnchorBottomRight, paper.AnchorRight, paper.AnchorTopRight}
	default:
		anchors = [3]paper.Anchor{paper.AnchorBottomLeft, paper.AnchorLeft, paper.AnchorTopLeft}
	}
	return paper.Label{Text: text, At: r.at(l, depth, second), Anchor: anchors[side+1], Height: height, Bold: bold}
}

// drawLines draws the crease and the tape lines of the run, which reach farther out than the
// ticks of columns and rows and carry their names at their ends.
func (r run) drawLines(p plan.FacePass, families [][]span) {
	reach := r.g.reach
	outer := max(tickClear+tickLength, reach-6)
	// Beside the cloth a name takes its length off the reach. Where it does not fit at the end of
	// its tick it goes beyond the figures by the ticks, or above or below them.
	var figures geometry.Length
	for _, s := range slices.Concat(families...) {
		for _, l := range []geometry.Length{s.lo, s.hi} {
			figures = max(figures, paper.TextWidth(r.distance(l), tickText, false))
		}
	}
	named := func(l geometry.Length, name string) {
		for _, h := range []geometry.Length{tickText, 1.8} {
			type place struct{ depth, off geometry.Length }
			places := []place{{outer - h, 1.3}}
			if r.down {
				beyond := tickClear + figures + 1
				places = append(places, place{beyond, 1.3}, place{beyond, 2.4}, place{tickClear, 3.4 + tickText})
			}
			for _, at := range places {
				for _, side := range []int{1, -1} {
					if r.write(name, l+at.off*geometry.Length(side), side, at.depth, h, false) {
						return
					}
				}
			}
		}
	}
	if p.First == 1 {
		c := (r.from + r.to) / 2
		r.line(c, tickClear, outer, r.g.pens.Crease)
		named(c, "centre "+r.distance(c))
	}
	if p.Tape == nil {
		return
	}
	lines := p.Tape.Across
	if r.down {
		lines = p.Tape.Down
	}
	for _, l := range lines {
		// In a short reach it lies over the tick of the edge, wide as it is.
		r.line(l, max(tickClear, min(tickClear+tickLength, outer-3)), outer, r.g.pens.Tape)
		for _, second := range []bool{false, true} {
			r.g.Fill(r.head(l, outer, second), paper.Ink{})
		}
		name := "tape"
		if r.down && (l-p.Tape.Start).Abs() <= geometry.Tolerance {
			name = "start tape"
		}
		if len(r.g.face.Passes) > 1 {
			name += " " + p.Pass.Name
		}
		named(l, name)
	}
}

// head is the mark at the outer end of a tape's tick: a triangle that points at the cloth.
func (r run) head(l, depth geometry.Length, second bool) geometry.Path {
	path := geometry.Polygon{
		r.at(l, depth-tapeHead, second), r.at(l+tapeHead/2, depth, second), r.at(l-tapeHead/2, depth, second),
	}
	r.g.crowd.Take(path.Bounds())
	return path.Path()
}

// Taped tells whether the guide has tape lines.
func Taped(f plan.FacePlan) bool {
	return slices.ContainsFunc(f.Passes, func(p plan.FacePass) bool { return p.Tape != nil })
}

// Ticked tells whether the guide has ticks for the edges of rows or columns.
func Ticked(f plan.FacePlan) bool {
	return slices.ContainsFunc(f.Passes, func(p plan.FacePass) bool {
		return p.ColumnsInLine || p.RowsInLine || p.Pass.Framed() || p.Pass.Slanted()
	})
}

func (r run) distance(l geometry.Length) string { return r.g.job.Units.Number(l - r.from) }

// caption says, in the corner of the reach, what the figures by the ticks are.
func (g *guide) caption(r run) {
	text := []string{"from left", "edge, " + g.job.Units.String()}
	at := geometry.Pt(g.cloth.Min.X-2, g.cloth.Min.Y-tickClear-tickLength)
	if r.down {
		text = []string{"from top", "edge, " + g.job.Units.String()}
		at.Y = g.cloth.Min.Y - 4.5
	}
	for i, t := range text {
		l := paper.Label{Text: t, At: at.Add(geometry.Pt(0, geometry.Length(i)*3-3)), Anchor: paper.AnchorTopRight, Height: 1.8}
		if box := l.Extent().Grow(0.3); g.Bounds.Holds(box) && g.crowd.Free(box) {
			g.Write(l)
			g.crowd.Take(box)
		}
	}
}
