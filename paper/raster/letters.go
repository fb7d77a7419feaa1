package raster

import (
	"fmt"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"underlay/geometry"
	"underlay/paper"
)

// face is a typeface that letters are drawn from. Its measures are in ems.
type face struct {
	bold    bool
	font    *sfnt.Font
	buffer  sfnt.Buffer
	letters map[rune]outline
}

// face returns the regular or the bold face. They come with the program: one that cannot be read is a
// fault of the build.
func (c *canvas) face(bold bool) *face {
	i := 0
	if bold {
		i = 1
	}
	if c.faces[i] == nil {
		font, err := sfnt.Parse(paper.Typeface(bold))
		if err != nil {
			panic(fmt.Errorf("the typeface: %w", err))
		}
		c.faces[i] = &face{bold: bold, font: font, letters: map[rune]outline{}}
	}
	return c.faces[i]
}

// letter returns the outline of a letter, from where it begins on the line it stands on; of one that
// the face has not got, nothing.
func (f *face) letter(r rune) outline {
	if known, ok := f.letters[r]; ok {
		return known
	}
	var o outline
	// At one unit an em the outline comes out in the face's own units, unrounded.
	em := fixed.I(int(f.font.UnitsPerEm()))
	if i, err := f.font.GlyphIndex(&f.buffer, r); err == nil && i != 0 {
		segments, err := f.font.LoadGlyph(&f.buffer, i, em, nil)
		if err != nil {
			segments = nil
		}
		for _, s := range segments {
			var p [3]point
			for k, a := range s.Args {
				p[k] = point{float64(a.X) / float64(em), float64(a.Y) / float64(em)}
			}
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				o.step(move, p[0])
			case sfnt.SegmentOpLineTo:
				o.step(line, p[0])
			case sfnt.SegmentOpQuadTo:
				o.step(quad, p[:2]...)
			case sfnt.SegmentOpCubeTo:
				o.step(cubic, p[:]...)
			}
		}
	}
	f.letters[r] = o
	return o
}

// Text sets a line of text.
func (c *canvas) Text(t paper.Text) {
	c.flush()
	f := c.face(t.Bold)
	at := c.place(t.At)
	em := c.onPage(c.view.Scale.Of(geometry.Pt(t.Size, t.Size)))
	c.area.reset()
	for _, r := range t.Letters {
		o := f.letter(r)
		c.area.verbs = append(c.area.verbs, o.verbs...)
		for _, p := range o.points {
			c.area.points = append(c.area.points, point{at.x + p.x*em.x, at.y + p.y*em.y})
		}
		at.x += paper.Advance(r, t.Bold) * em.x
	}
	c.fill(&c.area, t.Ink)
}
