package sheets

import (
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// barPen draws the check bars.
var barPen = paper.Pen{Type: paper.Continuous, Width: 0.35, Ink: paper.Ink{}}

// Check bars: half a tick, letters, and the plain paper between line and letters.
const (
	barTick   = 1.5 * geometry.Millimetre
	barHeight = 2.5 * geometry.Millimetre
	barGap    = 1.2 * geometry.Millimetre
)

// bar is a line of known length: as the maker measures it, and as it is drawn.
type bar struct {
	label []string // in one row, or one under the other
	brief string   // as short as can be
	drawn geometry.Length
}

// bars returns the check bars for one way across a page that shows usable of it and draws
// everything larger by scale: 50 mm and, where the maker works in inches, 2 in; shorter where
// the page is too small for them.
func bars(usable geometry.Length, scale float64, inches bool) []bar {
	type nominal struct {
		label, brief string
		length       geometry.Length
	}
	lengths := []nominal{{"50 mm", "5 cm", 50}, {"2 in", "2 in", 2 * geometry.Inch}}
	if usable < 60*geometry.Length(scale) {
		lengths = []nominal{{"20 mm", "2 cm", 20}, {"3/4 in", "3/4 in", 0.75 * geometry.Inch}}
	}
	if !inches {
		lengths = lengths[:1]
	}
	var all []bar
	for _, n := range lengths {
		b := bar{[]string{n.label}, n.brief, n.length * geometry.Length(scale)}
		if scale != 1 {
			b.label = []string{n.label + ",", "corrected"}
		}
		all = append(all, b)
	}
	return all
}

// barStyle is how large the ticks and letters of bars are, and where the letters stand: beside the
// bar's middle, or beyond its end, where the bar takes less room.
type barStyle struct {
	tick, height geometry.Length
	beyond       bool
}

var (
	usualBar = barStyle{barTick, barHeight, false}
	slimBar  = barStyle{1.25, barHeight, true}
	leastBar = barStyle{0.8, 1.8, true}
)

// barsAcross returns a sign with the bars one under the other, their left ends in line, each
// with its length above it, or beyond its right end.
func barsAcross(all []bar, style barStyle) paper.Drawing {
	var d paper.Drawing
	for i, b := range all {
		y := geometry.Length(i) * (style.height + 2*(barGap+style.tick))
		if style.beyond {
			y = geometry.Length(i) * (max(2*style.tick, style.height) + barGap)
		}
		d.Stroke(geometry.Line(geometry.Pt(0, y), geometry.Pt(b.drawn, y)), barPen)
		for _, x := range []geometry.Length{0, b.drawn} {
			d.Stroke(geometry.Line(geometry.Pt(x, y-style.tick), geometry.Pt(x, y+style.tick)), barPen)
		}
		text := strings.Join(b.label, " ")
		if style.beyond {
			d.Write(paper.Label{Text: text, At: geometry.Pt(b.drawn+barGap, y), Anchor: paper.AnchorLeft, Height: style.height})
			continue
		}
		over := barGap
		if paper.TextWidth(text, style.height, false) > b.drawn-2*barGap {
			over = style.tick + barGap/2 // clear of the ticks
		}
		d.Write(paper.Label{Text: text, At: geometry.Pt(b.drawn/2, y-over), Anchor: paper.AnchorBottom, Height: style.height})
	}
	return sign(d)
}

// barsDown returns a sign with the bars side by side, their top ends in line, each with its
// length to the right of it, or, in few letters, beyond its lower end.
func barsDown(all []bar, style barStyle) paper.Drawing {
	pitch := 1.9 * style.height
	var d paper.Drawing
	var x geometry.Length
	for _, b := range all {
		rows := b.label
		if style.beyond {
			// No figure stands alone: it would be taken for a print's number.
			rows = append([]string{b.brief}, b.label[1:]...)
		}
		widest := geometry.Length(0)
		for _, text := range rows {
			widest = max(widest, paper.TextWidth(text, style.height, false))
		}
		at, anchor, y := x+barGap, paper.AnchorLeft, b.drawn/2-pitch*geometry.Length(len(rows)-1)/2
		if style.beyond {
			at, anchor, y = x, paper.AnchorTop, b.drawn+style.tick
		}
		d.Stroke(geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, b.drawn)), barPen)
		for _, y := range []geometry.Length{0, b.drawn} {
			d.Stroke(geometry.Line(geometry.Pt(x-style.tick, y), geometry.Pt(x+style.tick, y)), barPen)
		}
		for _, text := range rows {
			d.Write(paper.Label{Text: text, At: geometry.Pt(at, y), Anchor: anchor, Height: style.height})
			y += pitch
		}
		if style.beyond {
			x += max(2*style.tick, widest) + barGap
		} else {
			x += barGap + widest + 2*style.tick
		}
	}
	return sign(d)
}
