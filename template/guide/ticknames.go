package guide

import (
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// nameStyle is one way to write the names of a track's columns or rows, alike for all.
type nameStyle struct {
	height  geometry.Length
	light   bool            // not bold
	wrap    geometry.Length // the pass stands above, wrapped to this width; 0: before the name
	depth   geometry.Length // of the names
	figures geometry.Length // of the figures that go with it
	clear   geometry.Length // what has to be free of ticks, besides the name
}

// nameStyles lists the ways from the best.
func (r *run) nameStyles(t *track) []nameStyle {
	figures := r.widest()
	deep := t.depth + max(figures, t.length) + 2*endAir
	if r.down {
		rows := 2 * (tickText + aboveAir + nameAir) // figures above and below
		styles := []nameStyle{{height: tickText, depth: t.depth, clear: rows}}
		if len(r.bands) == 1 {
			styles = slices.Insert(styles, 0, nameStyle{height: nameText, depth: t.depth, clear: rows})
		}
		return append(styles,
			nameStyle{height: tickText, light: true, depth: t.depth - textAir, clear: rows},
			nameStyle{height: tickText, wrap: max(figures, t.length), depth: t.depth, clear: rows},
			nameStyle{height: tickText, wrap: longName, depth: t.depth, clear: rows},
			nameStyle{height: tickText, depth: deep},
			nameStyle{height: tickText, wrap: longName, depth: deep},
		)
	}
	inner, outside, end := t.depth+endAir, t.depth+namesRows, t.depth+t.length+endAir
	low := end - tickText
	// A long name moves where a join runs through it.
	slack := geometry.Length(nameAir)
	if t.pass != "" {
		slack = joinSlack
	}
	return []nameStyle{
		{height: nameText, depth: inner, figures: inner, clear: 2 * (figures + lineAir + 2*textAir)},
		{height: tickText, depth: t.depth, figures: outside, clear: slack},
		{height: tickText, wrap: longName, depth: t.depth, figures: outside + tickText*textRow, clear: nameAir},
		{height: tickText, depth: end + tickText + endAir, figures: low},
		{height: tickText, wrap: longName, depth: end + tickText + endAir, figures: low},
		{height: tickText, depth: end, figures: t.depth},
		{height: tickText, wrap: longName, depth: end, figures: t.depth},
	}
}

// nameStripes writes the names of the columns or rows of a track in their middles, all in the
// first style with room for every one, or for every second, fifth and so on. One that is in the
// way of something is tried farther out.
func (r *run) nameStripes(t *track) {
	var best []text
	for _, style := range r.nameStyles(t) {
		texts := r.stripeNames(t, style)
		if len(texts) > len(best) {
			best, t.figures = texts, max(t.depth, style.figures)
		}
		if len(best) == len(t.stripes) {
			break
		}
	}
	for _, name := range best {
		r.write(name)
	}
	if len(best) == 0 {
		r.g.leave(t.stripes[0].name)
	}
}

// stripeNames returns the names in a style of as many columns or rows as it has places for: of
// all, or every second, fifth and so on.
func (r *run) stripeNames(t *track, style nameStyle) []text {
	names := make([]text, len(t.stripes))
	var longest geometry.Length
	for i, s := range t.stripes {
		names[i] = text{rows: []string{s.name}, at: s.middle, depth: style.depth, height: style.height, bold: !style.light, role: paper.Role{Kind: RoleName, Number: s.number}}
		switch {
		case t.pass == "" && style.wrap > 0:
			return nil
		case t.pass == "":
		case style.wrap > 0:
			names[i].rows = append(wrapped(short(t.pass)+",", style.height, style.wrap), s.name)
		default:
			names[i].rows = []string{short(t.pass) + ", " + s.name}
		}
		longest = max(longest, r.along(names[i]))
	}
	if style.clear > 0 && longest+style.clear > t.clear() {
		return nil
	}
	every := 1
	for _, every = range []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000} {
		if longest+2*nameAir <= geometry.Length(every)*t.step() || style.clear > 0 {
			break
		}
	}
	var kept []text
	for i, name := range names {
		if (i+1)%every != 0 && i > 0 || i == 0 && every > 1 && len(names) >= every && longest+2*nameAir > geometry.Length(every-1)*t.step() {
			continue
		}
		const step = 1 * geometry.Millimetre
		for ; name.depth < r.g.reach; name.depth += step {
			if r.free(name) {
				kept = append(kept, name)
				break
			}
		}
	}
	return kept
}

// wrapped breaks a text into rows at most so wide, words whole.
func wrapped(s string, height, width geometry.Length) []string {
	var rows []string
	for _, word := range strings.Fields(s) {
		if n := len(rows); n > 0 && paper.TextWidth(rows[n-1]+" "+word, height, true) <= width {
			rows[n-1] += " " + word
			continue
		}
		rows = append(rows, word)
	}
	return rows
}

// along is what a text takes up along the run.
func (r *run) along(t text) geometry.Length {
	if r.down {
		return t.height * (1 + textRow*geometry.Length(len(t.rows)-1))
	}
	var most geometry.Length
	for i, row := range t.rows {
		most = max(most, paper.TextWidth(row, t.height, t.bold && i == len(t.rows)-1))
	}
	return most
}
