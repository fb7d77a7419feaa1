package paper

import (
	"math"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"

	"underlay/geometry"
)

// face is a typeface that goes into the files. Its measures are in ems, y down from the line
// the letters stand on.
type face struct {
	ttf    []byte
	capTop float64 // height of a capital H
	glyphs map[rune]glyph
	ascii  [128]glyph // the first of them once more: most text is made of these
}

func (f *face) glyph(r rune) glyph {
	if r >= 0 && int(r) < len(f.ascii) {
		return f.ascii[r]
	}
	return f.glyphs[r]
}

// advance returns how far letters that the face has reach, from x on.
func (f *face) advance(x float64, letters string) float64 {
	for _, r := range letters {
		x += f.glyph(r).advance
	}
	return x
}

type glyph struct {
	advance float64 // to the next letter
	ink     [4]float64
	steady  bool // shown as it is, whatever stands beside it; of a space: any but another
}

// The sides of a glyph's ink.
const (
	inkLeft = iota
	inkTop
	inkRight
	inkBottom
)

// faces are the regular and the bold face.
var faces = sync.OnceValue(func() *[2]face {
	return &[2]face{measure(goregular.TTF), measure(gobold.TTF)}
})

// Typeface returns the regular or the bold face that labels are set in, a TrueType file. Nobody
// may write into it.
func Typeface(bold bool) []byte { return faceOf(bold).ttf }

func faceOf(bold bool) *face {
	f := faces()
	if bold {
		return &f[1]
	}
	return &f[0]
}

// lastLetter is the last one looked for in a face: the Go faces have none beyond.
const lastLetter = '\uffff'

// measure reads the measures of a typeface that comes with the program: one that cannot be
// read is a fault of the build, not of anything a user gave.
func measure(ttf []byte) face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(err)
	}
	var buf sfnt.Buffer
	// At one unit an em the measures come out in the face's own units, unrounded.
	size := fixed.I(int(f.UnitsPerEm()))
	ems := func(x fixed.Int26_6) float64 { return float64(x) / float64(size) }
	known := face{ttf: ttf, glyphs: map[rune]glyph{}}
	for r := ' '; r <= lastLetter; r++ {
		i, err := f.GlyphIndex(&buf, r)
		if err != nil || i == 0 || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == unicode.ReplacementChar {
			continue
		}
		b, advance, err := f.GlyphBounds(&buf, i, size, font.HintingNone)
		if err != nil {
			continue
		}
		known.glyphs[r] = glyph{
			// A PDF gives widths in whole thousandths of an em (ISO 32000-1, 9.7.4.3).
			advance: math.Round(1000*ems(advance)) / 1000,
			ink:     [4]float64{ems(b.Min.X), ems(b.Min.Y), ems(b.Max.X), ems(b.Max.Y)},
			steady:  steady(r),
		}
	}
	for r := range known.ascii {
		known.ascii[r] = known.glyphs[rune(r)]
	}
	known.capTop = -known.glyphs['H'].ink[inkTop]
	return known
}

// steady tells that Legible leaves a letter of the face as it is: it is not an accent, nor does it
// become another letter or join one before it (Unicode, UAX 15).
func steady(r rune) bool {
	s := string(r)
	joins := unicode.Is(unicode.M, r) || !norm.NFC.PropertiesString(s).BoundaryBefore()
	return r == ' ' || !unicode.IsSpace(r) && !joins && norm.NFC.IsNormalString(s)
}

// em returns the size of type at which capitals are as high as height.
func (f *face) em(height geometry.Length) geometry.Length {
	return height / geometry.Length(f.capTop)
}

// notShown stands for a letter the face has not got.
const notShown = '\u25a1'

// Legible returns text as it is shown: line breaks, tabs and the like are spaces, runs of
// them one space, none at either end; a letter and its accent are one letter where there is
// such a one; every letter the face has not got (which takes in all that are written from
// right to left) is a small square. Whole is false where a letter got lost that way.
func Legible(text string) (shown string, whole bool) {
	if plain(text) {
		return text, true
	}
	return respelled(text)
}

