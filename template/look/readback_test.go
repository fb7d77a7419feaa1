package look_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/template/look"
	"underlay/template/picture"
	"underlay/template/plan"
)

// dpi is what pages are looked at in.
const dpi = 254

// raster returns a view on a page as pdfium shows it.
func raster(t *testing.T, v paper.View) *image.RGBA {
	t.Helper()
	_, file := readback.Open(t, pdf.Document{Parts: []paper.Part{{Name: "look", Pages: []paper.Page{onPage(v)}}}})
	return file.Pages()[0].RenderColour(dpi)
}

// dots returns where a point of a page lies among its dots: pdfium draws out a page to a whole number
// of them.
func dots(m *image.RGBA, p geometry.Point) (x, y float64) {
	size := onPage(paper.View{}).Size
	return float64(p.X/size.W) * float64(m.Bounds().Dx()), float64(p.Y/size.H) * float64(m.Bounds().Dy())
}

// dot returns the colour of the page at a point.
func dot(m *image.RGBA, p geometry.Point) paper.Ink {
	x, y := dots(m, p)
	c := m.RGBAAt(int(x), int(y))
	return paper.Ink{R: c.R, G: c.G, B: c.B}
}

// lookJob is a job of which blocks have pictures, and what its look is checked for.
type lookJob struct {
	text   string
	inks   map[string]paper.Ink
	byDab  func(q geometry.Point) string
	turned []int // prints whose turn is measured
}

const moreBlocks = `
[[paint]]
name = "moss"
looks = "#5f7a3a"
[[block]]
name = "fern"
print = "90 x 70 mm"
[[block]]
name = "pebble"
shape = "round"
print = "40 mm"
[[item]]
name = "thing"
border = "15 mm"
%s
`

func lookJobs() map[string]lookJob {
	inks := map[string]paper.Ink{"moss": {R: 0x5f, G: 0x7a, B: 0x3a}, "teal": {G: 128, B: 128}, "tan": {R: 210, G: 180, B: 140}, "": paper.Grey(40)}
	add := func(text string) lookJob {
		return lookJob{text: fmt.Sprintf(moreBlocks, text), inks: inks, turned: []int{1, 4, 7, 10}}
	}
	dabbed := add("size = '50 x 50 cm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ndabs = [{ colour = 'moss', middle = '50 mm' }, { colour = 'teal', edge = '9 mm' }, { colour = 'tan' }]")
	dabbed.byDab = func(q geometry.Point) string {
		switch {
		case math.Hypot(float64(q.X), float64(q.Y)) < 25:
			return "moss"
		case 45-math.Abs(float64(q.X)) < 9 || 35-math.Abs(float64(q.Y)) < 9:
			return "teal"
		}
		return "tan"
	}
	return map[string]lookJob{
		"straight": add("size = '50 x 50 cm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\nturns = ['0 90', '180 270']\ncolours = ['moss']"),
		"lapped, and another over it": add("size = '50 x 50 cm'\n[[item.pass]]\nblock = 'fern'\nlap = '0.5 mm'\ncolours = ['moss']\n" +
			"[[item.pass]]\nblock = 'pebble'\nbetween = 'fern'\nover = true\ncolours = ['tan']"),
		"no colour":  add("size = '50 x 50 cm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'"),
		"two blocks": add("size = '50 x 50 cm'\n[[item.pass]]\nblocks = [['fern', 'pebble']]\ngap = '1 mm'\ncolours-in-turn = [['moss', 'teal']]"),
		"frame":      add("size = '60 x 50 cm'\n[[item.pass]]\nblock = 'fern'\nrepeat = 'frame'\nsides = ['top', 'bottom']\ngap = '1 mm'\ncolours = ['teal']"),
		"strewn":     add("size = '50 x 50 cm'\n[[item.pass]]\nblock = 'fern'\nrepeat = 'tossed'\nany-turn = true\ngap = '1 mm'\ncolours = ['teal']"),
		"rings":      add("shape = 'round'\nsize = '60 cm'\n[[item.pass]]\nblock = 'fern'\nrepeat = 'rings'\ngap = '2 mm'\ncolours = ['moss']"),
		"drum":       add("shape = 'drum'\ndiameter = '25 cm'\nheight = '22 cm'\n[[item.pass]]\nblock = 'fern'\nrepeat = 'brick'\ngap = '2 mm'\ncolours = ['moss']"),
		"cone":       add("shape = 'cone'\ntop = '18 cm'\nbottom = '32 cm'\nheight = '26 cm'\n[[item.pass]]\nblock = 'fern'\nrepeat = 'brick'\ngap = '2 mm'\ncolours = ['moss']\n[[item.pass]]\nblock = 'pebble'\non = 'fern'\ncolours = ['tan']"),
		"dabs":       dabbed,
	}
}

