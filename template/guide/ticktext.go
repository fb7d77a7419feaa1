package guide

import (
	"math"
	"sort"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// Air round the text by ticks.
const (
	textAir   = 0.3 * geometry.Millimetre  // on all sides, from anything
	lineAir   = 0.7 * geometry.Millimetre  // beside the line a text belongs to
	headAir   = 1.3 * geometry.Millimetre  // beside the head of a tape line
	aboveAir  = 1.2 * geometry.Millimetre  // above or below it: a fraction's stroke and tails reach out
	nearerBy  = 0.05 * geometry.Millimetre // by how much a text is nearer to its own line than to any other
	tails     = 0.6 * geometry.Millimetre  // of small letters, below the line they stand on
	textRow   = 1.5                        // from row to row of a text, in heights of its letters
	nameAir   = 0.8 * geometry.Millimetre  // on either side of a name between ticks
	joinSlack = 10 * geometry.Millimetre   // the same of a long name
	namesRows = 3.8 * geometry.Millimetre  // from the names between ticks to the figures outside them
	endAir    = 0.8 * geometry.Millimetre  // from the end of a tick to what stands beyond it
)

// text is something written at both ends of a line.
type text struct {
	rows   []string
	at     geometry.Length // along the run
	side   int             // all of it before (-1) or after (1) at, or its middle there (0)
	depth  geometry.Length // of its inner edge
	height geometry.Length
	bold   bool // the last row is
	figure bool // the last row is a distance
	role   paper.Role
}

// labels returns the rows of the text at one end.
func (r *run) labels(t text, second bool) []paper.Label {
	lead := t.height * textRow
	whole := t.height + lead*geometry.Length(len(t.rows)-1)
	anchors := [3]paper.Anchor{paper.AnchorTopRight, paper.AnchorTop, paper.AnchorTopLeft} // by side + 1
	at, anchor := r.at(t.at, t.depth, second), anchors[t.side+1]
	switch {
	case r.down:
		anchor = paper.AnchorTopRight
		if second {
			anchor = paper.AnchorTopLeft
		}
		at.Y -= whole * geometry.Length(1-t.side) / 2
	case !second:
		at.Y -= whole
	}
	labels := make([]paper.Label, len(t.rows))
	for i, row := range t.rows {
		labels[i] = paper.Label{Text: row, At: at.Add(geometry.Pt(0, lead*geometry.Length(i))), Anchor: anchor, Height: t.height, Bold: t.bold && i == len(t.rows)-1, Role: t.role}
	}
	return labels
}

// free tells whether there is room for the text at both ends.
func (r *run) free(t text) bool {
	for _, second := range []bool{false, true} {
		box := r.box(t, second)
		if !r.g.Bounds.Holds(box) || !r.g.crowd.Free(box.Grow(textAir)) {
			return false
		}
	}
	return true
}

// box is what the text takes up at one end.
func (r *run) box(t text, second bool) geometry.Rect {
	labels := r.labels(t, second)
	box := labels[0].Extent()
	for _, l := range labels[1:] {
		box = box.Union(l.Extent())
	}
	return box
}

// write puts the text at both ends.
func (r *run) write(t text) {
	for _, second := range []bool{false, true} {
		r.g.put(r.labels(t, second)...)
	}
}

// put writes labels, and takes their places.
func (g *guide) put(labels ...paper.Label) {
	for _, l := range labels {
		g.Write(l)
		g.crowd.Take(l.Extent().Grow(textAir))
	}
}

// writeAt writes the text in the first of its places that is free at both ends and nearer to its
// own line, at l, than to any other. It tells whether there was one.
func (r *run) writeAt(l geometry.Length, places []text) bool {
	for _, t := range places {
		if r.free(t) && r.nearest(t, l) {
			r.write(t)
			return true
		}
	}
	return false
}

// nearest tells whether, at both ends, the line nearest to the text is the one at l.
func (r *run) nearest(t text, l geometry.Length) bool {
	for _, second := range []bool{false, true} {
		boxes := []geometry.Rect{r.box(t, second)}
		if t.figure && len(t.rows) > 1 {
			boxes = append(boxes, r.labels(t, second)[len(t.rows)-1].Extent())
		}
		for _, box := range boxes {
			if !r.nearestBox(box, second, l) {
				return false
			}
		}
	}
	return true
}

// nearestBox tells whether the line nearest to a box at one end is the one at l.
func (r *run) nearestBox(box geometry.Rect, second bool, l geometry.Length) bool {
	along, depth := r.inRun(box, second)
	own, other := geometry.Length(math.Inf(1)), geometry.Length(math.Inf(1))
	for i := r.indexOf(l - sameLine); i < len(r.lines) && r.lines[i].at <= l+sameLine; i++ {
		own = min(own, r.lines[i].distance(along, depth))
	}
	reach := own + nearerBy
	for i := r.indexOf(along.lo - reach); i < len(r.lines) && r.lines[i].at <= along.hi+reach; i++ {
		if at := r.lines[i].at; at < l-sameLine || at > l+sameLine {
			other = min(other, r.lines[i].distance(along, depth))
		}
	}
	return other >= reach && r.g.clearOfSlants(box.Grow(reach))
}

// indexOf returns the index of the first line at l or after it.
func (r *run) indexOf(l geometry.Length) int {
	return sort.Search(len(r.lines), func(i int) bool { return r.lines[i].at >= l })
}

// inRun returns what a box at one end takes up along the run, and of the depth.
func (r *run) inRun(box geometry.Rect, second bool) (along, depth extent) {
	zero := r.at(0, 0, second)
	x, y := extent{box.Min.X, box.Max.X}, extent{box.Min.Y, box.Max.Y}
	along, depth = x, extent{y.lo - zero.Y, y.hi - zero.Y}
	if r.down {
		along, depth = y, extent{x.lo - zero.X, x.hi - zero.X}
	}
	if !second {
		depth = extent{-depth.hi, -depth.lo}
	}
	return along, depth
}

// distance is how far a box is from the tick.
func (t tickLine) distance(along, depth extent) geometry.Length {
	return geometry.Pt(max(along.lo-t.at, t.at-along.hi, 0), max(t.from-depth.hi, depth.lo-t.to, 0)).Norm()
}

// beside lists places for a text by the line at l: on the side with more room first. The text
// begins at a depth, and keeps some air from the line; above and below it takes more.
func (r *run) beside(t text, l, depth, air geometry.Length) []text {
	above := air // tails of letters hang down to a line
	switch {
	case r.down && air == headAir:
		above = headAir + tails
	case r.down:
		air, above = aboveAir, aboveAir
	}
	side := 1
	before, after := geometry.Length(math.Inf(1)), geometry.Length(math.Inf(1))
	if i := r.indexOf(l - sameLine); i > 0 {
		before = l - r.lines[i-1].at
	}
	if i := r.indexOf(l + sameLine); i < len(r.lines) {
		after = r.lines[i].at - l
	}
	if before > after {
		side = -1
	}
	places := []text{t, t}
	for i, s := range []int{side, -side} {
		places[i].at, places[i].side, places[i].depth = l+air, s, depth
		if s < 0 {
			places[i].at = l - above
		}
	}
	return places
}

// past puts a text beyond the end of a tick, its middle on it.
func past(t text, l, depth geometry.Length) text {
	t.at, t.side, t.depth = l, 0, depth+endAir
	return t
}

// writeFigures writes beside each tick, or beyond its end, its distance from the cloth's edge:
// first those of the outermost ticks, then of the first edge of each column or row, then of the
// others.
func (r *run) writeFigures(t track) {
	lines := t.lines()
	if len(lines) == 0 {
		return
	}
	order := []geometry.Length{lines[0], lines[len(lines)-1]}
	for _, s := range t.stripes {
		order = append(order, s.edges[0])
	}
	order = append(order, lines...)
	done := map[geometry.Length]bool{}
	for _, l := range order {
		if done[l] {
			continue
		}
		done[l] = true
		figure := text{rows: []string{r.distance(l)}, height: tickText, role: paper.Role{Kind: RoleFigure}}
		places := append(r.beside(figure, l, t.figures, lineAir), r.beside(figure, l, t.depth, lineAir)...)
		if r.writeAt(l, append(places, past(figure, l, t.depth+t.length))) {
			r.figures = true
		}
	}
}

// writeCaption says once on each side what the figures by the ticks are.
func (r *run) writeCaption() {
	if len(r.bands) == 0 && !r.figures {
		return
	}
	edge := "left"
	if r.down {
		edge = "far"
		if r.fromNear() {
			edge = "near"
		}
	}
	what := r.g.face.Item.Area.Outermost() + ", "
	unit := r.g.job.Units.String()
	t := text{height: tickText, role: paper.Role{Kind: RoleCaption}}
	const step, away = 1 * geometry.Millimetre, 1 * geometry.Millimetre
	var places []text
	add := func(at geometry.Length, side int, depth geometry.Length) {
		t.at, t.side, t.depth = at, side, depth
		places = append(places, t)
	}
	for _, t.rows = range [][]string{{"from " + edge, what + unit}, {"from", edge, strings.TrimSpace(what), unit}} {
		for d := geometry.Length(0); d < r.g.reach; d += step {
			if r.down {
				add(r.from+step+d, 1, away)
				add(r.from-away-d, -1, away)
			} else {
				add(r.from-away, -1, away+d)
				add(r.to+away, 1, away+d)
			}
		}
	}
	for _, p := range places {
		if r.free(p) {
			r.write(p)
			return
		}
	}
	r.g.leave(strings.Join(t.rows, " "))
}
