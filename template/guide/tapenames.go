package guide

import (
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// nameTapes writes the names of the tape lines: of start tapes, or of the others.
func (r *run) nameTapes(starts bool) {
	for _, t := range r.tapeLines() {
		if t.start != starts {
			continue
		}
		words, figure := []string{"tape"}, false
		if t.start {
			words = []string{"start", "tape"}
		}
		if !slices.ContainsFunc(r.bands, func(b track) bool { return slices.ContainsFunc(b.lines(), near(t.at)) }) {
			words = append(words, r.distance(t.at)) // no tick says it
			figure = true
		}
		rows := [][]string{{strings.Join(words, " ")}, words}
		if t.pass != "" {
			pass := short(t.pass)
			rows = [][]string{{rows[0][0] + ", " + pass}, {rows[0][0] + ",", pass}, append(words[:len(words)-1:len(words)-1], words[len(words)-1]+","), nil}
			rows[2], rows[3] = append(rows[2], pass), append(rows[2], wrapped(pass, tickText, narrowName)...)
		}
		if !r.writeAt(t.at, r.tapeTexts(rows, t.at, text{height: tickText, figure: figure, role: paper.Role{Kind: RoleTape}})) {
			r.g.leave(rows[0][0])
		}
	}
}

func near(l geometry.Length) func(geometry.Length) bool {
	return func(m geometry.Length) bool { return m > l-sameLine && m < l+sameLine }
}

// The most that the name of a pass takes up by a tick, and where there is little room.
const (
	longName   = 40 * geometry.Millimetre
	narrowName = 14 * geometry.Millimetre
)

func short(pass string) string { return paper.Shorten(pass, tickText, false, longName) }

// tapeTexts lists places for the name of a tape line or a crease, at first such as leave room for
// the figure of a tick by the line.
func (r *run) tapeTexts(rows [][]string, l geometry.Length, t text) []text {
	var places, last []text
	for _, row := range rows {
		t.rows = row
		if !r.down {
			places = append(places, r.beside(t, l, r.outer-tickText, headAir)...)
			places = append(places, r.beside(t, l, r.beyond+textAir, headAir)...)
			continue
		}
		// Farther out than a figure by the line, or a row farther off.
		const step = 1 * geometry.Millimetre
		figures := r.pastFigures(l)
		for d := max(r.outer-tapeHead, figures); d > figures; d -= step {
			places = append(places, r.beside(t, l, d, headAir)...)
		}
		places = append(places, r.beside(t, l, figures, headAir)...)
		for d := r.outer; d > 0; d -= step {
			near := r.beside(t, l, max(d, tickClear), headAir)
			last = append(last, near...)
			for _, p := range near {
				p.at += (tickText + aboveAir + tails) * geometry.Length(p.side)
				places = append(places, p)
			}
		}
		last = append(last, past(t, l, r.outer))
	}
	return append(places, last...)
}

// pastFigures is where the figures by ticks at l end, where lines run across.
func (r *run) pastFigures(l geometry.Length) geometry.Length {
	end := r.beyond
	for _, t := range r.bands {
		if slices.ContainsFunc(t.lines(), near(l)) {
			end = t.depth + r.widest() + 3*textAir
		}
	}
	return end
}

// nameCrease writes the name of the centre line, and where it is.
func (r *run) nameCrease() {
	if !r.creased() {
		return
	}
	c, name := r.creaseAt(), "centre"
	if r.cutAt(c) {
		name = "centre, cut"
	}
	r.nameLine(name, c, r.outer+creaseMore, paper.Role{Kind: RoleCrease})
}

// nameLine writes the name of a line that ends at a depth, and where it is.
func (r *run) nameLine(line string, l, end geometry.Length, role paper.Role) {
	rows := [][]string{{line + " " + r.distance(l)}, {line, r.distance(l)}}
	if r.g.face.Item.Area.Flat != nil || r.g.crooked() {
		rows = [][]string{{line}} // no straight edge to measure from
	}
	name := text{height: tickText, figure: true, role: role}
	var places []text
	for _, row := range slices.Backward(rows) {
		name.rows = row
		places = append(places, past(name, l, end))
	}
	if r.writeAt(l, append(places, r.tapeTexts(rows, l, name)...)) {
		r.figures = r.figures || r.g.face.Item.Area.Flat == nil && !r.g.crooked()
		return
	}
	r.g.leave(line)
}
