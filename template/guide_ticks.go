package template

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
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

// mostFamilies is how many sets of columns, each moved against the others, ticks can tell apart.
const mostFamilies = 4

// run is the ticks along one direction: across, of lines that run up and down.
type run struct {
	g        *guide
	down     bool            // the lines run across, their ticks are left and right of the cloth
	from, to geometry.Length // the cloth along the run
}

// span is one column or row: from edge to edge.
type span struct {
	lo, hi geometry.Length
	name   string
}

// drawTicks draws the ticks of columns and rows, creases and tapes, on both ends of each line,
// with their names and their distance from the cloth's left or top edge.
func (g *guide) drawTicks() {
	reach := g.job.Paper.Reach
	if reach < tickClear+tickLength {
		return
	}
	for _, r := range []run{
		{g, false, g.cloth.Min.X, g.cloth.Max.X},
		{g, true, g.cloth.Min.Y, g.cloth.Max.Y},
	} {
		g.caption(r)
		passes := g.face.Passes
		band := 0
		for _, p := range passes {
			r.drawLines(p)
			families := r.families(p, len(passes) > 1)
			if len(families) > mostFamilies {
				continue
			}
			for _, spans := range families {
				r.drawSpans(band%g.bands(), spans)
				band++
			}
		}
	}
}

// bands is how many bands of ticks the reach has room for, names of tapes and creases outside
// them.
func (g *guide) bands() int {
	return max(1, int((g.job.Paper.Reach-tickClear-9)/bandDepth))
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
		r.g.crowd.take(b)
	}
}

// write puts a label at both ends: along the run its middle at l (side 0), or all of it before
// (-1) or after (1) l; its inner edge at depth. It tells whether there was room at both.
func (r run) write(text string, l geometry.Length, side int, depth, height geometry.Length, bold bool) bool {
	var labels []paper.Label
	for _, second := range []bool{false, true} {
		labels = append(labels, r.label(text, l, side, depth, height, bold, second))
		box := labels[len(labels)-1].Extent().Grow(0.3)
		if !r.g.crowd.free(box) || !r.g.Bounds.Holds(box) {
			return false
		}
	}
	for _, label := range labels {
		r.g.Write(label)
		r.g.crowd.take(label.Extent().Grow(0.3))
	}
	return true
}

func (r run) label(text string, l geometry.Length, side int, depth, height geometry.Length, bold, second bool) paper.Label {
	anchors := map[bool]map[bool][3]paper.Anchor{ // by direction, by end, by side + 1
		false: {
			false: {paper.AnchorBottomRight, paper.AnchorBottom, paper.AnchorBottomLeft},
			true:  {paper.AnchorTopRight, paper.AnchorTop, paper.AnchorTopLeft},
		},
		true: {
			false: {paper.AnchorBottomRight, paper.AnchorRight, paper.AnchorTopRight},
			true:  {paper.AnchorBottomLeft, paper.AnchorLeft, paper.AnchorTopLeft},
		},
	}
	return paper.Label{Text: text, At: r.at(l, depth, second), Anchor: anchors[r.down][second][side+1], Height: height, Bold: bold}
}

