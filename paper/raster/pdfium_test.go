package raster

import (
	"bytes"
	"image"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/testdata/pdfread"
)

// dpi is one at which the test's page, 5 x 4 inches, has whole pixels. pdfium moves letters and boxes
// to whole pixels: it draws finer, and each pixel is the mean of finer by finer of its own.
const dpi, finer = 150, 4

// rendered is a page as pdfium draws it.
func rendered(t testing.TB, p paper.Page) *image.RGBA {
	t.Helper()
	var file bytes.Buffer
	if err := pdf.Write(&file, pdf.Document{Parts: []paper.Part{{Name: "page", Pages: []paper.Page{p}}}}); err != nil {
		t.Fatal(err)
	}
	fine := pdfread.Open(t, file.Bytes()).Pages()[0].RenderColour(finer * dpi)
	out := image.NewRGBA(image.Rect(0, 0, fine.Rect.Dx()/finer, fine.Rect.Dy()/finer))
	for i := range out.Pix {
		x, y, sum := i%out.Stride/4, i/out.Stride, 0
		for k := range finer * finer {
			sum += int(fine.Pix[fine.PixOffset(x*finer+k%finer, y*finer+k/finer)+i%4])
		}
		out.Pix[i] = uint8(sum / (finer * finer))
	}
	return out
}

// compare returns how far two images are from each other, in levels of 255: on the whole, and where a
// square of so many pixels is furthest off on the whole of it, and where that is.
func compare(a, b *image.RGBA, square int) (mean, worst float64, at image.Point) {
	w, h := a.Rect.Dx(), a.Rect.Dy()
	for channel := range 3 {
		// Sums of the differences above and to the left of each pixel.
		sums := make([]float64, (w+1)*(h+1))
		for y := range h {
			for x := range w {
				d := float64(a.Pix[a.PixOffset(x, y)+channel]) - float64(b.Pix[b.PixOffset(x, y)+channel])
				mean += math.Abs(d)
				sums[(y+1)*(w+1)+x+1] = d + sums[y*(w+1)+x+1] + sums[(y+1)*(w+1)+x] - sums[y*(w+1)+x]
			}
		}
		for y := square; y <= h; y++ {
			for x := square; x <= w; x++ {
				d := sums[y*(w+1)+x] - sums[(y-square)*(w+1)+x] - sums[y*(w+1)+x-square] + sums[(y-square)*(w+1)+x-square]
				if d = math.Abs(d) / float64(square*square); d > worst {
					worst, at = d, image.Pt(x-square, y-square)
				}
			}
		}
	}
	return mean / float64(3*w*h), worst, at
}

// leaf is a shape with a hole in it.
func leaf() geometry.Path {
	hole := geometry.CircleOutline(geometry.Pt(0, 1), 1.5).Path()
	hole = hole.Map(func(p geometry.Point) geometry.Point { return geometry.Pt(-p.X, p.Y) })
	return append(geometry.Path{{Start: geometry.Pt(0, -6), Closed: true, Steps: []geometry.Step{
		{To: geometry.Pt(4, 6), C1: geometry.Pt(6, -4), C2: geometry.Pt(6, 2), Curved: true},
		{To: geometry.Pt(-4, 6)},
		{To: geometry.Pt(0, -6), C1: geometry.Pt(-6, 2), C2: geometry.Pt(-6, -4), Curved: true},
	}}}, hole...)
}

