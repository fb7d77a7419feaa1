package pdf

import (
	"bytes"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

// stamped is an outline, an arrow, a solid and a dot in places inside and across the area, turned
// and not; with plain, each drawn as a path of its own.
func stamped(plain bool) *paper.Drawing {
	d := &paper.Drawing{}
	edge := paper.NewShape(geometry.Polygon{{X: -9, Y: -6}, {X: 9, Y: -6}, {X: 9, Y: 2}, {X: 0, Y: 6}}.Path())
	arrow := paper.NewShape(geometry.UpArrow(geometry.Point{}, 5, 0))
	ring := paper.NewShape(geometry.CircleOutline(geometry.Pt(1, 1), 4).Path())
	solid := paper.NewShape(geometry.Polygon{{X: -1, Y: -1}, {X: 1, Y: 0}, {X: -1, Y: 1}}.Path())
	dot := paper.Disc(1.3)
	line := func(s *paper.Shape, at paper.Place, pen paper.Pen) {
		if plain {
			d.Stroke(paper.Stroke{Shape: s, Place: at}.Path(), pen)
			return
		}
		d.Stamp(s, at, pen, paper.Role{})
	}
	fill := func(s *paper.Shape, at paper.Place, ink paper.Ink) {
		if plain {
			d.Fill(paper.Fill{Shape: s, Place: at}.Path(), ink)
			return
		}
		d.StampFill(s, at, ink, paper.Role{})
	}
	for i := range 40 {
		at := paper.Place{
			At:   geometry.Pt(geometry.Length(i%8)*25.377+3, geometry.Length(i/8)*31.113+2),
			Turn: []geometry.Angle{0, 90, 180, 33}[i%4],
		}
		line(edge, at, paper.Pen{Width: 0.35})
		line(edge, at, paper.Pen{Type: paper.Dashed, Width: 0.25, Ink: paper.Grey(90)})
		line(arrow, at, paper.Pen{Width: 0.25})
		line(ring, at, paper.Pen{Type: paper.Chain, Width: 0.25})
		fill(solid, at, paper.Ink{R: 200})
		fill(dot, paper.Place{At: at.At.Add(geometry.Pt(5, 5))}, paper.Ink{})
	}
	return d
}

// A shape put down many times comes out where it would as a path of its own, to pdfium, and the
// page looks the same.
func TestStampsAreWhatTheirPathsAre(t *testing.T) {
	for name, scale := range map[string]paper.Scale{"true size": {}, "corrected": {Across: 1.013, Down: 0.991}} {
		for _, size := range []geometry.Size{{W: 210, H: 180}, {W: 210, H: 6000}} {
			read := func(plain bool) ([]byte, *pdfread.Page) {
				v := paper.View{
					Drawing: stamped(plain), Area: geometry.RectAt(geometry.Pt(0, 1), geometry.Size{W: 190, H: 150}),
					At: geometry.Pt(7, 9), Scale: scale,
				}
				file := write(t, Document{Parts: pages(paper.Page{Size: size, Views: []paper.View{v}})})
				return file, pdfread.Open(t, file).Pages()[0]
			}
			file, page := read(false)
			_, plain := read(true)
			paths := func(p *pdfread.Page) []pdfread.Path {
				all := p.Paths()
				for i := range all {
					all[i].Lines = unclosed(all[i].Lines)
					if all[i].Stroked {
						all[i].Fill = pdfread.Colour{}
					}
				}
				return all
			}
			apart := paths(plain)
			if d := cmp.Diff(apart, paths(page), near); d != "" || len(apart) < 200 {
				t.Errorf("%s, %v: %s", name, size, d)
			}
			// One form for each shape and pen, whichever way it is turned; a pen is drawn out where
			// the scale is not even, and a disc is no dot.
			want := map[string]int{"true size": 5, "corrected": 4*4 + 2}[name]
			if n := bytes.Count(file, []byte("/Subtype /Form")); n != want {
				t.Errorf("%s, %v: %d forms, want %d", name, size, n, want)
			}
			if size.H > 1000 {
				continue
			}
			a, b := page.Render(150), plain.Render(150)
			differ := 0
			for i := range a.Pix {
				if a.Pix[i] < 64 && b.Pix[i] > 192 || a.Pix[i] > 192 && b.Pix[i] < 64 {
					differ++
				}
			}
			// pdfium draws a line of no length a dot long: 40 discs of 15 dots are one dot wider.
			if differ > 40*8 {
				t.Errorf("%s: %d dots of the page differ", name, differ)
			}
		}
	}
}

// What is turned by the call of a form is where it belongs at any distance from its origin.
func TestTurnedFarOut(t *testing.T) {
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(2200, 2200)}}
	far := geometry.Polygon{{X: 1000, Y: 0}, {X: 1000, Y: 30}, {X: 970, Y: 10}}
	shape := paper.NewShape(far.Path())
	turns := []geometry.Angle{33.3333, 7.1, 81.77, 120.01}
	for _, turn := range turns {
		d.StampFill(shape, paper.Place{At: geometry.Pt(1100, 1100), Turn: turn}, paper.Ink{}, paper.Role{})
	}
	file := write(t, Document{Parts: pages(paper.Page{Size: geometry.Size{W: 2200, H: 2200}, Views: []paper.View{paper.Whole(d)}})})
	paths := pdfread.Open(t, file).Pages()[0].Paths()
	if len(paths) != len(turns) || bytes.Count(file, []byte("/Subtype /Form")) != 1 {
		t.Fatalf("%d paths, %d forms", len(paths), bytes.Count(file, []byte("/Subtype /Form")))
	}
	for i, p := range paths {
		want := far[0].Turn(turns[i]).Add(geometry.Pt(1100, 1100))
		if off := p.Lines[0].Start.Distance(want); off > 0.003 {
			t.Errorf("turned by %g: off by %.4f mm", float64(turns[i]), float64(off))
		}
	}
}
