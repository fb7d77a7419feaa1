package look_test

import (
	"fmt"
	"slices"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/look"
	"underlay/template/plan"
)

const napkins = `
[[block]]
name = "fern"
print = "80 x 60 mm"
[[item]]
name = "napkin"
size = "20 x 24 cm"
border = "30 mm"
hem = "12 mm"
pieces = "3 x 2"
apart = "20 mm"
[[item.keep-clear]]
name = "loop"
at = "0 x 0 mm"
size = "25 x 30 mm"
[[item.pass]]
block = "fern"
gap = "1 mm"
colours = ["olive", "teal"]
`

// strokes are the bounds of the lines of a type in a view.
func strokes(v paper.View, kind paper.LineType) []geometry.Rect {
	var all []geometry.Rect
	for _, s := range v.Drawing.Strokes {
		if s.Pen.Type == kind {
			all = append(all, s.Bounds())
		}
	}
	return all
}

// TestClothShows: the edge of the cloth, its hem and its zones lie where they do on the cloth; of
// several pieces all of them, with the lines to cut along, and the same numbers in each.
func TestClothShows(t *testing.T) {
	p := planned(t, napkins)
	one := p.Items[0].Faces()[0]
	for name, c := range map[string]struct {
		face         plan.FacePlan
		width        geometry.Length
		pieces, cuts int
	}{"a piece": {one, 200, 1, 0}, "the cloth": {one.Laid(), 640, 6, 3}} {
		v := look.Flat(p.Job, c.face, look.First(c.face), box)
		k := 148 / c.width
		at := func(x, y, w, h geometry.Length) geometry.Rect {
			return geometry.RectAt(box.Min.Add(geometry.Pt(1+x*k, 1+y*k)), geometry.Size{W: w * k, H: h * k})
		}
		has := func(what string, all []geometry.Rect, want geometry.Rect) {
			t.Helper()
			if !slices.ContainsFunc(all, func(r geometry.Rect) bool { return r.Grow(1e-6).Holds(want) && want.Grow(1e-6).Holds(r) }) {
				t.Errorf("%s: no %s at %v, but %v", name, what, want, all)
			}
		}
		var zones []geometry.Rect
		numbers := map[int]int{}
		for _, f := range v.Drawing.Fills {
			if f.Role.Kind != look.RolePrint {
				zones = append(zones, f.Bounds())
			} else {
				numbers[f.Role.Number]++
			}
		}
		hems, cuts := strokes(v, paper.Dashed), strokes(v, paper.Chain)
		if len(zones) != c.pieces || len(hems) != c.pieces || len(cuts) != c.cuts {
			t.Errorf("%s: %d zones, %d hems, %d cuts", name, len(zones), len(hems), len(cuts))
		}
		for i := range c.pieces {
			x, y := geometry.Length(i%3)*220, geometry.Length(i/3)*260
			has("hem", hems, at(x+12, y+12, 176, 216))
			has("zone", zones, at(x, y, 25, 30))
		}
		if c.cuts > 0 {
			has("edge", strokes(v, paper.Continuous), at(0, 0, 640, 500))
			has("cut", cuts, at(210, 0, 0, 500))
			has("cut", cuts, at(430, 0, 0, 500))
			has("cut", cuts, at(0, 250, 640, 0))
		} else {
			has("edge", strokes(v, paper.Continuous), at(0, 0, 200, 240))
		}
		if len(numbers) != one.Count() || numbers[1] != 2*c.pieces {
			t.Errorf("%s: numbers %v", name, numbers)
		}
	}
}

// TestBands: of a block that does not say where its colours go, the first is drawn at its top, the
// last at its foot, as much of each, whichever way it is turned.
func TestBands(t *testing.T) {
	p := planned(t, fmt.Sprintf(cushion, "", "colours = ['olive', 'moss', 'teal']\nturns = ['0 90', '180 270']"))
	face := p.Items[0].Faces()[0]
	v := look.Flat(p.Job, face, look.First(face), box)
	s := look.Fitted(face.Item.Area.Cloth, box.Grow(-1))
	marks := map[int][]geometry.Rect{}
	for _, f := range v.Drawing.Fills {
		if n := f.Role.Number; n > 0 {
			marks[n] = append(marks[n], f.Bounds())
		}
	}
	for i, print := range face.Passes[0].Prints {
		bands := marks[i+1]
		if len(bands) != 3 {
			t.Fatalf("print %d in %d colours", i+1, len(bands))
		}
		for k, b := range bands {
			want := s.At(print.Origin.Add(geometry.Pt(0, geometry.Length(k-1)*80/3).Turn(print.Turn)))
			if d := b.Centre().Distance(want); d > 0.01 {
				t.Errorf("print %d turned by %g: colour %d is off by %.3f mm", i+1, float64(print.Turn), k+1, float64(d))
			}
		}
	}
}