// sample is a page with one of everything.
func sample() paper.Page {
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(120, 95)}}
	moss, ochre, slate := paper.Ink{R: 95, G: 122, B: 58}, paper.Ink{R: 204, G: 146, B: 40}, paper.Ink{R: 70, G: 80, B: 90}
	d.Fill(geometry.Rect{Min: geometry.Pt(2, 2), Max: geometry.Pt(118, 93)}.Polygon().Path(), paper.Ink{R: 245, G: 240, B: 228})
	shape, dot := paper.NewShape(leaf()), paper.Disc(1.7)
	for i := range 40 {
		at := geometry.Pt(10+geometry.Length(i%10)*11.13, 12+geometry.Length(i/10)*13.37)
		ink := moss
		if i%3 == 1 {
			ink = ochre
		}
		d.StampFill(shape, paper.Place{At: at, Turn: geometry.Angle(i * 90)}, ink, paper.Role{})
		d.StampFill(dot, paper.Place{At: at.Add(geometry.Pt(5, 6))}, slate, paper.Role{})
	}
	d.StampFill(shape, paper.Place{At: geometry.Pt(60, 75), Turn: 37}, moss, paper.Role{})
	// Over each other, in the order given; a five-pointed star, filled in its middle as it goes round it twice.
	d.Fill(geometry.CircleOutline(geometry.Pt(20, 75), 9).Path(), slate)
	d.Fill(geometry.Rect{Min: geometry.Pt(20, 70), Max: geometry.Pt(34, 80)}.Polygon().Path(), ochre)
	var star geometry.Polygon
	for i := range 5 {
		star = append(star, geometry.Pt(95, 77).Add(geometry.Pt(0, -11).Turn(geometry.Angle(i*144))))
	}
	d.Fill(star.Path(), moss)
	for i, kind := range []paper.LineType{paper.Continuous, paper.Dashed, paper.Chain, paper.DoubleChain, paper.Dotted, paper.LongShort} {
		y := 64 + geometry.Length(i)*1.7
		d.Stroke(geometry.Chain(geometry.Pt(3, y), geometry.Pt(70, y), geometry.Pt(117, y+5)), paper.Pen{Type: kind, Width: 0.35})
		d.Stroke(geometry.CircleOutline(geometry.Pt(45, 80), geometry.Length(10-i)).Path(), paper.Pen{Type: kind, Width: 0.5, Ink: slate})
	}
	// Corners: mitres, one too sharp for a mitre, a closed one, wide ends.
	d.Stroke(geometry.Chain(geometry.Pt(66, 90), geometry.Pt(72, 72), geometry.Pt(78, 90), geometry.Pt(79, 72), geometry.Pt(80, 92)), paper.Pen{Width: 1.4, Ink: slate})
	d.Stroke(star.Path(), paper.Pen{Width: 0.7, Ink: slate})
	edge := paper.NewShape(geometry.RectAround(geometry.Point{}, geometry.Size{W: 10, H: 12}).Polygon().Path())
	for i := range 10 {
		d.Stamp(edge, paper.Place{At: geometry.Pt(10+geometry.Length(i)*11.13, 12)}, paper.Pen{Width: 0.25}, paper.Role{})
	}
	d.Write(paper.Label{Text: "Fern, 25 Äpfel fjord", At: geometry.Pt(60, 18), Height: 5, Ground: true, Ink: ochre})
	d.Write(paper.Label{Text: "Pebble & wave 8", At: geometry.Pt(60, 88), Height: 3.5, Bold: true, Ink: slate})
	return paper.Page{Size: geometry.Size{W: 5 * geometry.Inch, H: 4 * geometry.Inch}, Views: []paper.View{
		{Drawing: d, Area: d.Bounds, At: geometry.Pt(3.3, 3.1)},
	}}
}

// pages are the sample as it may be shown.
func pages() map[string]paper.Page {
	cut, uneven, small, bare := sample(), sample(), sample(), sample()
	cut.Views[0].Area = geometry.Rect{Min: geometry.Pt(7, 9), Max: geometry.Pt(101.3, 77.7)}
	uneven.Views[0].Scale = paper.Scale{Across: 1.02, Down: 0.9}
	small.Views[0].Scale = paper.Scale{Across: 0.4, Down: 0.4}
	second := small.Views[0]
	second.At, second.Scale = geometry.Pt(60, 45), paper.Scale{Across: 0.5, Down: 0.5}
	small.Views = append(small.Views, second)
	bare.Views[0].Drawing.Labels[0].Ground = false
	return map[string]paper.Page{"whole": sample(), "letters on lines": bare, "cut off": cut, "uneven": uneven, "small, twice": small}
}

// A page comes out as pdfium, which shares no code with this, draws the PDF of it.
func TestAsPdfiumDraws(t *testing.T) {
	for name, page := range pages() {
		want := rendered(t, page)
		got, err := Draw(page, want.Rect.Dx())
		if err != nil {
			t.Fatal(err)
		}
		if got.Rect != want.Rect {
			t.Fatalf("%s: %v, pdfium's is %v", name, got.Rect, want.Rect)
		}
		mean, worst, at := compare(got, want, 6)
		if mean > 0.8 || worst > 25 {
			t.Errorf("%s: %.2f levels from pdfium's on the whole, %.1f in the square at %v", name, mean, worst, at)
		}
	}
}
