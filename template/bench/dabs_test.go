package bench

import (
	"fmt"
	"image/color"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/raster"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/template/picture"
)

// dabJob has a pass for each block of a kind, dabbed as the last line says.
func dabJob(block, dabs string) string {
	return "[[paint]]\nname = 'moss'\nlooks = '#5f7a3a'\n[[block]]\nname = 'leaf'\n" + block + "\n" +
		"[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n" +
		"[[item.pass]]\nblock = 'leaf'\nrepeat = 'one'\ndabs = [" + dabs + "]\n"
}

const (
	rectBlock = "print = '90 x 60 mm'"
	tallBlock = "print = '30 x 90 mm'"
	diskBlock = "shape = 'round'\nprint = '40 mm'"
	hexaBlock = "shape = 'hexagon'\nprint = '60 mm'"
	ellBlock  = "shape = 'outline'\noutline = ['0 x 0 mm', '30 x 0 mm', '30 x 30 mm', '60 x 30 mm', '60 x 60 mm', '0 x 60 mm']"
	backBlock = "shape = 'outline'\noutline = ['0 x 60 mm', '60 x 60 mm', '60 x 30 mm', '30 x 30 mm', '30 x 0 mm', '0 x 0 mm']"

	mossRest = ", { colour = 'moss' }"
)

// TestDabPictures looks at the pictures of dabbed faces: wherever the cloth and the lines over it leave
// it clear, each point has the colour of its dab; a part whose looks are not known is
// hatched; each line ends in the part that its name names.
func TestDabPictures(t *testing.T) {
	for _, c := range []struct{ name, block, dabs string }{
		{"middle", rectBlock, "{ colour = 'gold', middle = '30 mm' }" + mossRest},
		{"wide middle", rectBlock, "{ colour = 'gold', middle = '80 mm' }" + mossRest},
		{"target", tallBlock, "{ colour = 'gold', middle = '12 mm' }, { colour = 'navy', middle = '24 mm' }" + mossRest},
		{"corners, middle, edge", rectBlock, "{ colour = 'navy', corners = '18 mm' }, { colour = 'gold', middle = '30 mm' }, { colour = 'teal', edge = '6 mm' }" + mossRest},
		{"edge before corners", rectBlock, "{ colour = 'teal', edge = '6 mm' }, { colour = 'navy', corners = '18 mm' }" + mossRest},
		{"no rest", hexaBlock, "{ colour = 'navy', corners = '12 mm' }, { colour = 'gold', middle = '30 mm' }"},
		{"round", diskBlock, "{ colour = 'navy', edge = '5 mm' }, { colour = 'gold', middle = '10 mm' }" + mossRest},
		{"edge of an L", ellBlock, "{ colour = 'navy', edge = '6 mm' }, { colour = 'gold', corners = '15 mm' }" + mossRest},
		{"edge of an L, against the clock", backBlock, "{ colour = 'navy', edge = '6 mm' }, { colour = 'gold', corners = '15 mm' }" + mossRest},
		{"edge and corners not known", rectBlock, "{ colour = 'ochre', corners = '18 mm' }, { colour = 'pond', edge = '6 mm' }" + mossRest},
		{"not known", rectBlock, "{ colour = 'ochre', middle = '30 mm' }" + mossRest},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := planOf(t, dabJob(c.block, c.dabs))
			all := dabbedFaces(p.Items[0].Faces()[0])
			if len(all) != 1 {
				t.Fatalf("%d dabbed faces", len(all))
			}
			d, face := all[0], all[0].block.Face
			box := geometry.Rect{Max: geometry.Pt(90, d.height(geometry.UnitMM))}
			views := d.picture(p.Job, box)
			dots, k, from := dotsOf(views), d.size().W/d.block.Size.W, faceOnPage(views)
			named := len(d.names(geometry.UnitMM))
			if len(dots) != named {
				t.Fatalf("%d lines for %d parts", len(dots), named)
			}
			trueAt := func(page geometry.Point) geometry.Point {
				return page.Sub(from).Mul(1 / float64(k)).Add(face.Bounds().Min)
			}
			for i, dot := range dots {
				want := i - 1
				if want == len(d.dabs) {
					want = -1
				}
				if at := trueAt(dot); !face.Contains(at) || job.DabAt(d.dabs, face, at) != want {
					t.Errorf("the line of part %d ends at %v, which dab %d has", i, at, job.DabAt(d.dabs, face, at))
				}
			}
			const pixels = 10 // a millimetre
			img, err := raster.Draw(paper.Page{Size: box.Size(), Views: views}, int(box.W())*pixels)
			if err != nil {
				t.Fatal(err)
			}
			looked, dark, white := map[int]int{}, map[int]int{}, map[int]int{}
			for y := from.Y - 1; y < from.Y+d.size().H+1; y += 0.31 {
				for x := from.X - 0.4; x < from.X+d.size().W+1; x += 0.31 {
					page := geometry.Pt(x, y)
					dab, clear := dabSeen(d, face, trueAt, page)
					if !clear || nearLines(views, page) {
						continue
					}
					want := paper.Grey(255)
					if dab >= 0 {
						var known bool
						if want, known = p.Job.Looks(d.dabs[dab].Colour); !known {
							got := img.RGBAAt(int(x*pixels), int(y*pixels))
							if got.R < 128 {
								dark[dab]++
							}
							if got == (color.RGBA{255, 255, 255, 255}) {
								white[dab]++
							}
							looked[dab]++
							continue
						}
					}
					looked[dab]++
					if got := img.RGBAAt(int(x*pixels), int(y*pixels)); got != (color.RGBA{want.R, want.G, want.B, 255}) {
						t.Fatalf("%v, which dab %d has, is %v, want %v", trueAt(page), dab, got, want)
					}
				}
			}
			for i, dab := range d.dabs {
				if looked[i] < 5 {
					t.Errorf("dab %d was looked at in %d places", i, looked[i])
				}
				if _, known := p.Job.Looks(dab.Colour); !known {
					if part := float64(dark[i]) / float64(looked[i]); math.Abs(part-0.16) > 0.05 {
						t.Errorf("%.2f of the part of %s is dark, want lines 0.18 mm wide every 1.1 mm", part, dab.Colour)
					}
					if float64(white[i]) < 0.6*float64(looked[i]) {
						t.Errorf("only %d of %d places of the part of %s are white", white[i], looked[i], dab.Colour)
					}
				}
			}
		})
	}
}

