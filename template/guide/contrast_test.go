package guide

import (
	"image"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/testdata/pdfread"
)

// contrastDPI is what the poorest printer in use can be expected to hold (common practice, no
// published source).
const contrastDPI = 150

// blackIn returns the share of the dots of a part of a page, and a dot round it, that are black
// when every dot is either black or white.
func blackIn(picture *image.Gray, box geometry.Rect) float64 {
	dot := func(l geometry.Length) int { return int(float64(l) / 25.4 * contrastDPI) }
	area := image.Rect(dot(box.Min.X), dot(box.Min.Y), dot(box.Max.X)+1, dot(box.Max.Y)+1).Intersect(picture.Bounds())
	black := 0
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			if picture.GrayAt(x, y).Y < 128 {
				black++
			}
		}
	}
	return float64(black) / float64(max(1, area.Dx()*area.Dy()))
}

// TestPureBlackAndWhite prints sheets in pure black and white, as pdfium makes them of 150 dots an
// inch: every line still shows all along, but for the gaps of its dashes and where white ground lies
// on it, and every sign, arrow and letter is there. Of jobs with each kind of line.
func TestPureBlackAndWhite(t *testing.T) {
	jobs := sample.Hard(t)
	for _, name := range []string{"cushion-back", "reading-nook"} {
		jobs[name] = sample.Examples(t)[name+".toml"]
	}
	for _, name := range []string{"cushion-back", "reading-nook", "two passes", "borders of all kinds", "drum", "seated", "diagonal"} {
		for _, g := range facesOf(t, jobs[name]) {
			_, file := readback.Open(t, pdf.Document{Parts: []paper.Part{{Name: "guide", Pages: g.Pages[:1]}}})
			page := file.Pages()[0]
			sheet := readback.ReadSheet(g.Sheets[0], readback.Pages(file)[0])
			picture := page.Render(contrastDPI)
			paths := page.Paths()
			checkLines(t, name, sheet, picture, paths)
			checkSigns(t, name, sheet, picture, paths, page.Texts())
		}
	}
}

// checkLines walks along every straight line that the sheet shows.
func checkLines(t *testing.T, name string, sheet *readback.Sheet, picture *image.Gray, paths []pdfread.Path) {
	t.Helper()
	var white []geometry.Rect
	for _, p := range paths {
		if p.Filled && p.Fill == (pdfread.Colour{R: 255, G: 255, B: 255}) {
			white = append(white, p.Lines.Bounds().Grow(0.2))
		}
	}
	covered := func(q geometry.Point) bool {
		for _, r := range white {
			if r.Contains(q) {
				return true
			}
		}
		return !sheet.Sheet.Area.Grow(-0.3).Contains(sheet.Layout(q))
	}
	const step, slack = 0.1 * geometry.Millimetre, 0.6 * geometry.Millimetre
	walked := 0
	for _, p := range paths {
		if !p.Stroked {
			continue
		}
		if p.Width < 0.25-off {
			t.Errorf("%s: a line %.2f mm wide", name, p.Width)
		}
		most := slack
		for i, l := range p.Dashes {
			if i%2 == 1 {
				most = max(most, l+slack)
			}
		}
		for _, piece := range p.Lines {
			if len(piece.Steps) == 0 || piece.Steps[0].Curved {
				continue
			}
			corners := readback.Corners(piece)
			for i, b := range corners[1:] {
				a := corners[i]
				way := b.Sub(a)
				long := way.Norm()
				var bare geometry.Length
				for at := geometry.Length(0); at < long; at += step {
					q := a.Add(way.Mul(float64(at / long)))
					if covered(q) {
						bare = 0
						continue
					}
					walked++
					if blackIn(picture, geometry.Rect{Min: q, Max: q}.Grow(0.09)) > 0 {
						bare = 0
					} else if bare += step; bare > most {
						t.Errorf("%s: the line from %v to %v, %.2f wide, is gone at %v", name, a, b, p.Width, q)
						return
					}
				}
			}
		}
	}
	if walked < 5000 {
		t.Errorf("%s: only %d points of lines", name, walked)
	}
}

// checkSigns looks for what is filled, and for every word.
func checkSigns(t *testing.T, name string, sheet *readback.Sheet, picture *image.Gray, paths []pdfread.Path, texts []pdfread.Text) {
	t.Helper()
	for _, p := range paths {
		if b := p.Lines.Bounds(); p.Filled && p.Fill == (pdfread.Colour{}) && sheet.Sheet.Area.Holds(sheet.LayoutRect(b)) {
			if share := blackIn(picture, b); share < 0.2 {
				t.Errorf("%s: a sign at %v is %.0f %% black", name, b, share*100)
			}
		}
	}
	for _, w := range texts {
		if share := blackIn(picture, w.Box); share < 0.1 {
			t.Errorf("%s: %q is %.0f %% black", name, w.Text, share*100)
		}
	}
}