// drawLines draws the crease and the tape lines of the run, which reach farther out than the
// ticks of columns and rows and carry their names at their ends.
func (r run) drawLines(p FacePass) {
	reach := r.g.job.Paper.Reach
	outer := max(tickClear+tickLength, reach-6)
	named := func(l geometry.Length, name string) {
		for _, h := range []geometry.Length{tickText, 1.8} {
			for _, side := range []int{1, -1} {
				off := 1.3 * geometry.Length(side)
				if r.write(name, l+off, side, outer-h, h, false) {
					return
				}
			}
		}
	}
	if p.First == 1 {
		c := (r.from + r.to) / 2
		r.line(c, tickClear, outer, r.g.pens.crease)
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
		r.line(l, tickClear+tickLength, outer, r.g.pens.tape)
		for _, second := range []bool{false, true} {
			r.g.Fill(r.head(l, outer, second), paper.Ink{})
		}
		name := "tape"
		if r.down && absLength(l-p.Tape.Start) <= geometry.Tolerance {
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
	r.g.crowd.take(path.Bounds())
	return path.Path()
}

func (r run) distance(l geometry.Length) string { return r.g.job.Units.Number(l - r.from) }

// families returns the columns or rows of a pass, each from the least: those in line with the
// rows or columns that are not moved, then those moved. There are none where prints are turned
// off the square.
func (r run) families(p FacePass, several bool) [][]span {
	pitch, word := p.Choice().Pitch.Across, "column"
	if r.down {
		pitch, word = p.Choice().Pitch.Down, "row"
	}
	first := word
	if several {
		first = p.Pass.Name
	}
	var families [][]span
	var phases []geometry.Length
	seen := map[int]bool{}
	for _, print := range r.fromCentre(p) {
		if math.Mod(float64(print.Turn), 90) != 0 || pitch <= 0 {
			return nil
		}
		k, b := print.Column, print.Footprint.Outline.Bounds()
		s := span{lo: b.Min.X, hi: b.Max.X}
		if r.down {
			k, s = print.Row, span{lo: b.Min.Y, hi: b.Max.Y}
		}
		// Lines nearer than a hundredth of a millimetre are one line on paper.
		at := int(math.Round(float64(s.lo) * 100))
		if seen[at] || k == 0 {
			continue
		}
		seen[at] = true
		phase := geometry.Length(math.Mod(float64(s.lo), float64(pitch)))
		i := slices.IndexFunc(phases, func(q geometry.Length) bool {
			d := absLength(q - phase)
			return min(d, pitch-d) < 0.01
		})
		if i < 0 {
			phases, families = append(phases, phase), append(families, nil)
			i = len(phases) - 1
		}
		name := first
		if i > 0 {
			name += " moved"
		}
		s.name = name + " " + strconv.Itoa(k)
		families[i] = append(families[i], s)
	}
	for _, f := range families {
		slices.SortFunc(f, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	}
	return families
}

// fromCentre returns the prints of a pass with those of the row (or column) that is not moved
// first: the one through the centre or next after it.
func (r run) fromCentre(p FacePass) []Print {
	c := r.g.face.Item.Area.Rect.Centre()
	off := func(print Print) geometry.Length {
		d := print.Origin.Y - c.Y
		if r.down {
			d = print.Origin.X - c.X
		}
		if d < -geometry.Tolerance {
			return -2 * d // one before the centre comes after the one as far behind it
		}
		return d
	}
	prints := slices.Clone(p.Prints)
	slices.SortStableFunc(prints, func(a, b Print) int { return cmp.Compare(off(a), off(b)) })
	return prints
}

// drawSpans draws a tick for both edges of every column or row, its name between them, and
// beside each tick, within its own column or row, the distance from the cloth's edge.
func (r run) drawSpans(band int, spans []span) {
	depth := tickClear + bandDepth*geometry.Length(band)
	for _, s := range spans {
		r.line(s.lo, depth, depth+tickLength, r.g.pens.tick)
		r.line(s.hi, depth, depth+tickLength, r.g.pens.tick)
	}
	width := spans[0].hi - spans[0].lo
	pitch := width
	if len(spans) > 1 {
		pitch = spans[1].lo - spans[0].lo
	}
	last := spans[len(spans)-1]
	// Along the run a name takes its width, or for rows its height.
	along := func(text string, h geometry.Length, bold bool) geometry.Length {
		if r.down {
			return h
		}
		return paper.TextWidth(text, h, bold)
	}
	figures := 2 * (along(r.distance(last.hi), tickText, false) + 1.5)
	short := along(last.name, nameText, true)+figures+2 > width
	name := func(s span, i int) string {
		if short {
			return strconv.Itoa(i + 1)
		}
		return s.name
	}
	height := nameText
	for height > 1.8 && along(name(last, len(spans)-1), height, true)+0.8 > pitch {
		height = map[geometry.Length]geometry.Length{3.5: 2.5, 2.5: 1.8}[height]
	}
	every := 1
	for _, n := range []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000} {
		every = n
		if geometry.Length(n)*pitch >= along(name(last, len(spans)-1), height, true)+0.8 {
			break
		}
	}
	inner := depth + tickLength - height
	if r.down {
		inner = depth
	}
	crowded := along(name(last, len(spans)-1), height, true)+figures > width
	for i, s := range spans {
		if (i+1)%every != 0 && i != 0 {
			continue
		}
		mid := (s.lo + s.hi) / 2
		// A crease runs through the middle of a column that is printed on it.
		if !r.write(name(s, i), mid, 0, inner, height, true) {
			for _, side := range []int{-1, 1} {
				if r.write(name(s, i), mid+0.9*geometry.Length(side), side, inner, height, true) {
					break
				}
			}
		}
	}
	figuresAt := depth + tickLength - tickText
	if r.down {
		figuresAt = depth
	}
	if crowded {
		figuresAt = depth + tickLength + 1
		if r.down {
			figuresAt = depth + paper.TextWidth(name(last, len(spans)-1), height, true) + 1.5
		}
	}
	// Clear of the tick, and of the neighbour's where prints lap; figures in a row stand above
	// or below the tick, and a fraction's stroke reaches beyond its figures.
	off := 0.7 + max(0, width-pitch)
	if r.down {
		off += 0.5
	}
	for _, s := range spans {
		for _, e := range []struct {
			l    geometry.Length
			side int
		}{{s.lo, 1}, {s.hi, -1}} {
			l := e.l + off*geometry.Length(e.side)
			if !r.write(r.distance(e.l), l, e.side, figuresAt, tickText, false) {
				r.write(r.distance(e.l), l, e.side, figuresAt+tickText+1, tickText, false)
			}
		}
	}
}

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
		if box := l.Extent().Grow(0.3); g.Bounds.Holds(box) && g.crowd.free(box) {
			g.Write(l)
			g.crowd.take(box)
		}
	}
}
