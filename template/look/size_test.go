package look_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/paper/svg"
	"underlay/template/look"
	"underlay/template/picture"
	"underlay/template/plan"
)

// whorls is a picture with much in it, of which no part is like its mirror image.
func whorls(w, h int) *picture.Picture {
	m := &picture.Mask{W: w, H: h, Paint: make([]uint8, w*h)}
	for i := range m.Paint {
		x, y := (float64(i%w)+0.5)/float64(w)-0.4, (float64(i/w)+0.5)/float64(h)-0.55
		v := math.Sin(40*math.Hypot(x, y)+3*math.Atan2(y, x)) + 0.7*math.Sin(31*x+13*y*y)
		m.Paint[i] = uint8(math.Round(127.5 + 127.5*min(max(3*v, -1), 1)))
	}
	return &picture.Picture{Name: "whorls.png", Mask: m}
}

// many is a cloth of about so many prints of 10 mm with a picture.
func many(t testing.TB, across, down int, pass string) *plan.Plan {
	t.Helper()
	p := planned(t, fmt.Sprintf("[[block]]\nname = 'pebble'\nprint = '10 x 10 mm'\n"+
		"[[item]]\nname = 'bench runner'\nsize = '%d x %d mm'\nborder = '20 mm'\n"+
		"[[item.pass]]\nblock = 'pebble'\n%s", across*11+41, down*11+41, pass))
	p.Job.Blocks[0].Picture = whorls(400, 400)
	return p
}

// onPage is a page with a look on it.
func onPage(v paper.View) paper.Page {
	return paper.Page{Size: geometry.Size{W: 210, H: 297}, Views: []paper.View{v}}
}

func packed(t testing.TB, pages ...paper.Page) int {
	t.Helper()
	var file bytes.Buffer
	if err := pdf.Write(&file, pdf.Document{Parts: []paper.Part{{Name: "look", Pages: pages}}}); err != nil {
		t.Fatal(err)
	}
	return file.Len()
}

// TestBytesAPrint: a motif is in the file once, however it is turned; with each print a PDF grows by
// less than 60 bytes, a picture for a browser by less than 120.
func TestBytesAPrint(t *testing.T) {
	for name, pass := range map[string]string{
		"straight":    "gap = '1 mm'\ncolours = ['olive']",
		"turned":      "gap = '1 mm'\nturns = ['0 90', '270 180']\ncolours = ['olive']",
		"strewn":      "repeat = 'tossed'\ngap = '0.2 mm'\nany-turn = true\ncolours = ['olive']\ncount = COUNT",
		"two colours": "gap = '1 mm'\ncolours = ['olive', 'teal']",
		"three dabs":  "gap = '1 mm'\ndabs = [{ colour = 'olive', middle = '4 mm' }, { colour = 'teal', corners = '2 mm' }, { colour = 'tan' }]",
	} {
		var sizes, pictures, prints [2]int
		for i, side := range []int{50, 100} {
			p := many(t, side, side, strings.ReplaceAll(pass, "COUNT", fmt.Sprint(5*side)))
			face := p.Items[0].Faces()[0]
			v := look.Flat(p.Job, face, look.First(face), box)
			prints[i], sizes[i] = face.Count(), packed(t, onPage(v))
			var picture bytes.Buffer
			if err := svg.WritePage(&picture, "look", onPage(v), svg.Options{}); err != nil {
				t.Fatal(err)
			}
			pictures[i] = picture.Len()
		}
		more := float64(prints[1] - prints[0])
		each, eachSVG := float64(sizes[1]-sizes[0])/more, float64(pictures[1]-pictures[0])/more
		t.Logf("%s: %d prints in %d bytes, %.1f a print; as SVG %.1f", name, prints[1], sizes[1], each, eachSVG)
		if prints[1] < 10_000 && name != "strewn" || each > 60 || eachSVG > 3*120 {
			t.Errorf("%s: %d prints, %.1f bytes each, %.1f as SVG", name, prints[1], each, eachSVG)
		}
	}
}

// TestLooksAreBounded: of a hundred thousand prints, and of few large ones, at any size, no more
// corners are drawn than a reader draws in a moment, and the file stays small.
func TestLooksAreBounded(t *testing.T) {
	for _, side := range []int{2, 30, 316} {
		p := many(t, side, side, "gap = '1 mm'\ncolours = ['olive', 'teal']")
		face := p.Items[0].Faces()[0]
		for _, width := range []geometry.Length{20, 180} {
			v := look.Flat(p.Job, face, look.First(face), geometry.RectAt(geometry.Pt(10, 10), geometry.Size{W: width, H: width}))
			points, known := 0, map[*paper.Shape]int{}
			for _, f := range v.Drawing.Fills {
				n, met := known[f.Shape]
				if !met {
					for _, piece := range f.Path() {
						n += 1 + len(piece.Steps)
					}
					known[f.Shape] = n
				}
				points += n
			}
			if size := packed(t, onPage(v)); points > 2_000_000 || size > 150_000+25*face.Count() {
				t.Errorf("%d prints in %g mm: %d corners, %d bytes", face.Count(), float64(width), points, size)
			}
		}
	}
}
