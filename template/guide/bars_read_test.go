package guide

import (
	"image"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/testdata/pdfread"
)

// dark tells whether there is ink on a dot of a page.
func dark(g *image.Gray, x, y int) bool { return g.GrayAt(x, y).Y < 128 }

// TestCheckBarsMeasureWhatTheySay finds both bars of a sheet by the words beside them, and
// measures their pictures at 300 dots an inch: 50 mm are 50 / 25.4 * 300 dots. A corrected
// sheet has them larger by 180/179.2 across and 250/248.9 down, so that this printer makes
// them 50 mm.
func TestCheckBarsMeasureWhatTheySay(t *testing.T) {
	const dpi = 300
	for _, c := range []struct {
		job, words   string
		across, down float64
	}{
		{"strong", "50 mm", 50, 50},
		{"inches", "50 mm", 50, 50},
		{"corrected", "50 mm, corrected", 50 * 180 / 179.2, 50 * 250 / 248.9},
		{"corrected, smaller", "50 mm, corrected", 50 * 180 / 180.9, 50 * 250 / 251.3},
	} {
		_, file := readback.Open(t, documentOf(t, sample.Hard(t)[c.job]))
		pages := file.Pages()
		page := pages[len(pages)-1]
		picture := page.Render(dpi)
		paths := page.Paths()
		dot := func(l geometry.Length) float64 { return float64(l) / 25.4 * dpi }
		found := map[bool]int{}
		for _, w := range page.Texts() {
			if !strings.HasPrefix(w.Text, "50 mm") {
				continue
			}
			bar, down, ok := barBeside(paths, w.Box)
			if !ok {
				t.Errorf("%s: no bar by %q at %v", c.job, w.Text, w.Box)
				continue
			}
			found[down]++
			// From the tick at one end to the tick at the other, along a row of dots that runs
			// through both of them, off the bar itself.
			want, a, b, side := c.across, bar.A.X, bar.B.X, bar.A.Y
			at := func(along, aside int) bool { return dark(picture, along, aside) }
			if down {
				want, a, b, side = c.down, bar.A.Y, bar.B.Y, bar.A.X
				at = func(along, aside int) bool { return dark(picture, aside, along) }
			}
			middle := func(end geometry.Length, aside int) float64 {
				first, last := math.MaxInt, -1
				for i := int(dot(end - 0.8)); i <= int(dot(end+0.8)); i++ {
					if at(i, aside) {
						first, last = min(first, i), max(last, i)
					}
				}
				return float64(first+last) / 2
			}
			aside := int(dot(side - 0.8))
			if got := math.Abs(middle(b, aside) - middle(a, aside)); math.Abs(got-want/25.4*dpi) > 1 {
				t.Errorf("%s: the bar (down: %v) is %v dots long, want %.1f", c.job, down, got, want/25.4*dpi)
			}
		}
		if found[false] != 1 || found[true] != 1 {
			t.Errorf("%s: %d bars across, %d down", c.job, found[false], found[true])
		}
	}
}

// barBeside finds the line between 45 and 55 mm long, across below a text or down to the left
// of it, that is nearest to its middle.
func barBeside(paths []pdfread.Path, text geometry.Rect) (bar readback.Line, down, ok bool) {
	least := 5 * geometry.Millimetre
	for i, path := range paths {
		for _, piece := range path.Lines {
			if len(piece.Steps) != 1 || !path.Stroked {
				continue
			}
			l := readback.Line{A: piece.Start, B: piece.Steps[0].To, Of: &paths[i]}
			d := l.B.Sub(l.A)
			if n := d.Norm(); n < 45 || n > 55 || min(d.X.Abs(), d.Y.Abs()) > off {
				continue
			}
			c := text.Centre()
			middle := geometry.Rect{Min: l.A, Max: l.B}.Centre().Sub(c)
			away := middle.X.Abs() + middle.Y.Abs()
			isDown := d.X.Abs() <= off
			if isDown {
				away = (c.X - text.Min.X + middle.X).Abs() + middle.Y.Abs()/4
			}
			if away < least {
				bar, down, ok, least = l, isDown, true, away
			}
		}
	}
	return bar, down, ok
}

// TestMarginsAreWhite looks at the picture of a sheet where the printer does not reach.
func TestMarginsAreWhite(t *testing.T) {
	const dpi = 72
	j := sample.Examples(t)["reading-nook.toml"]
	_, file := readback.Open(t, documentOf(t, j))
	picture := file.Pages()[0].Render(dpi)
	margin := int(j.Paper.Margin.Millimetres() / 25.4 * dpi)
	inside := picture.Bounds().Inset(margin)
	inked := 0
	for y := range picture.Bounds().Dy() {
		for x := range picture.Bounds().Dx() {
			if at := image.Pt(x, y); picture.GrayAt(x, y).Y != 255 {
				inked++
				if !at.In(inside) {
					t.Fatalf("there is ink at dot %v, printable are those in %v", at, inside)
				}
			}
		}
	}
	if margin < 10 || inked < 1000 {
		t.Errorf("%d dots with ink, a margin of %d dots: nothing was tried", inked, margin)
	}
}
