package trace_test

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/internal/repo"
	"underlay/template/picture"
	"underlay/template/trace"
	"underlay/testdata/photograph"
)

// fernPhoto returns the example's photograph, and one with a change made to it; the points given to the
// change are millimetres of the window's frame.
func fernPhoto(t testing.TB) *image.Gray {
	t.Helper()
	file, err := os.ReadFile(repo.Path(t, "examples", "fern-photo.jpg"))
	if err != nil {
		t.Fatal(err)
	}
	grey, err := picture.Gray(file)
	if err != nil {
		t.Fatal(err)
	}
	return grey
}

// fernCamera took the example's photograph.
func fernCamera() photograph.Camera {
	c := photograph.Camera{W: 1500, H: 1900, Focal: 1800, K1: 0.012, Aslant: 14, Toward: 70, Turn: 3}
	return c.Framed(0, 0, 210, 297, 0.02)
}

// put lays a disc of one grey on the photograph, at a point of the window's frame.
func put(t testing.TB, m *image.Gray, at geometry.Point, radius float64, grey uint8) {
	at = at.Add(windowPages["A4"](t).at)
	c := fernCamera()
	u, v := c.InPicture(float64(at.X), float64(at.Y))
	pixels := radius * c.Scale(float64(at.X), float64(at.Y))
	for y := int(v - pixels); float64(y) <= v+pixels; y++ {
		for x := int(u - pixels); float64(x) <= u+pixels; x++ {
			if math.Hypot(float64(x)-u, float64(y)-v) <= pixels {
				m.SetGray(x, y, color.Gray{Y: grey})
			}
		}
	}
}

// mapped returns a picture made of another's pixels.
func mapped(m *image.Gray, w, h int, from func(x, y int) uint8) *image.Gray {
	out := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			out.SetGray(x, y, color.Gray{Y: from(x, y)})
		}
	}
	return out
}

// averaged returns the mean of n x n pixels at a point.
func averaged(m *image.Gray, x, y, n int) uint8 {
	sum := 0
	for dy := range n {
		for dx := range n {
			sum += int(m.GrayAt(min(max(x+dx, 0), m.Rect.Dx()-1), min(max(y+dy, 0), m.Rect.Dy()-1)).Y)
		}
	}
	return uint8(sum / n / n)
}