// pictured works the job out, with a picture for every block.
func (l lookJob) planned(t *testing.T) (*plan.Plan, plan.FacePlan) {
	t.Helper()
	p := planned(t, l.text)
	for _, b := range p.Job.Blocks {
		b.Picture = whorls(360, 300)
		for i := range b.Picture.Mask.Paint { // nothing of a print reaches beyond its face
			x, y := (float64(i%360)+0.5)/360-0.5, (float64(i/360)+0.5)/300-0.5
			if b.Shape == job.RoundFace && math.Hypot(x, y) > 0.5 {
				b.Picture.Mask.Paint[i] = 0
			}
		}
	}
	return p, p.Items[0].Faces()[0]
}

func (l lookJob) oracle(face plan.FacePlan, slack geometry.Length) oracle {
	return oracle{face: face, slack: slack, ink: func(p *job.Pass, q geometry.Point) paper.Ink {
		switch {
		case l.byDab != nil:
			return l.inks[l.byDab(q)]
		case len(p.Colours) == 0:
			return l.inks[""]
		}
		return l.inks[p.Colours[0]]
	}}
}

// edges are nearer than this, on paper, to a place that is not looked at: the detail of the paths, and
// the dots of the raster.
const edge = 0.22 * geometry.Millimetre

// TestColours: pdfium shows each place of a look in the colour that it has by the source picture and
// the place of the prints, exactly: paint over paint, plain cloth white.
func TestColours(t *testing.T) {
	for name, l := range lookJobs() {
		p, face := l.planned(t)
		v := look.Flat(p.Job, face, look.First(face), box)
		s := look.Fitted(face.Item.Area.Cloth, box.Grow(-1))
		o := l.oracle(face, edge/s.K)
		page := raster(t, v)
		r := rand.New(rand.NewPCG(1, 2))
		met := map[paper.Ink]int{}
		asked := 0
		cloth := face.Item.Area.Cloth
		for range 3000 {
			at := geometry.Pt(cloth.Min.X+cloth.W()*geometry.Length(r.Float64()), cloth.Min.Y+cloth.H()*geometry.Length(r.Float64()))
			if !face.Item.Area.Rect.Grow(-1).Contains(at) || !onCloth(face, at, 2/s.K) || l.byDab != nil && nearDab(at, face, 1/s.K) {
				continue
			}
			asked++
			want, sure := o.at(at)
			if !sure {
				continue
			}
			if got := dot(page, s.At(at)); got != want {
				t.Errorf("%s: %v of the cloth is %v, want %v", name, at, got, want)
			}
			met[want]++
		}
		sum := 0
		for ink, n := range met {
			sum += n
			if n < 20 {
				t.Errorf("%s: only %d places of %v", name, n, ink)
			}
		}
		if sum < asked*4/10 || len(met) < 2 {
			t.Errorf("%s: sure of %d of %d places, %d inks", name, sum, asked, len(met))
		}
	}
}

