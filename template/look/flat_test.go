package look_test

import (
	"fmt"
	"slices"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/internal/sample"
	"underlay/template/jobfile"
	"underlay/template/look"
	"underlay/template/plan"
)

// planned reads and works out a job.
func planned(t testing.TB, text string) *plan.Plan {
	t.Helper()
	j, err := jobfile.Read("nook.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.New(j)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// box is where looks are drawn in tests.
var box = geometry.RectAt(geometry.Pt(20, 30), geometry.Size{W: 150, H: 180})

// TestEveryPrintShows: the look of every face of every example has the marks of all its prints, by
// their numbers, in the order they are printed in, within the box and about where they lie.
func TestEveryPrintShows(t *testing.T) {
	for name, j := range sample.Examples(t) {
		p, err := plan.New(j)
		if err != nil {
			t.Fatal(err)
		}
		for _, ip := range p.Items {
			for _, face := range ip.Faces() {
				v := look.Flat(j, face, look.First(face), box)
				k := look.Fitted(face.Item.Area.Cloth, box.Grow(-1))
				last, met := 0, map[int]geometry.Rect{}
				for _, f := range v.Drawing.Fills {
					if f.Role.Kind != look.RolePrint {
						continue
					}
					if f.Role.Number < last {
						t.Fatalf("%s: print %d after %d", name, f.Role.Number, last)
					}
					last = f.Role.Number
					if r, again := met[last]; again {
						met[last] = r.Union(f.Bounds())
					} else {
						met[last] = f.Bounds()
					}
				}
				for _, pass := range face.Passes {
					for i, print := range pass.Prints {
						b := print.Outline.Bounds()
						want := geometry.Rect{Min: k.At(b.Min), Max: k.At(b.Max)}
						got := met[pass.First+i]
						if !print.Seam && !want.Grow(0.15).Holds(got) {
							t.Errorf("%s, %s: print %d at %v, outline at %v", name, face.Label(), pass.First+i, got, want)
						}
						if !box.Holds(got) || got.Empty() {
							t.Errorf("%s, %s: print %d at %v", name, face.Label(), pass.First+i, got)
						}
					}
				}
				if len(met) != face.Count() {
					t.Errorf("%s, %s: %d of %d prints", name, face.Label(), len(met), face.Count())
				}
			}
		}
	}
}

const cushion = `
[[paint]]
name = "moss"
looks = "#5f7a3a"
[[paint]]
name = "night"
looks = "#102030"
[[block]]
name = "fern"
print = "80 x 80 mm"
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
quantity = 3
%s
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
  %s
`

// inksOf are those of the prints of a view, each once, in the order they are met.
func inksOf(v paper.View) []paper.Ink {
	var all []paper.Ink
	for _, f := range v.Drawing.Fills {
		if f.Role.Kind == look.RolePrint && !slices.Contains(all, f.Ink) {
			all = append(all, f.Ink)
		}
	}
	return all
}

// TestInks: prints are in the colours of their pass, as the job or CSS says they look; swapped in a
// colourway; hatched where neither looks nor print are known.
func TestInks(t *testing.T) {
	moss, night, olive := paper.Ink{R: 0x5f, G: 0x7a, B: 0x3a}, paper.Ink{R: 0x10, G: 0x20, B: 0x30}, paper.Ink{R: 128, G: 128}
	white, black := paper.Grey(255), paper.Ink{}
	way := "[[item.colourway]]\nname = 'evening'\nquantity = 1\nswap = { moss = 'night' }"
	for _, c := range []struct {
		item, pass string
		colouring  int
		want       []paper.Ink
	}{
		{"", "colours = ['moss']", 0, []paper.Ink{moss}},
		{"", "colours = ['olive']", 0, []paper.Ink{olive}},
		{"", "colours = ['moss', 'night']", 0, []paper.Ink{moss, night}},
		{"", "colours = ['moss', 'nobody knows']", 0, []paper.Ink{moss, paper.Grey(110)}},
		{"", "colours = ['nobody knows']", 0, []paper.Ink{white, black}},
		{"", "", 0, []paper.Ink{white, black}},
		{"", "colours-in-turn = [['moss'], ['night']]", 0, []paper.Ink{moss, night}},
		{way, "colours = ['moss']", 0, []paper.Ink{moss}},
		{way, "colours = ['moss']", 1, []paper.Ink{night}},
		{way, "dabs = [{ colour = 'olive', middle = '30 mm' }, { colour = 'moss' }]", 1, []paper.Ink{night, olive}},
		{way, "dabs = [{ colour = 'moss', middle = '30 mm' }, { colour = 'olive', corners = '9 mm' }]", 1, []paper.Ink{night, olive}},
	} {
		p := planned(t, fmt.Sprintf(cushion, c.item, c.pass))
		face := p.Items[0].Faces()[0]
		v := look.Flat(p.Job, face, look.Colourings(face)[c.colouring], box)
		if got := inksOf(v); !slices.Equal(got, c.want) {
			t.Errorf("%s, colouring %d: %v, want %v", c.pass, c.colouring, got, c.want)
		}
		if n := len(v.Drawing.Fills); n != face.Count()*len(c.want) && c.colouring == 1 {
			t.Errorf("%s: %d fills for %d prints", c.pass, n, face.Count())
		}
	}
}

// TestUnknownColoursDiffer: colours of which nobody knows how they look are greys apart, and none is
// that of a pass without colours.
func TestUnknownColoursDiffer(t *testing.T) {
	p := planned(t, fmt.Sprintf(cushion, "", "colours-in-turn = [['a'], ['b'], ['c'], ['d']]"))
	met := map[paper.Ink]string{}
	for _, colour := range []string{"", "a", "b", "c", "d"} {
		ink, known := look.Ink(p.Job, colour)
		if other, again := met[ink]; again || known || ink.R != ink.G || ink.G != ink.B {
			t.Errorf("%q is in %v, known %v, as %q", colour, ink, known, other)
		}
		met[ink] = colour
	}
}
