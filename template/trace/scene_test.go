package trace_test

import (
	"image"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/guide"
	"underlay/template/internal/readback"
	"underlay/template/trace"
	"underlay/testdata/photograph"
)

// dpi is how finely pdfium draws what is photographed.
const dpi = 300

// rendered draws a page with pdfium.
func rendered(t testing.TB, page paper.Page) photograph.Raster {
	t.Helper()
	_, file := readback.Open(t, pdf.Document{Parts: []paper.Part{{Name: "page", Pages: []paper.Page{page}}}})
	return photograph.Raster{Img: file.Pages()[0].Render(dpi), Scale: dpi / 25.4}
}

// windowPages are the window page on A4 and on Letter, drawn once, and where its opening is on
// them.
var windowPages = map[string]func(t testing.TB) windowPage{"A4": windowOn("A4"), "Letter": windowOn("Letter")}

type windowPage struct {
	raster photograph.Raster
	size   geometry.Size
	at     geometry.Point
}

func windowOn(name string) func(t testing.TB) windowPage {
	var once sync.Once
	var w windowPage
	return func(t testing.TB) windowPage {
		once.Do(func() {
			s, err := paper.ParseStock(name)
			if err != nil {
				t.Fatal(err)
			}
			pages, err := guide.WindowPage(s)
			if err != nil {
				t.Fatal(err)
			}
			view := pages[0].Views[0]
			w = windowPage{rendered(t, pages[0]), pages[0].Size, view.At.Sub(view.Area.Min)}
		})
		return w
	}
}

// A motif is closed lines round its middle, filled where they run round more than they run back.
type motif []geometry.Polygon

func (m motif) path() geometry.Path {
	var p geometry.Path
	for _, line := range m {
		p = append(p, line.Path()...)
	}
	return p
}

// put turns and moves a motif.
func (m motif) put(turn geometry.Angle, at geometry.Point) motif {
	var out motif
	for _, line := range m {
		out = append(out, line.Turn(turn).Move(at))
	}
	return out
}

func round(at geometry.Point, across, down geometry.Length, turn geometry.Angle, back bool) geometry.Polygon {
	var p geometry.Polygon
	const n = 180
	for i := range n {
		a := 2 * math.Pi * float64(i) / n
		if back {
			a = -a
		}
		p = append(p, geometry.Pt(across*geometry.Length(math.Cos(a)), down*geometry.Length(math.Sin(a))).Turn(turn).Add(at))
	}
	return p
}

// motifs are shapes of our own, w across and about as high.
var motifs = map[string]func(w geometry.Length, r *rand.Rand) motif{
	"fern": func(w geometry.Length, _ *rand.Rand) motif {
		h := 1.3 * w
		m := motif{{geometry.Pt(-w/60, h/2), geometry.Pt(-w/120, -h/2), geometry.Pt(w/120, -h/2), geometry.Pt(w/60, h/2)}}
		for i := range 9 {
			y := h/2 - h/10 - geometry.Length(i)*h/11
			long := w / 4 * geometry.Length(1-float64(i)/12)
			for _, side := range []float64{-1, 1} {
				turn := geometry.Angle(-25 * side)
				at := geometry.Pt(geometry.Length(side)*long, y-long*0.45)
				m = append(m, round(at, long, long/4, turn, false))
			}
		}
		return m
	},
	"ring": func(w geometry.Length, _ *rand.Rand) motif {
		return motif{round(geometry.Point{}, w/2, w/2, 0, false), round(geometry.Pt(w/20, 0), w/4, w/4, 0, true), round(geometry.Pt(w/20, 0), w/12, w/9, 0, false)}
	},
	"triangle": func(w geometry.Length, _ *rand.Rand) motif {
		return motif{{geometry.Pt(-w/2, w/2), geometry.Pt(0, -w/2), geometry.Pt(w/2, w/2)},
			{geometry.Pt(-w/5, w/3), geometry.Pt(w/5, w/3), geometry.Pt(0, -w/9)}}
	},
	"blob": func(w geometry.Length, r *rand.Rand) motif {
		var p geometry.Polygon
		a, b, c := r.Float64()*6, r.Float64()*6, r.Float64()*6
		const n = 240
		for i := range n {
			t := 2 * math.Pi * float64(i) / n
			d := w / 2 * geometry.Length(1+0.15*math.Sin(2*t+a)+0.12*math.Sin(3*t+b)+0.07*math.Sin(5*t+c))
			p = append(p, geometry.Pt(d*geometry.Length(math.Cos(t)), d*geometry.Length(math.Sin(t))))
		}
		return motif{p}
	},
}

// print is a motif in the window, and what it measures.
type print struct {
	page   windowPage
	raster photograph.Raster // the motif alone
	at     geometry.Point    // its raster's corner, on the page
	size   geometry.Size
	inked  float64
}

func printed(t testing.TB, page windowPage, m motif) print {
	t.Helper()
	d := &paper.Drawing{Bounds: m.path().Bounds().Grow(2)}
	d.Fill(m.path(), paper.Ink{})
	p := print{page: page, at: d.Bounds.Min}
	p.raster = rendered(t, paper.Page{Size: d.Bounds.Size(), Views: []paper.View{{Drawing: d, Area: d.Bounds}}})
	p.size = m.path().Bounds().Size()
	var ink float64
	for _, v := range p.raster.Img.Pix {
		ink += float64(255-v) / 255
	}
	p.inked = ink / p.raster.Scale / p.raster.Scale / float64(p.size.W*p.size.H)
	return p
}