// TestRefused changes a good photograph until it cannot be measured: each time it says why.
func TestRefused(t *testing.T) {
	f := trace.Window()
	for name, c := range map[string]struct {
		change func(m *image.Gray) *image.Gray
		want   string
	}{
		"a mark hidden": {func(m *image.Gray) *image.Gray {
			put(t, m, f.Marks[2].Centre, 10, 200)
			return m
		}, "of the window page's four buttons, the one with four holes, at the bottom right is not to be seen whole; take the picture again"},
		"two marks half hidden": {func(m *image.Gray) *image.Gray {
			put(t, m, f.Marks[0].Centre.Add(geometry.Pt(6, 0)), 7, 200)
			put(t, m, f.Marks[3].Centre.Add(geometry.Pt(0, 6)), 7, 200)
			return m
		}, "of the window page's four buttons, the one with two holes, at the top left and the one with five holes, at the bottom left are not to be seen whole;"},
		"a mark cut off": {func(m *image.Gray) *image.Gray {
			return m.SubImage(image.Rect(0, 0, 1330, 1900)).(*image.Gray)
		}, "of the window page's four buttons, the one with three holes, at the top right"},
		"mirrored": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1500, 1900, func(x, y int) uint8 { return m.GrayAt(1499-x, y).Y })
		}, "this picture is mirrored: left and right are changed over;"},
		"small": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1000, 1266, func(x, y int) uint8 { return averaged(m, x*3/2, y*3/2, 2) })
		}, "this picture has 3.2 pixels to the millimetre, and 4 are needed; take it again from nearer"},
		"tiny": {func(m *image.Gray) *image.Gray {
			return mapped(m, 300, 380, func(x, y int) uint8 { return averaged(m, x*5, y*5, 5) })
		}, "this picture is too small; take it again from nearer"},
		"blurred": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1500, 1900, func(x, y int) uint8 { return averaged(m, x-3, y-3, 7) })
		}, "this picture is blurred; hold the camera still"},
		"shaken": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1500, 1900, func(x, y int) uint8 {
				sum := 0
				for d := range 9 {
					sum += int(m.GrayAt(min(x+d, 1499), min(y+d/2, 1899)).Y)
				}
				return uint8(sum / 9)
			})
		}, "this picture is blurred; hold the camera still"},
		"a sheet that is not flat": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1500, 1900, func(x, y int) uint8 {
				return m.GrayAt(x, min(max(y+int(7*math.Sin(float64(x)/120)), 0), 1899)).Y
			})
		}, "the buttons and dots of the window page are up to 1."},
		"dots covered": {func(m *image.Gray) *image.Gray {
			for _, s := range f.Stitches[:13] {
				put(t, m, s, 2, 210)
			}
			return m
		}, "too few of the dots round the window are to be seen where they should be;"},
		"dark": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1500, 1900, func(x, y int) uint8 { return m.GrayAt(x, y).Y / 5 })
		}, "this picture is too dark; take it in good, even light"},
		"black": {func(m *image.Gray) *image.Gray {
			return mapped(m, 1500, 1900, func(x, y int) uint8 { return 3 })
		}, "this picture is too dark; take it in good, even light"},
		"nothing inside": {func(m *image.Gray) *image.Gray {
			for y := 0.0; y < 110; y += 5 {
				for x := -40.0; x < 45; x += 5 {
					put(t, m, geometry.Pt(geometry.Length(75+x), geometry.Length(50+y)), 7, 204)
				}
			}
			return m
		}, "nothing is printed inside the window, or too pale"},
		"pale": {func(m *image.Gray) *image.Gray {
			c, page := fernCamera(), windowPages["A4"](t).at
			// All but the marks and stitches: what is dark in the window is made a little darker than its ground.
			for y := range 1900 {
				for x := range 1500 {
					if g := m.GrayAt(x, y).Y; g < 190 {
						u, v := c.InPicture(float64(page.X)+75, float64(page.Y)+100)
						if math.Abs(float64(x)-u) < 250 && math.Abs(float64(y)-v) < 350 {
							m.SetGray(x, y, color.Gray{Y: 204 - (204-g)/25})
						}
					}
				}
			}
			return m
		}, "nothing is printed inside the window, or too pale"},
		"print on the edge": {func(m *image.Gray) *image.Gray {
			for x := 100.0; x < 149; x += 2 {
				put(t, m, geometry.Pt(geometry.Length(x), 120), 5, 80)
			}
			return m
		}, "the print touches the edge of the window; leave a strip"},
	} {
		t.Run(name, func(t *testing.T) {
			p, err := trace.Photo(c.change(fernPhoto(t)))
			if err == nil || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("%v, %v; want %s", p.Size, err, c.want)
			}
		})
	}
}

// TestTooMuchAslant: a view from the side is refused, though its marks are found.
func TestTooMuchAslant(t *testing.T) {
	page := windowPages["A4"](t)
	p := printed(t, page, motifs["ring"](50, nil).put(0, page.at.Add(geometry.Pt(75, 100))))
	c := photograph.Camera{W: 2300, H: 2000, Focal: 3200, Aslant: 52, Toward: 80}
	f := trace.Window().Bounds().Move(page.at)
	c = c.Framed(float64(f.Min.X), float64(f.Min.Y), float64(f.Max.X), float64(f.Max.Y), 0.03)
	img := photograph.Take(p.sheet(cloth{paint: 0.1, ground: 0.85, table: 0.25}), c, photograph.Light{White: 0.8}, 1, rand.New(rand.NewPCG(1, 1)))
	_, err := trace.Photo(img)
	if want := "this picture is taken too much aslant, 5"; err == nil || !strings.HasPrefix(err.Error(), want) {
		t.Errorf("%v; want %s", err, want)
	}
}

