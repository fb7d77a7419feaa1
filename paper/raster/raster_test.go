package raster

import (
	"bytes"
	"fmt"
	"image"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

func TestNeedsASizeAndPixels(t *testing.T) {
	a4 := geometry.Size{W: 210, H: 297}
	for name, c := range map[string]struct {
		size  geometry.Size
		width int
	}{
		"no page":         {geometry.Size{}, 100},
		"no height":       {geometry.Size{W: 210}, 100},
		"endless":         {geometry.Size{W: 210, H: geometry.Length(math.Inf(1))}, 100},
		"no number":       {geometry.Size{W: 210, H: geometry.Length(math.NaN())}, 100},
		"no pixels":       {a4, 0},
		"less than none":  {a4, -5},
		"too many pixels": {a4, 10_000},
		"far too many":    {geometry.Size{W: 1, H: 1e9}, math.MaxInt},
	} {
		if m, err := Draw(paper.Page{Size: c.size}, c.width); err == nil {
			t.Errorf("%s: an image of %v", name, m.Rect)
		}
	}
	for width, want := range map[int]image.Rectangle{1: image.Rect(0, 0, 1, 1), 2: image.Rect(0, 0, 2, 3), 840: image.Rect(0, 0, 840, 1188)} {
		m, err := Draw(paper.Page{Size: a4}, width)
		if err != nil || m.Rect != want {
			t.Errorf("%d pixels wide: %v, %v; want %v", width, m.Rect, err, want)
		}
		for i, p := range m.Pix {
			if p != 255 {
				t.Fatalf("an empty page has %d at %d", p, i)
			}
		}
	}
}

func TestSameImageEachTime(t *testing.T) {
	a, _ := Draw(sample(), 700)
	b, err := Draw(sample(), 700)
	if err != nil || !bytes.Equal(a.Pix, b.Pix) {
		t.Errorf("two images of one page differ, %v", err)
	}
}

// A square that covers a quarter of a pixel leaves a quarter of its ink there; a line thinner than a
// pixel has its ink over a whole one.
func TestCoverage(t *testing.T) {
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(10, 10)}}
	d.Fill(geometry.RectAt(geometry.Pt(2.5, 2.5), geometry.Size{W: 2, H: 2}).Polygon().Path(), paper.Ink{R: 200})
	d.Stroke(geometry.Line(geometry.Pt(1, 7.5), geometry.Pt(9, 7.5)), paper.Pen{Width: 0.01})
	m, err := Draw(paper.Page{Size: geometry.Size{W: 10, H: 10}, Views: []paper.View{paper.Whole(d)}}, 10)
	if err != nil {
		t.Fatal(err)
	}
	for p, want := range map[image.Point][2]int{
		{X: 3, Y: 3}: {200, 0}, {X: 2, Y: 2}: {241, 191}, {X: 2, Y: 3}: {227, 127}, {X: 4, Y: 4}: {241, 191}, {X: 5, Y: 4}: {255, 255},
		{X: 1, Y: 7}: {0, 0}, {X: 8, Y: 7}: {0, 0}, {X: 9, Y: 7}: {255, 255}, {X: 5, Y: 6}: {255, 255}, {X: 5, Y: 8}: {255, 255},
	} {
		c := m.RGBAAt(p.X, p.Y)
		if got := [2]int{int(c.R), int(c.G)}; max(got[0]-want[0], want[0]-got[0], got[1]-want[1], want[1]-got[1]) > 1 {
			t.Errorf("the pixel at %v has red and green %v, want %v", p, got, want)
		}
	}
}

// A shape looks the same whether it was made for many places or for one, but for what an eighth of a
// pixel makes.
func TestStampsAsDrawnOnce(t *testing.T) {
	page := func(shape func(geometry.Path) *paper.Shape) paper.Page {
		d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(200, 150)}}
		s := shape(leaf())
		for i := range 300 {
			d.StampFill(s, paper.Place{At: geometry.Pt(6+geometry.Length(i%18)*11.2347, 7+geometry.Length(i/18)*8.5731), Turn: geometry.Angle(i % 7 * 30)},
				paper.Ink{R: uint8(i), G: 120}, paper.Role{})
		}
		return paper.Page{Size: d.Bounds.Size(), Views: []paper.View{{Drawing: d, Area: geometry.Rect{Min: geometry.Pt(5, 5), Max: geometry.Pt(190, 140)}, At: geometry.Pt(5, 5)}}}
	}
	for _, width := range []int{150, 613, 1400} {
		a, err := Draw(page(paper.NewShape), width)
		if err != nil {
			t.Fatal(err)
		}
		b, _ := Draw(page(paper.Once), width)
		if mean, worst, at := compare(a, b, 3); mean > 3 || worst > 35 {
			t.Errorf("%d pixels wide: %.2f levels off on the whole, %.1f at %v", width, mean, worst, at)
		}
	}
}

// Prints by the thousand, as a page in a browser shows them where there are too many for lines.
func BenchmarkPrints(b *testing.B) {
	for _, c := range []struct {
		prints int
		turned bool
	}{{10_000, false}, {10_000, true}, {200_000, false}} {
		across := int(math.Sqrt(float64(c.prints)))
		d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(geometry.Length(across)*20+40, geometry.Length(c.prints/across)*20+40)}}
		motif, edge := paper.NewShape(frond(300)), paper.NewShape(geometry.RectAround(geometry.Point{}, geometry.Size{W: 20, H: 20}).Polygon().Path())
		for i := range c.prints {
			at := paper.Place{At: geometry.Pt(geometry.Length(i%across)*20.03+30, geometry.Length(i/across)*20.03+30)}
			if c.turned {
				at.Turn = geometry.Angle(float64(i) * 1.37)
			}
			d.StampFill(motif, at, paper.Ink{G: 90}, paper.Role{})
			d.Stamp(edge, at, paper.Pen{Width: 0.25}, paper.Role{})
		}
		page := paper.Page{Size: d.Bounds.Size(), Views: []paper.View{paper.Whole(d)}}
		b.Run(fmt.Sprintf("%d,turned=%v", c.prints, c.turned), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Draw(page, 1200); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// frond is a ragged shape of so many corners, 20 mm across.
func frond(corners int) geometry.Path {
	p := make(geometry.Polygon, corners)
	for i := range p {
		p[i] = geometry.Pt(0, -6-geometry.Length(i%5)).Turn(geometry.Angle(float64(i) * 360 / float64(corners)))
	}
	return p.Path()
}
