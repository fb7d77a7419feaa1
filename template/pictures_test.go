package template

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"underlay/geometry"
	"underlay/paper/pdf"
	"underlay/template/internal/messages"
	"underlay/template/internal/sample"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

// pictureDPI keeps the smallest letters of a page readable, and a whole A4 no wider than a README
// is shown.
const pictureDPI = 90

// pictures are parts of real pages, for the README.
func pictures() []pictured {
	const nook, dark = "reading-nook", "dark-cushion"
	return []pictured{
		{"look", "framed-cushion", "look", 1, mmRect(12, 29, 200, 222)},
		{"guide", nook, "guide", 2, mmRect(8, 4, 210, 198)},
		{"bench", nook, "bench", 2, mmRect(8, 8, 202, 272)},
		{"tag", nook, "tags", 1, mmRect(10, 26, 113, 130)},
		{"sheets", nook, "guide", 1, mmRect(30, 36, 180, 172)},
		{"borders", "runner-with-fringe", "guide", 2, mmRect(70, 38, 210, 160)},
		{"edges", dark, "guide", 1, mmRect(20, 36, 190, 172)},
		{"ticks", dark, "guide", 2, mmRect(6, 4, 200, 72)},
		{"set", "towels", "bench", 2, mmRect(8, 146, 202, 220)},
		{"napkins", "napkins", "guide", 3, mmRect(20, 4, 283, 150)},
		{"cuts", "napkins", "bench", 2, mmRect(8, 202, 78, 280)},
		{"two-part", "two-part-acorn", "guide", 3, mmRect(4, 46, 210, 203)},
		{"dabs", "dabbed-cushion", "bench", 2, mmRect(12, 42, 106, 91)},
		{"chess", "chess-cushion", "bench", 1, mmRect(8, 32, 202, 134)},
		{"crooked", "crooked-cover", "bench", 1, mmRect(12, 32, 200, 128)},
		{"motif", "book-bag-motif", "bench", 1, mmRect(12, 32, 200, 134)},
		{"framed", "framed-cushion", "bench", 1, mmRect(12, 32, 200, 128)},
		{"tossed", "tossed-pebbles", "bench", 1, mmRect(12, 32, 200, 128)},
		{"stands", "lampshades", "look", 1, mmRect(12, 36, 178, 162)},
		{"shade", "lampshades", "bench", 2, mmRect(14, 99, 200, 165)},
		{"seam", "lampshades", "guide", 6, mmRect(4, 74, 210, 205)},
	}
}

// pictured is an area of one page, in millimetres from the page's top left corner.
type pictured struct {
	file string
	job  string
	part string
	page int // of the part, from 1
	area geometry.Rect
}

func mmRect(left, top, right, bottom geometry.Length) geometry.Rect {
	return geometry.Rect{Min: geometry.Point{X: left, Y: top}, Max: geometry.Point{X: right, Y: bottom}}
}

// TestPictures keeps the README's pictures of real pages as the program draws them. With
// -update it makes them anew.
func TestPictures(t *testing.T) {
	jobs := sample.Examples(t)
	for _, p := range pictures() {
		job := jobs[p.job+".toml"]
		if job == nil {
			t.Fatalf("there is no example %s", p.job)
		}
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		doc, _, err := Document(plan, []string{p.part})
		if err != nil {
			t.Fatal(err)
		}
		var file, got bytes.Buffer
		if err := pdf.Write(&file, doc); err != nil {
			t.Fatal(err)
		}
		page := pdfread.Open(t, file.Bytes()).Pages()[p.page-1].RenderColour(pictureDPI)
		encoder := png.Encoder{CompressionLevel: png.BestCompression}
		if err := encoder.Encode(&got, p.crop(page)); err != nil {
			t.Fatal(err)
		}
		if got.Len() > 60_000 {
			t.Errorf("%s is %d bytes, too many for a page that is read on a slow line", p.file, got.Len())
		}
		path := filepath.Join("../examples/pictures", p.file+".png")
		if *messages.Update {
			if err := os.WriteFile(path, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got.Bytes(), want) {
			t.Errorf("%s is not what the program draws now; look at the change, then run go test ./template -run Pictures -update", path)
		}
	}
}

// crop cuts it out of its page, in 16 shades of red, green and blue each: that is enough for lines and
// letters, and takes far fewer bytes.
func (p pictured) crop(page *image.RGBA) *image.Paletted {
	var palette color.Palette
	for i := range 16 {
		palette = append(palette, color.Gray{Y: uint8(i * 17)})
	}
	index := map[color.RGBA]uint8{}
	for i := range palette {
		index[color.RGBAModel.Convert(palette[i]).(color.RGBA)] = uint8(i)
	}
	px := func(l geometry.Length) int { return int(math.Round(float64(l/geometry.Inch) * pictureDPI)) }
	area := image.Rect(px(p.area.Min.X), px(p.area.Min.Y), px(p.area.Max.X), px(p.area.Max.Y)).Intersect(page.Bounds())
	out := image.NewPaletted(image.Rect(0, 0, area.Dx(), area.Dy()), nil)
	shade := func(v uint8) uint8 { return uint8((int(v) + 8) / 17 * 17) }
	for y := range area.Dy() {
		for x := range area.Dx() {
			c := page.RGBAAt(area.Min.X+x, area.Min.Y+y)
			c = color.RGBA{shade(c.R), shade(c.G), shade(c.B), 255}
			i, met := index[c]
			if !met && len(palette) < 256 {
				i = uint8(len(palette))
				palette = append(palette, c)
			} else if !met {
				i = uint8(palette.Index(c))
			}
			index[c] = i
			out.SetColorIndex(x, y, i)
		}
	}
	out.Palette = palette
	return out
}