// TestNoWindow: pictures of something else are refused, never read.
func TestNoWindow(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	ruler := func() *image.Gray {
		s, err := paper.ParseStock("A4")
		if err != nil {
			t.Fatal(err)
		}
		pages, err := guide.RulerPage(s)
		if err != nil {
			t.Fatal(err)
		}
		return rendered(t, pages[0]).Img
	}
	text := func() *image.Gray {
		flow := paper.NewFlow(geometry.Size{W: 210, H: 297}, 20)
		for range 40 {
			flow.Text("o O 0 . : % 8 Print the block once, dark on the paper, and look at it before you go on. o O 0 . : %")
		}
		return rendered(t, flow.Pages()[0]).Img
	}
	discs := func() *image.Gray {
		d := &paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: 210, H: 297})}
		for i := range 60 {
			at := geometry.Pt(geometry.Length(20+i%6*32), geometry.Length(20+i/6*28))
			d.Fill(geometry.CircleOutline(at, 8).Path(), paper.Ink{})
			for k := range i % 7 {
				d.Fill(geometry.CircleOutline(at.Add(geometry.Pt(0, 4).Turn(geometry.Angle(k*360/max(i%7, 1)))), 1.4).Path(), paper.Grey(255))
			}
		}
		return rendered(t, paper.Page{Size: d.Bounds.Size(), Views: []paper.View{paper.PageView(d)}}).Img
	}
	const w, h = 900, 1200
	for name, img := range map[string]*image.Gray{
		"a ruler page":   ruler(),
		"a page of text": text(),
		"many buttons":   discs(),
		"plain grey":     mapped(nil, w, h, func(int, int) uint8 { return 130 }),
		"noise":          mapped(nil, w, h, func(int, int) uint8 { return uint8(r.IntN(256)) }),
		"squares":        mapped(nil, w, h, func(x, y int) uint8 { return uint8((x/60 + y/60) % 2 * 255) }),
		"rings": mapped(nil, w, h, func(x, y int) uint8 {
			return uint8(int(math.Hypot(float64(x%300-150), float64(y%300-150))) / 20 % 2 * 255)
		}),
		"a slope": mapped(nil, w, h, func(x, _ int) uint8 { return uint8(x * 255 / w) }),
	} {
		p, err := trace.Photo(img)
		if err == nil || !strings.Contains(err.Error(), "buttons") {
			t.Errorf("%s: %v, %v", name, p.Size, err)
		}
	}
}

// TestAnyTurn turns the photograph by quarters: all measure the same.
func TestAnyTurn(t *testing.T) {
	m := fernPhoto(t)
	want, err := trace.Photo(m)
	if err != nil {
		t.Fatal(err)
	}
	for quarter, turned := range []*image.Gray{
		mapped(m, 1900, 1500, func(x, y int) uint8 { return m.GrayAt(y, 1899-x).Y }),
		mapped(m, 1500, 1900, func(x, y int) uint8 { return m.GrayAt(1499-x, 1899-y).Y }),
		mapped(m, 1900, 1500, func(x, y int) uint8 { return m.GrayAt(1499-y, x).Y }),
	} {
		p, err := trace.Photo(turned)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(p.Size.W-want.Size.W)) > 0.051 || math.Abs(float64(p.Size.H-want.Size.H)) > 0.051 || math.Abs(p.Inked-want.Inked) > 0.002 {
			t.Errorf("turned by %d quarters: %v, %v; not %v, %v", quarter+1, p.Size, p.Inked, want.Size, want.Inked)
		}
	}
}

// TestSpecksAreLeftOut: drops of paint far from the print do not make it larger; stitches may be lost.
func TestSpecksAreLeftOut(t *testing.T) {
	m := fernPhoto(t)
	want, err := trace.Photo(m)
	if err != nil {
		t.Fatal(err)
	}
	put(t, m, geometry.Pt(20, 20), 0.4, 60)
	put(t, m, geometry.Pt(130, 180), 0.5, 60)
	for _, s := range trace.Window().Stitches[:5] {
		put(t, m, s, 2, 210)
	}
	p, err := trace.Photo(m)
	if err != nil {
		t.Fatal(err)
	}
	if p.Specks != 2 || p.Size != want.Size {
		t.Errorf("%v with %d specks; without %v", p.Size, p.Specks, want.Size)
	}
}

// TestPalePartsAreTold: a part of the print in a paler paint is not measured, and that is said.
func TestPalePartsAreTold(t *testing.T) {
	m := fernPhoto(t)
	p, err := trace.Photo(m)
	if err != nil || p.Pale > 0.5 {
		t.Errorf("the fern alone has %v mm² of pale paint, %v", p.Pale, err)
	}
	put(t, m, geometry.Pt(110, 60), 6, 168)
	p, err = trace.Photo(m)
	// A disc of 6 mm, less a rim of half a square of 1.25 mm: 3.14 x 5.4².
	if err != nil || p.Pale < 75 || p.Pale > 110 {
		t.Errorf("a pale disc of 113 mm² is told as %v, %v", p.Pale, err)
	}
}