// TestDabsOnAPicture: of a block whose print is known, here its left half, the parts are a wash and the
// print stands on them in full.
func TestDabsOnAPicture(t *testing.T) {
	p := planOf(t, dabJob(rectBlock, "{ colour = 'navy', middle = '40 mm' }"+mossRest))
	m := &picture.Mask{W: 90, H: 60, Paint: make([]uint8, 90*60)}
	for i := range m.Paint {
		if i%90 < 45 {
			m.Paint[i] = 255
		}
	}
	d := dabbedFaces(p.Items[0].Faces()[0])[0]
	d.block.Picture = &picture.Picture{Name: "leaf.png", Mask: m}
	box := geometry.Rect{Max: geometry.Pt(90, d.height(geometry.UnitMM))}
	views := d.picture(p.Job, box)
	img, err := raster.Draw(paper.Page{Size: box.Size(), Views: views}, 900)
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[geometry.Point]color.RGBA{
		{X: -10, Y: 5}:   {0, 0, 128, 255},
		{X: 10, Y: 12}:   {170, 170, 212, 255}, // a third of navy, two of white
		{X: -30, Y: -20}: {0x5f, 0x7a, 0x3a, 255},
		{X: 30, Y: 22}:   {201, 210, 189, 255}, // of moss
	} {
		page := at.Add(geometry.Pt(45, 30)).Mul(float64(d.size().W / 90)).Add(faceOnPage(views))
		if got := img.RGBAAt(int(page.X*10), int(page.Y*10)); got != want {
			t.Errorf("%v is %v, want %v", at, got, want)
		}
	}
}

// TestThinParts: a part too thin to be looked at has its line end in it all the same.
func TestThinParts(t *testing.T) {
	for _, c := range [][2]string{
		{rectBlock, "{ colour = 'navy', edge = '0.05 mm' }, { colour = 'gold', middle = '3 mm' }" + mossRest},
		{"print = '200 x 20 mm'", "{ colour = 'gold', edge = '9.95 mm' }" + mossRest},
		{tallBlock, "{ colour = 'gold', edge = '14.9 mm' }" + mossRest},
		{rectBlock, "{ colour = 'navy', edge = '29.7 mm' }, { colour = 'gold', middle = '20 mm' }" + mossRest},
		{diskBlock, "{ colour = 'navy', middle = '39.9 mm' }, { colour = 'gold', edge = '1 mm' }"},
	} {
		p := planOf(t, dabJob(c[0], c[1]))
		d := dabbedFaces(p.Items[0].Faces()[0])[0]
		for k, points := range d.points(len(d.names(geometry.UnitMM))) {
			for _, at := range points {
				if got := job.DabAt(d.dabs, d.block.Face, at); got != k || !d.block.Face.Contains(at) {
					t.Errorf("%s: dab %d is led to %v, which dab %d has", c[1], k, at, got)
				}
			}
		}
	}
}