// respelled makes text legible, letter by letter.
func respelled(text string) (shown string, whole bool) {
	whole = true
	glyphs := faceOf(false).glyphs
	letters := strings.Map(func(r rune) rune {
		_, known := glyphs[r]
		switch {
		case unicode.IsSpace(r) || unicode.IsControl(r):
			return ' '
		case known:
			return r
		case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r):
			return -1 // has no shape of its own
		}
		whole = false
		if unicode.Is(unicode.M, r) {
			return -1 // an accent: what it stands on is shown
		}
		return notShown
	}, norm.NFC.String(text))
	return strings.Join(strings.Fields(letters), " "), whole
}

// plain tells, quickly, that text is shown as it is.
func plain(text string) bool {
	f, space := faceOf(false), true
	for _, r := range text {
		if r == ' ' && space || !f.glyph(r).steady {
			return false
		}
		space = r == ' '
	}
	return !space || text == ""
}

// TextWidth returns the length of a line of text, as shown, with capitals of the given height.
func TextWidth(text string, height geometry.Length, bold bool) geometry.Length {
	text, _ = Legible(text)
	f := faceOf(bold)
	return f.em(height) * geometry.Length(f.advance(0, text))
}

// Advance returns how far a letter takes the next one along the line, in ems.
func Advance(r rune, bold bool) float64 { return faceOf(bold).glyph(r).advance }

// Shorten returns text as shown, cut and ended with an ellipsis where it would be longer than
// limit; where not even that fits, nothing.
func Shorten(text string, height geometry.Length, bold bool, limit geometry.Length) string {
	text, _ = Legible(text)
	const ellipsis = "\u2026"
	f := faceOf(bold)
	room := float64(limit/f.em(height)) + 1e-9
	cut, used := 0, f.glyphs['\u2026'].advance
	fits := used <= room
	var whole float64
	for i, r := range text {
		if used <= room {
			cut = i
		}
		a := f.glyph(r).advance
		used += a
		whole += a
	}
	switch {
	case whole <= room:
		return text
	case !fits:
		return ""
	}
	return strings.TrimRight(text[:cut], " ") + ellipsis
}

// start returns where the text begins, on the line the letters stand on; the text is so long.
func (l Label) start(long geometry.Length) geometry.Point {
	across, down := l.Anchor.shares()
	p := l.At.Add(geometry.Pt(0, l.Height*(1-down)))
	if across > 0 {
		p.X -= long * across
	}
	return p
}

// Box returns the label's box in the drawing's frame: from the start to the end of the text,
// from the top of the capitals to the line they stand on.
func (l Label) Box() geometry.Rect {
	long := TextWidth(l.Text, l.Height, l.Bold)
	p := l.start(long)
	return geometry.Rect{Min: geometry.Pt(p.X, p.Y-l.Height), Max: geometry.Pt(p.X+long, p.Y)}
}

// Extent returns the least rectangle, in the drawing's frame, that holds the label's box and
// all its ink: accents above it and tails below it.
func (l Label) Extent() geometry.Rect {
	text, _ := Legible(l.Text)
	f := faceOf(l.Bold)
	em := f.em(l.Height)
	var x, left, top, right, bottom float64 // in ems, from the start
	for _, c := range text {
		g := f.glyph(c)
		left, right = min(left, x+min(0, g.ink[inkLeft])), max(right, x+max(g.advance, g.ink[inkRight]))
		top, bottom = min(top, g.ink[inkTop]), max(bottom, g.ink[inkBottom])
		x += g.advance
	}
	p := l.start(em * geometry.Length(x))
	return geometry.Rect{
		Min: geometry.Pt(p.X+em*geometry.Length(left), min(p.Y-l.Height, p.Y+em*geometry.Length(top))),
		Max: geometry.Pt(p.X+em*geometry.Length(right), p.Y+em*geometry.Length(bottom)),
	}
}

// groundMargin is how far the white ground of a label reaches beyond its ink.
const groundMargin = 0.3 * geometry.Millimetre

// GroundBox returns the white ground under a label that has one.
func (l Label) GroundBox() geometry.Rect { return l.Extent().Grow(groundMargin) }