// TestSeamIsCut: nothing of a print that lies across the seam of a shade is drawn beyond the edges of
// the shade laid flat, and each such print shows at both.
func TestSeamIsCut(t *testing.T) {
	for _, name := range []string{"drum", "cone"} {
		l := lookJobs()[name]
		p, face := l.planned(t)
		v := look.Flat(p.Job, face, look.First(face), box)
		s := look.Fitted(face.Item.Area.Cloth, box.Grow(-1))
		cloth, flat := face.Item.Area.Cloth, face.Item.Area.Flat
		sides := map[int][2]bool{}
		for _, f := range v.Drawing.Fills {
			for _, piece := range f.Path() {
				for _, step := range piece.Steps {
					at := step.To.Sub(s.To).Mul(1 / float64(s.K)).Add(s.From)
					beyond := max(cloth.Min.X-at.X, at.X-cloth.Max.X)
					if flat != nil {
						beyond = flat.OffEdge(at)
					}
					if beyond > 0.001 {
						t.Fatalf("%s: print %d is drawn %.2f mm beyond the seam", name, f.Role.Number, float64(beyond))
					}
					if beyond > -0.01 {
						side := sides[f.Role.Number]
						side[map[bool]int{true: 1}[at.X > cloth.Centre().X]] = true
						sides[f.Role.Number] = side
					}
				}
			}
		}
		seams := 0
		for _, pass := range face.Passes {
			for i, print := range pass.Prints {
				if print.Seam {
					seams++
					if sides[pass.First+i] != [2]bool{true, true} {
						t.Errorf("%s: print %d across the seam shows at %v", name, pass.First+i, sides[pass.First+i])
					}
				}
			}
		}
		if seams == 0 {
			t.Errorf("%s: no print across the seam", name)
		}
	}
}

// onCloth tells whether a place lies well within the item: a shade's sector has no bounds to go by.
func onCloth(face plan.FacePlan, at geometry.Point, clear geometry.Length) bool {
	flat := face.Item.Area.Flat
	if flat == nil {
		return face.Item.Item.Outline.HoldsClear(geometry.CircleOutline(at, clear), 0)
	}
	r := at.Distance(flat.Apex)
	return flat.OffEdge(at) < -clear && r > flat.Inner+clear && r < flat.Outer-clear
}

// nearDab tells whether a place lies near a line between two dabs of its print.
func nearDab(at geometry.Point, face plan.FacePlan, slack geometry.Length) bool {
	for _, print := range face.Passes[0].Prints {
		q := at.Sub(print.Origin).Turn(-print.Turn)
		x, y := math.Abs(float64(q.X)), math.Abs(float64(q.Y))
		if x > 46 || y > 36 {
			continue
		}
		for _, d := range []float64{math.Hypot(x, y) - 25, 45 - x - 9, 35 - y - 9} {
			if math.Abs(d) < float64(slack) {
				return true
			}
		}
	}
	return false
}

// TestStandingColours: the same of a shade that stands: a place seen at x from its middle goes round
// it by asin(x/r), with r the radius at that height, and lies there on the shade laid flat.
func TestStandingColours(t *testing.T) {
	for _, name := range []string{"drum", "cone"} {
		l := lookJobs()[name]
		p, face := l.planned(t)
		v := look.Standing(p.Job, face, look.First(face), box)
		shade := face.Item.Item.Shade
		top, bottom, height := float64(shade.Top), float64(shade.Bottom), float64(shade.Height)
		k := math.Min(float64(box.W()-2)/bottom, float64(box.H()-2)/height)
		page := raster(t, v)
		r := rand.New(rand.NewPCG(1, 2))
		met := map[paper.Ink]int{}
		for range 4000 {
			y := r.Float64() * height
			radius := (top + (bottom-top)*y/height) / 2
			x := (2*r.Float64() - 1) * radius
			if radius-math.Abs(x) < 1/k || y < 1/k || height-y < 1/k {
				continue
			}
			round := math.Asin(x / radius)
			at := geometry.Pt(face.Item.Area.Cloth.Centre().X+geometry.Length(radius*round), geometry.Length(y))
			if flat := face.Item.Area.Flat; flat != nil {
				// The trade's sums: slant s, outer radius s D/(D - d), and an angle that is to the way
				// round as D/2 to that radius.
				slant := math.Hypot(height, (bottom-top)/2)
				outer := slant * bottom / (bottom - top)
				from := outer - slant + slant*y/height
				sin, cos := math.Sincos(round * bottom / 2 / outer)
				at = flat.Apex.Add(geometry.Pt(geometry.Length(from*sin), geometry.Length(from*cos)))
			}
			// Towards the sides the shade turns away: what lies near an edge there is seen nearer.
			o := l.oracle(face, geometry.Length(float64(edge)/k/math.Cos(round)))
			want, sure := o.at(at)
			if !sure {
				continue
			}
			seen := geometry.Pt(box.Min.X+1+geometry.Length((x+bottom/2)*k), box.Min.Y+1+geometry.Length(y*k))
			if got := dot(page, seen); got != want {
				t.Errorf("%s: %.1f, %.1f of the shade is %v, want %v", name, x, y, got, want)
			}
			met[want]++
		}
		for ink, n := range met {
			if n < 100 {
				t.Errorf("%s: only %d places of %v", name, n, ink)
			}
		}
		if len(met) < 2 {
			t.Errorf("%s: %d inks", name, len(met))
		}
	}
}

