package pdf

import (
	"image"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

// onePage writes a page that shows a drawing from its (0, 0) on, and reads it back.
func onePage(t *testing.T, d *paper.Drawing, size geometry.Size) *pdfread.Page {
	t.Helper()
	view := paper.View{Drawing: d, Area: geometry.RectAt(geometry.Point{}, size)}
	doc := Document{Parts: []paper.Part{{Name: "page", Pages: []paper.Page{{Size: size, Views: []paper.View{view}}}}}}
	return pdfread.Open(t, write(t, doc)).Pages()[0]
}

// inked returns the least rectangle of dots that holds all that is darker than half grey.
func inked(img *image.Gray) image.Rectangle {
	var r image.Rectangle
	for y := img.Rect.Min.Y; y < img.Rect.Max.Y; y++ {
		for x := img.Rect.Min.X; x < img.Rect.Max.X; x++ {
			if img.GrayAt(x, y).Y < 128 {
				r = r.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return r
}

// The height of lettering is that of its capitals (ISO 3098-1, h).
func TestCapitalsAreAsHighAsAsked(t *testing.T) {
	const dpi = 600
	dot := 25.4 / dpi
	for _, height := range []geometry.Length{2.5, 10, 20} {
		for _, bold := range []bool{false, true} {
			d := &paper.Drawing{}
			l := paper.Label{Text: "H", At: geometry.Pt(20, 20), Height: height, Bold: bold}
			d.Write(l)
			ink, box := inked(onePage(t, d, geometry.Size{W: 40, H: 40}).Render(dpi)), l.Box()
			top, bottom := float64(ink.Min.Y)*dot, float64(ink.Max.Y)*dot
			if math.Abs(top-float64(box.Min.Y)) > dot || math.Abs(bottom-float64(box.Max.Y)) > dot {
				t.Errorf("H %v mm high, bold %v, is drawn from %.3f to %.3f mm, want %.3f to %.3f",
					height, bold, top, bottom, box.Min.Y, box.Max.Y)
			}
		}
	}
}

func TestTextIsAsWideAsMeasured(t *testing.T) {
	const many = 40
	for _, bold := range []bool{false, true} {
		for _, letter := range []string{"H", "i", "½", "Ж", "ő", "□"} {
			d := &paper.Drawing{}
			for i, text := range []string{letter, strings.Repeat(letter, many)} {
				d.Write(paper.Label{Text: text, At: geometry.Pt(5, geometry.Length(20+20*i)), Anchor: paper.AnchorLeft, Height: 3.5, Bold: bold})
			}
			texts := onePage(t, d, geometry.Size{W: 300, H: 60}).Texts()
			drawn := texts[1].Box.W() - texts[0].Box.W()
			measured := paper.TextWidth(strings.Repeat(letter, many-1), 3.5, bold)
			if math.Abs(float64(drawn-measured)) > 0.01 {
				t.Errorf("%d of %q, bold %v: drawn %.4f mm, measured %.4f", many-1, letter, bold, drawn, measured)
			}
		}
	}
}

func TestExtentHoldsTheInk(t *testing.T) {
	const dpi = 600
	for _, text := range []string{"gjpqy", "ÅÉ", "fern", "Hxf"} {
		d := &paper.Drawing{}
		l := paper.Label{Text: text, At: geometry.Pt(50, 20), Height: 10, Bold: true}
		d.Write(l)
		ink := inked(onePage(t, d, geometry.Size{W: 100, H: 40}).Render(dpi))
		dots := func(n int) geometry.Length { return geometry.Length(n) * geometry.Inch / dpi }
		drawn := geometry.Rect{
			Min: geometry.Pt(dots(ink.Min.X), dots(ink.Min.Y)), Max: geometry.Pt(dots(ink.Max.X), dots(ink.Max.Y)),
		}
		if e := l.Extent(); !e.Grow(dots(1)).Holds(drawn) {
			t.Errorf("%s: ink in %v is outside %v", text, drawn, e)
		}
		if !l.Extent().Holds(l.Box()) {
			t.Errorf("%s: the box %v is outside the extent %v", text, l.Box(), l.Extent())
		}
	}
}
