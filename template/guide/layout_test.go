package guide

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/svg"
	"underlay/template/internal/sample"
	"underlay/template/plan"
)

func layoutOf(t *testing.T, p *plan.Plan) *paper.Drawing {
	t.Helper()
	d, err := Layout(p)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestLayoutOfOneGuideIsTheGuide(t *testing.T) {
	plan := planOf(t, fmt.Sprintf(fernOn, "50 x 50 cm"))
	d := layoutOf(t, plan)
	if d := cmp.Diff(Draw(plan.Job, plan.Items[0].Laid()[0]), d); d != "" {
		t.Error(d)
	}
	if want := (geometry.Rect{Min: geometry.Pt(-25, -25), Max: geometry.Pt(525, 525)}); d.Bounds != want {
		t.Errorf("takes up %v, want %v", d.Bounds, want)
	}
}

// nookOfThree has a cushion printed alike on both faces, a bag printed otherwise on each, and
// nothing on its inside.
const nookOfThree = "[paper]\nreach = '30 mm'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n" +
	"[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\nfaces = ['front', 'back']\n" +
	"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n" +
	"[[item]]\nname = 'book bag'\nsize = '120 x 420 mm'\nborder = '10 mm'\nfaces = ['front', 'back', 'inside']\n" +
	"[[item.pass]]\nname = 'front ferns'\nblock = 'fern'\nface = 'front'\ngap = '1 mm'\n" +
	"[[item.pass]]\nname = 'back ferns'\nblock = 'fern'\nface = 'back'\ngap = '20 mm'\n"

func TestLayoutOfSeveralGuides(t *testing.T) {
	plan := planOf(t, nookOfThree)
	d := layoutOf(t, plan)
	var names []string
	heights := map[string]geometry.Length{} // of the line each name stands on
	for _, l := range d.Labels {
		if l.Height == 5 && !l.Bold {
			names = append(names, l.Text)
			heights[l.Text] = l.Box().Max.Y
		}
		if !d.Bounds.Holds(l.Extent()) {
			t.Errorf("%q leaves the drawing", l.Text)
		}
	}
	// The bag is too narrow for a longer name to be cut: 120 + 2 x 30 mm.
	want := []string{"floor cushion, front and back", "book bag, front", "book bag, back"}
	if d := cmp.Diff(want, names); d != "" {
		t.Error(d)
	}
	marks := 0
	down := geometry.Length(-30) // the top of the guide
	for i, face := range append(plan.Items[0].Laid(), plan.Items[1].Laid()...) {
		g := Draw(plan.Job, face)
		step := geometry.Pt(0, down-g.Bounds.Min.Y)
		if clear := down - heights[names[i]]; math.Abs(float64(clear-5)) > 1e-9 {
			t.Errorf("%s stands %v mm above its guide", names[i], clear)
		}
		for k, s := range g.Strokes {
			moved := s.Path().Map(func(p geometry.Point) geometry.Point { return p.Add(step) })
			exact := cmp.Comparer(func(a, b geometry.Length) bool { return math.Abs(float64(a-b)) < 1e-9 })
			got := d.Strokes[marks+k]
			if d := cmp.Diff(moved, got.Path(), exact); d != "" || got.Pen != s.Pen || got.Role != s.Role {
				t.Fatalf("%s, line %d: %s", names[i], k, d)
			}
		}
		marks += len(g.Strokes)
		down += g.Bounds.H() + 20
	}
	if marks != len(d.Strokes) {
		t.Errorf("%d lines, want %d", len(d.Strokes), marks)
	}
	if bottom := down - 20; math.Abs(float64(d.Bounds.Max.Y-bottom)) > 1e-9 || d.Bounds.Min.X != -30 || d.Bounds.Max.X != 530 {
		t.Errorf("takes up %v, want down to %v", d.Bounds, bottom)
	}
	var out bytes.Buffer
	if err := svg.Write(&out, plan.Job.Title, d, svg.Options{Face: true}); err != nil {
		t.Fatal(err)
	}
	for _, l := range d.Labels {
		if !strings.Contains(out.String(), ">"+l.Text+"</text>") {
			t.Fatalf("%q is not in the picture", l.Text)
		}
	}
}

func TestLayoutOfLongNamesIsNoWiderThanItsGuides(t *testing.T) {
	plan, err := plan.New(sample.Hard(t)["long names"])
	if err != nil {
		t.Fatal(err)
	}
	plan.Items = append(plan.Items, plan.Items[0])
	if d := layoutOf(t, plan); d.Bounds.W() != 350 {
		t.Errorf("%v mm wide, and the guides are 350", d.Bounds.W())
	}
}

func TestLayoutNeedsAPass(t *testing.T) {
	p := planOf(t, fmt.Sprintf(fernOn, "50 x 50 cm")+"[[item]]\nname = 'stool top'\nsize = '30 x 30 cm'\nborder = '2 cm'\n")
	_, err := Layout(p)
	if want := p.Job.NothingToDraw(p.Job.Items[1]); err == nil || err.Error() != want.Error() || !strings.Contains(err.Error(), `"stool top" has no pass`) {
		t.Errorf("%v, want %v", err, want)
	}
}