// TestPlaceAndTurn: each print stands within 0.1 mm of the cloth of where the plan has it, and its
// ends too: its raster, by pdfium, agrees best there with the source picture (cross-correlation).
func TestPlaceAndTurn(t *testing.T) {
	for _, name := range []string{"straight", "rings", "cone", "strewn"} {
		l := lookJobs()[name]
		p, face := l.planned(t)
		face.Passes = face.Passes[:1]
		v := look.Flat(p.Job, face, look.First(face), box)
		s := look.Fitted(face.Item.Area.Cloth, box.Grow(-1))
		page := raster(t, v)
		for _, n := range l.turned {
			print := face.Passes[0].Prints[n]
			if print.Seam {
				continue
			}
			score := func(dx, dy, turn float64) float64 {
				return agreement(page, print.Block.Picture.Mask, print.Block.Face.Bounds(), func(q geometry.Point) geometry.Point {
					return s.At(q.Turn(print.Turn + geometry.Angle(turn)).Add(print.Origin).Add(geometry.Pt(geometry.Length(dx), geometry.Length(dy))))
				})
			}
			const step, turn = 0.6, 0.6
			best := score(0, 0, 0)
			x := peak(score(-step, 0, 0), best, score(step, 0, 0)) * step
			y := peak(score(0, -step, 0), best, score(0, step, 0)) * step
			round := peak(score(0, 0, -turn), best, score(0, 0, turn)) * turn
			atEnd := round * math.Pi / 180 * 45
			if best < 0.9 || math.Abs(x) > 0.1 || math.Abs(y) > 0.1 || math.Abs(atEnd) > 0.1 {
				t.Errorf("%s, print %d: agrees to %.3f, off by %.3f across, %.3f down, %.3f mm at its ends", name, n, best, x, y, atEnd)
			}
			if upside := score(0, 0, 180); upside > 0.6 {
				t.Errorf("%s, print %d: agrees to %.3f head down", name, n, upside)
			}
		}
	}
}

// peak is where a parabola through three values at -1, 0 and 1 is highest; far off where it has no top.
func peak(a, b, c float64) float64 {
	if a+c >= 2*b {
		return 9
	}
	return (a - c) / (2 * (a - 2*b + c))
}

// agreement is the correlation of a mask with what the page shows where at puts it, -1 to 1.
func agreement(page *image.RGBA, m *picture.Mask, face geometry.Rect, at func(geometry.Point) geometry.Point) float64 {
	var n, sa, sb, saa, sbb, sab float64
	for y := 0; y < m.H; y += 2 {
		for x := 0; x < m.W; x += 2 {
			q := geometry.Pt(
				face.Min.X+face.W()*geometry.Length((float64(x)+0.5)/float64(m.W)),
				face.Min.Y+face.H()*geometry.Length((float64(y)+0.5)/float64(m.H)))
			a, b := float64(m.At(x, y)), smooth(page, at(q))
			n, sa, sb, saa, sbb, sab = n+1, sa+a, sb+b, saa+a*a, sbb+b*b, sab+a*b
		}
	}
	return (n*sab - sa*sb) / math.Sqrt((n*saa-sa*sa)*(n*sbb-sb*sb))
}

// smooth is how dark the page is at a point, evenly from dot to dot.
func smooth(page *image.RGBA, p geometry.Point) float64 {
	x, y := dots(page, p)
	x, y = x-0.5, y-0.5
	i, j := math.Floor(x), math.Floor(y)
	u, v := x-i, y-j
	dark := func(i, j float64) float64 {
		return 255 - float64(color.GrayModel.Convert(page.RGBAAt(int(i), int(j))).(color.Gray).Y)
	}
	return (1-v)*((1-u)*dark(i, j)+u*dark(i+1, j)) + v*((1-u)*dark(i, j+1)+u*dark(i+1, j+1))
}