// TestHatchesDiffer: footprints of one pass are hatched another way than those of the next, and of
// the blocks of a pass each another way.
func TestHatchesDiffer(t *testing.T) {
	const blocks = "[[block]]\nname = 'fern'\nprint = '60 x 60 mm'\n[[block]]\nname = 'acorn'\nprint = '60 x 60 mm'\n[[item]]\nname = 'bag'\nsize = '40 x 40 cm'\nborder = '20 mm'\n"
	for name, passes := range map[string]string{
		"passes": "[[item.pass]]\nblock = 'fern'\ngap = '40 mm'\n[[item.pass]]\nblock = 'acorn'\nbetween = 'fern'\nover = true\n",
		"blocks": "[[item.pass]]\nblocks = [['fern', 'acorn']]\ngap = '2 mm'\n",
	} {
		p := planned(t, blocks+passes)
		face := p.Items[0].Faces()[0]
		v := look.Flat(p.Job, face, look.First(face), box)
		lines := map[string]geometry.Path{}
		for _, f := range v.Drawing.Fills {
			if f.Ink == (paper.Ink{}) {
				for _, pass := range face.Passes {
					if n := f.Role.Number - pass.First; n >= 0 && n < len(pass.Prints) {
						lines[pass.Prints[n].Block.Name] = f.Shape.Turned(0)
					}
				}
			}
		}
		if len(lines) != 2 {
			t.Fatalf("%s: %d blocks hatched", name, len(lines))
		}
		first := func(b string) geometry.Point {
			piece := lines[b][len(lines[b])/2]
			way := piece.Steps[0].To.Sub(piece.Start)
			return way.Mul(1 / float64(way.Norm()))
		}
		if a, b := first("fern"), first("acorn"); (a.X*b.X + a.Y*b.Y).Abs() > 0.9 {
			t.Errorf("%s: hatched along %v, and along %v", name, a, b)
		}
	}
}

// TestPalePaint: where paint would not show on white, the cloth under it is grey; flat and standing.
func TestPalePaint(t *testing.T) {
	const shade = "[[block]]\nname = 'fern'\nprint = '60 x 60 mm'\n[[item]]\nname = 'shade'\nshape = 'drum'\ndiameter = '20 cm'\nheight = '20 cm'\nborder = '20 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['%s']\n"
	for colour, want := range map[string]paper.Ink{"ivory": paper.Grey(165), "moss": paper.Grey(255), "olive": paper.Grey(255), "gold": paper.Grey(255), "white": paper.Grey(165)} {
		p := planned(t, fmt.Sprintf(shade, colour))
		face := p.Items[0].Faces()[0]
		for name, v := range map[string]paper.View{"flat": look.Flat(p.Job, face, look.First(face), box), "standing": look.Standing(p.Job, face, look.First(face), box)} {
			if got := dot(raster(t, v), box.Min.Add(geometry.Pt(20, 2))); got != want {
				t.Errorf("%s, %s: cloth %v, want %v", colour, name, got, want)
			}
		}
	}
}

// TestHero: a shade is shown standing, as high as it is wide; all else flat, in the first of its ways
// of colouring there is on the face.
func TestHero(t *testing.T) {
	shade := planned(t, "[[block]]\nname = 'fern'\nprint = '60 x 60 mm'\n[[item]]\nname = 'shade'\nshape = 'drum'\ndiameter = '20 cm'\nheight = '20 cm'\nborder = '20 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n")
	v := look.Hero(shade.Job, shade.Items[0].Faces()[0], box)
	edge := strokes(v, paper.Continuous)
	if e := edge[len(edge)-1]; (e.W()-148).Abs() > 1e-6 || (e.H()-148).Abs() > 1e-6 {
		t.Errorf("a drum as high as wide is seen as %v", e.Size())
	}
	way := "faces = ['front', 'back']\n[[item.colourway]]\nname = 'evening'\nquantity = 3\nface = 'back'\nswap = { moss = 'night' }\n" +
		"[[item.keep-clear]]\nface = 'back'\nname = 'label'\nat = '0 x 0 mm'\nsize = '30 x 30 mm'"
	p := planned(t, fmt.Sprintf(cushion, way, "colours = ['moss']"))
	faces := p.Items[0].Faces()
	for i, want := range []paper.Ink{{R: 0x5f, G: 0x7a, B: 0x3a}, {R: 0x10, G: 0x20, B: 0x30}} {
		if got := inksOf(look.Hero(p.Job, faces[i], box)); !slices.Equal(got, []paper.Ink{want}) {
			t.Errorf("face %d in %v, want %v", i, got, want)
		}
	}
}