// cloth is what is seen in the window: the page's own paper, or cloth where it is cut out.
type cloth struct {
	paint, ground float64 // how much light each gives back
	table         float64 // and the table the page lies on
	cut           bool
	ragged        float64 // millimetres by which the cut is off the line
	weave         float64 // a share by which its threads differ
}

// sheet is the scene: the page on a table, the print in its window.
func (p print) sheet(c cloth) photograph.Sheet {
	const paperWhite, ink = 0.85, 0.05
	ox, oy := float64(p.page.at.X), float64(p.page.at.Y)
	mx, my := float64(p.at.X), float64(p.at.Y)
	pw, ph := float64(p.page.size.W), float64(p.page.size.H)
	return func(x, y float64) float64 {
		if x < 0 || y < 0 || x > pw || y > ph {
			return c.table
		}
		ground := paperWhite
		wx, wy := x-ox, y-oy
		inside := wx > -1 && wy > -1 && wx < 151 && wy < 201
		white := p.page.raster.At(x, y)
		if c.cut && inside {
			if off := c.ragged * math.Sin(wx/23+wy/17); wx > off && wy > off && wx < 150+off && wy < 200+off {
				ground, white = c.ground, 1
				if c.weave > 0 {
					ground *= 1 + c.weave*math.Sin(x*9)*math.Sin(y*9)
				}
			}
		}
		light := ink + (ground-ink)*white
		if inside {
			print := 1 - p.raster.At(x-mx, y-my)
			light += (c.paint - light) * print
		}
		return light
	}
}

// scene is a photograph made up, and what it shows.
type scene struct {
	img    *image.Gray
	print  print
	camera photograph.Camera
	light  photograph.Light
	cloth  cloth
	name   string
}

// between returns a number in a range.
func between(r *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

// made makes up a photograph: any motif, any turn, up to 40 degrees aslant.
func made(t testing.TB, seed uint64) scene {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 77))
	s := scene{name: []string{"fern", "ring", "triangle", "blob"}[seed%4]}
	page := windowPages[[]string{"A4", "Letter"}[r.IntN(2)]](t)
	w := geometry.Length(between(r, 30, 90))
	m := motifs[s.name](w, r).put(geometry.Angle(between(r, -12, 12)), geometry.Point{})
	b := m.path().Bounds()
	free := geometry.Size{W: 150 - 16 - b.W(), H: 200 - 16 - b.H()}
	corner := geometry.Pt(8+free.W*geometry.Length(r.Float64()), 8+free.H*geometry.Length(r.Float64()))
	s.print = printed(t, page, m.put(0, page.at.Add(corner).Sub(b.Min)))

	s.cloth = cloth{paint: between(r, 0.05, 0.3), ground: 0.85, table: 0.25}
	switch r.IntN(4) {
	case 0:
		s.cloth = cloth{paint: between(r, 0.05, 0.2), ground: between(r, 0.5, 0.8), table: 0.03, cut: true, ragged: between(r, 0, 0.7), weave: float64(r.IntN(2)) * between(r, 0, 0.1)}
	case 1:
		s.cloth = cloth{paint: between(r, 0.6, 0.8), ground: between(r, 0.06, 0.15), table: 0.25, cut: true, ragged: between(r, 0, 0.7), weave: float64(r.IntN(2)) * between(r, 0, 0.1)}
	}
	c := photograph.Camera{W: 2000, H: 1500, Focal: between(r, 1400, 2200),
		K1: between(r, -0.03, 0.03), K2: between(r, -0.004, 0.004),
		Aslant: between(r, 0, 40), Toward: between(r, 0, 360), Turn: between(r, 0, 360)}
	if r.IntN(2) == 0 {
		c.W, c.H = c.H, c.W
	}
	f := trace.Window().Bounds().Move(page.at)
	c = c.Framed(float64(f.Min.X), float64(f.Min.Y), float64(f.Max.X), float64(f.Max.Y), between(r, 0.02, 0.05))
	least := math.Inf(1)
	for _, corner := range (geometry.Rect{Max: geometry.Pt(150, 200)}).Move(page.at).Polygon() {
		least = min(least, c.Scale(float64(corner.X), float64(corner.Y)))
	}
	scale := between(r, 4.2, 6.5)
	s.camera = c.Finer(scale / least)
	s.light = photograph.Light{White: between(r, 0.35, 1), FallX: between(r, -0.5, 0.5), FallY: between(r, -0.5, 0.5), Vignette: between(r, 0, 0.3),
		Blur: between(r, 0.05, 0.2) * scale, MotionWay: between(r, 0, 180), Noise: between(r, 1, 6)}
	if r.IntN(3) == 0 {
		s.light.Motion = between(r, 0, 0.4) * scale
	}
	if r.IntN(3) == 0 {
		s.light.Shade, s.light.ShadeX, s.light.ShadeTurn, s.light.ShadeSoft = between(r, 0.1, 0.4), between(r, 20, 180), between(r, 0, 90), between(r, 8, 25)
	}
	img := photograph.Take(s.print.sheet(s.cloth), s.camera, s.light, 2, r)
	var err error
	if s.img, _, err = photograph.Saved(img, 70); err != nil {
		t.Fatal(err)
	}
	return s
}