// faceOnPage is where the top left corner of the face lies: its parts are what the first view shows.
func faceOnPage(views []paper.View) geometry.Point { return views[0].Area.Min }

// dabSeen returns which dab has a point of the page, -1 where none has; clear tells whether all round it
// is the same.
func dabSeen(d dabbed, face geometry.Outline, trueAt func(geometry.Point) geometry.Point, page geometry.Point) (dab int, clear bool) {
	const round = 0.45
	has := func(p geometry.Point) int {
		at := trueAt(p)
		if !face.Contains(at) {
			return -2
		}
		return job.DabAt(d.dabs, face, at)
	}
	dab = has(page)
	for turn := geometry.Angle(0); turn < 360; turn += 30 {
		if has(page.Add(geometry.Pt(round, 0).Turn(turn))) != dab {
			return 0, false
		}
	}
	return max(dab, -1), true
}

// dotsOf returns where the lines to names begin, by the number of the name from 1.
func dotsOf(views []paper.View) map[int]geometry.Point {
	dots := map[int]geometry.Point{}
	for _, v := range views {
		for _, f := range v.Drawing.Fills {
			if f.Role.Kind == "dab" {
				dots[f.Role.Number] = f.Place.At
			}
		}
	}
	return dots
}

// nearLines tells whether a point lies under the lines to names, or their dots.
func nearLines(views []paper.View, p geometry.Point) bool {
	for _, v := range views[len(views)-3:] {
		for _, s := range v.Drawing.Strokes {
			for _, piece := range s.Path() {
				line := geometry.Polygon{piece.Start}
				for _, step := range piece.Steps {
					line = append(line, step.To)
				}
				for i := 1; i < len(line); i++ {
					if (geometry.Polygon{line[i-1], line[i]}).EdgeDistance(p) < 1 {
						return true
					}
				}
			}
		}
		for _, f := range v.Drawing.Fills {
			if f.Place.At.Distance(p) < 1.5 {
				return true
			}
		}
	}
	return false
}

// TestDabsOnBenchSheets: the card says what to dab where, the details name each part, in words that stand
// on nothing else; a face that is dabbed alike in two passes is pictured once.
func TestDabsOnBenchSheets(t *testing.T) {
	p := planOf(t, `
[printing]
paint-cover = "90 ml/m2"
[[block]]
name = "fern"
print = "90 x 60 mm"
inked = 0.5
[[block]]
name = "pebble"
shape = "round"
print = "28 mm"
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
[[item.pass]]
name = "ferns"
block = "fern"
repeat = "corners"
dabs = [{ colour = "ochre", middle = "30 mm" }, { colour = "moss" }]
[[item.pass]]
name = "more ferns"
block = "fern"
repeat = "one"
dabs = [{ colour = "ochre", middle = "30 mm" }, { colour = "moss" }]
[[item.pass]]
name = "pebbles"
block = "pebble"
repeat = "placed"
at = ["250 x 120 mm"]
dabs = [{ colour = "slate", edge = "5 mm" }]
[[item.pass]]
name = "last"
block = "pebble"
repeat = "placed"
at = ["250 x 380 mm"]
colours = ["slate"]
`)
	sheet := Sheets(p, p.Items[0])[0]
	read := readback.Drawn(t, sheet.Pages)
	for i, page := range read {
		readback.CheckTexts(t, fmt.Sprintf("page %d", i+1), page)
		readback.CheckMargin(t, fmt.Sprintf("page %d", i+1), page, p.Job.Paper.Margin)
	}
	text := strings.Join(strings.Fields(textOf(sheet.Pages)), " ")
	for _, says := range []string{
		"Ferns: dab ochre on the middle, 30 mm across, then moss on the rest.",
		"More ferns: dab ochre on the middle, 30 mm across, then moss on the rest.",
		"Pebbles: dab slate along the edge, 5 mm wide; the rest of the face stays without paint. “Where the colours go” has a picture.",
		"Fern (ferns and more ferns)", "by the part of the face that a colour is dabbed on, else shared evenly", "Pebble (pebbles)", "no paint", "on the rest",
	} {
		if !strings.Contains(text, says) {
			t.Errorf("the bench sheet does not say %q:\n%s", says, text)
		}
	}
	if n := strings.Count(text, "Where the colours go has a picture"); n > 0 || strings.Contains(text, "Last: dab") {
		t.Errorf("the bench sheet says what is not so:\n%s", text)
	}
	plain := planOf(t, dabJob(rectBlock, "{ colour = 'gold', middle = '30 mm' }"))
	plain.Items[0].Passes[0].Pass.Dabs = nil
	if text := textOf(Sheets(plain, plain.Items[0])[0].Pages); strings.Contains(text, "Where the colours go") {
		t.Error("a block that is not dabbed in parts is pictured as one")
	}
}
