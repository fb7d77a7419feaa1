package paper

import (
	"strings"

	"underlay/geometry"
)

// barPen draws the check bars.
var barPen = Pen{Continuous, 0.35, Ink{}}

// Check bars: half a tick, letters, and the plain paper between line and letters.
const (
	barTick   = 1.5 * geometry.Millimetre
	barHeight = 2.5 * geometry.Millimetre
	barGap    = 1.2 * geometry.Millimetre
)

// bar is a line of known length: as the maker measures it, and as it is drawn.
type bar struct {
	label []string // in one row, or one under the other
	drawn geometry.Length
}

// bars returns the check bars for one way across a page that shows usable of it and draws
// everything larger by scale: 50 mm and, where the maker works in inches, 2 in; shorter where
// the page is too small for them.
func bars(usable geometry.Length, scale float64, inches bool) []bar {
	type nominal struct {
		label  string
		length geometry.Length
	}
	lengths := []nominal{{"50 mm", 50}, {"2 in", 2 * geometry.Inch}}
	if usable < 60*geometry.Length(scale) {
		lengths = []nominal{{"20 mm", 20}, {"3/4 in", 0.75 * geometry.Inch}}
	}
	if !inches {
		lengths = lengths[:1]
	}
	var all []bar
	for _, n := range lengths {
		b := bar{[]string{n.label}, n.length * geometry.Length(scale)}
		if scale != 1 {
			b.label = []string{n.label + ",", "corrected"}
		}
		all = append(all, b)
	}
	return all
}

// barsAcross returns a sign with the bars one under the other, their left ends in line, each
// with its length above it.
func barsAcross(all []bar) Drawing {
	var d Drawing
	for i, b := range all {
		y := geometry.Length(i) * (barHeight + 2*(barGap+barTick))
		d.Stroke(geometry.Line(geometry.Pt(0, y), geometry.Pt(b.drawn, y)), barPen)
		for _, x := range []geometry.Length{0, b.drawn} {
			d.Stroke(geometry.Line(geometry.Pt(x, y-barTick), geometry.Pt(x, y+barTick)), barPen)
		}
		text, over := strings.Join(b.label, " "), barGap
		if TextWidth(text, barHeight, false) > b.drawn-2*barGap {
			over = barTick + barGap/2 // clear of the ticks
		}
		d.Write(Label{Text: text, At: geometry.Pt(b.drawn/2, y-over), Anchor: AnchorBottom, Height: barHeight})
	}
	return sign(d)
}

// barsDown returns a sign with the bars side by side, their top ends in line, each with its
// length to the right of it.
func barsDown(all []bar) Drawing {
	const pitch = 1.9 * barHeight
	var d Drawing
	var x geometry.Length
	for _, b := range all {
		d.Stroke(geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, b.drawn)), barPen)
		for _, y := range []geometry.Length{0, b.drawn} {
			d.Stroke(geometry.Line(geometry.Pt(x-barTick, y), geometry.Pt(x+barTick, y)), barPen)
		}
		left, y := x+barGap, b.drawn/2-pitch*geometry.Length(len(b.label)-1)/2
		for _, text := range b.label {
			d.Write(Label{Text: text, At: geometry.Pt(left, y), Anchor: AnchorLeft, Height: barHeight})
			x = max(x, left+TextWidth(text, barHeight, false))
			y += pitch
		}
		x += 2 * barTick
	}
	return sign(d)
}
