package side

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

var near = cmpopts.EquateApprox(0, 1e-6)

// bagged is a bag with a pocket through both faces, a label on the back alone, and two placed prints.
const bagged = `
title = "Book bag"
[[block]]
name = "acorn"
print = "40 x 20 mm"
[[item]]
name = "book bag"
size = "380 x 420 mm"
border = "15 mm"
faces = ["front", "back"]
[[item.keep-clear]]
name = "pocket"
at = "30 x 300 mm"
size = "100 x 80 mm"
[[item.keep-clear]]
name = "label"
face = "back"
at = "200 x 40 mm"
size = "50 x 30 mm"
[[item.pass]]
block = "acorn"
repeat = "placed"
at = ["100 x 80 mm", "20 x 10 cm turned 90"]
colours = ["teal"]
[[item.colourway]]
name = "evening"
quantity = 1
swap = { teal = "navy" }
`

// TestDragged: zones and placed prints are where they are seen on the face shown, and say where that is
// written. Worked by hand.
func TestDragged(t *testing.T) {
	pocket := Zone{Path: "item.0.keep-clear.0", Name: "pocket", Box: Box{30, 300, 100, 80}, At: Spot{30, 300}}
	behind := pocket
	behind.X, behind.Mirrored = 380-30-100, true
	label := Zone{Path: "item.0.keep-clear.1", Name: "label", Box: Box{200, 40, 50, 30}, At: Spot{200, 40}}
	placed := []Placed{
		{Path: "item.0.pass.0.at.0", At: Spot{100, 80}, Box: Box{80, 70, 40, 20}},
		{Path: "item.0.pass.0.at.1", At: Spot{200, 100}, Turn: 90, Box: Box{190, 80, 20, 40}},
	}
	for face, want := range [][]Zone{{pocket}, {behind, label}} {
		st := New().Look(bagged, Picked{Face: face}, 400)
		if !st.Good || len(st.Faces) != 2 {
			t.Fatalf("%v, faces %q", st.Problems, st.Faces)
		}
		if d := cmp.Diff(want, st.Zones, near); d != "" {
			t.Errorf("face %d: %s", face, d)
		}
		if d := cmp.Diff(placed, st.Placed, near); d != "" {
			t.Errorf("face %d: %s", face, d)
		}
	}
	// Moved as the page moves them.
	s := New()
	text, err := s.Set(bagged, "item.0.pass.0.at.1", "250 x 100 mm turned 30")
	if err == nil {
		text, err = s.Set(text, "item.0.keep-clear.0.at", "40 x 310 mm")
	}
	st := s.Look(text, Picked{}, 400)
	if err != nil || !st.Good || st.Placed[1].At != (Spot{250, 100}) || math.Abs(st.Placed[1].Turn-30) > 1e-9 || st.Zones[0].At != (Spot{40, 310}) {
		t.Errorf("%v %v %+v", err, st.Problems, st.Placed)
	}
}

// TestColours: in a colourway the picture has its colours, and says so in words; the accent is of the
// colours that passes name.
func TestColours(t *testing.T) {
	for i, want := range []struct{ ink, words string }{{"#008080", "In teal."}, {"#000080", "In navy."}} {
		st := New().Look(strings.Replace(bagged, "faces =", "quantity = 2\nfaces =", 1), Picked{Colourway: i}, 400)
		if d := cmp.Diff([]string{"as the passes name them", "evening"}, st.Colourways); d != "" {
			t.Fatal(d)
		}
		if !strings.Contains(st.Picture.SVG, want.ink) || !strings.Contains(st.Words, want.words) || st.Accent != "#008080" {
			t.Errorf("colourway %d: %s, accent %s, %v", i, st.Words, st.Accent, strings.Contains(st.Picture.SVG, want.ink))
		}
		if d := cmp.Diff([]Colour{{Name: "teal", Looks: "#008080", Known: true}, {Name: "navy", Looks: "#000080", Known: true}}, st.Colours); d != "" {
			t.Error(d)
		}
	}
}

// TestBox: the box says what the whole picture shows. Prints stand in the order picture where the plan
// has them: those of the cushion at 250 mm less or more half a pitch of 91 mm, and one and a half.
func TestBox(t *testing.T) {
	text, _ := Start("cushion")
	st := New().Look(text, Picked{}, 700)
	view := regexp.MustCompile(`viewBox="0 0 (\S+) (\S+)"`).FindStringSubmatch(st.Order.SVG)
	uses := regexp.MustCompile(`<use href="#order-\d+" x="(\S+)" y="(\S+)" data-number="(\d+)"`).FindAllStringSubmatch(st.Order.SVG, -1)
	if view == nil || len(uses) != 16 {
		t.Fatalf("%d uses, %v\n%.600s", len(uses), view, st.Order.SVG)
	}
	number := func(s string) float64 { f, _ := strconv.ParseFloat(s, 64); return f }
	for _, u := range uses {
		x := st.Order.Box.X + number(u[1])/number(view[1])*st.Order.Box.W
		y := st.Order.Box.Y + number(u[2])/number(view[2])*st.Order.Box.H
		for _, at := range []float64{x, y} {
			off := math.Inf(1)
			for _, want := range []float64{113.5, 204.5, 295.5, 386.5} {
				off = min(off, math.Abs(at-want))
			}
			if off > 0.01 {
				t.Errorf("print %s is at %.3f, %.3f", u[3], x, y)
			}
		}
	}
	if w := number(view[1]) / 25.4 * 96; math.Abs(w-700) > 0.5 {
		t.Errorf("the picture is %v pixels wide, 700 were asked for", w)
	}
}

// TestStands: a shade is shown laid flat and as it stands, anything else flat alone.
func TestStands(t *testing.T) {
	for name, stands := range map[string]bool{"shade": true, "bag": false} {
		text, _ := Start(name)
		if st := New().Look(text, Picked{}, 400); (st.Stands != nil) != stands || st.Picture == nil {
			t.Errorf("%s: %v", name, st.Stands)
		}
	}
}

// TestOnly draws no more than was asked for.
func TestOnly(t *testing.T) {
	text, _ := Start("shade")
	for only, want := range map[string][3]bool{"": {true, true, true}, "look": {true, true, false}, "order": {false, false, true}} {
		st := New().Look(text, Picked{Only: only}, 400)
		if got := [3]bool{st.Picture != nil, st.Stands != nil, st.Order != nil}; got != want {
			t.Errorf("%q: %v", only, got)
		}
	}
}

// TestSaveAs: a job is saved under the name of its file, else under its title.
func TestSaveAs(t *testing.T) {
	text, _ := Start("cushion")
	s := New()
	if st := s.Look(text, Picked{}, 400); st.File != "floor-cushions" || st.Title != "Floor cushions" {
		t.Errorf("%q %q", st.File, st.Title)
	}
	s.Name("my job.toml")
	if st := s.Look(text, Picked{}, 400); st.File != "my job" {
		t.Errorf("%q", st.File)
	}
	text = strings.Replace(text, "title = \"Floor cushions\"", "", 1)
	for _, name := range []string{"one", "two"} { // without a title of its own a job has that of its file
		s.Name(name)
		if st := s.Look(text, Picked{}, 400); st.Title != name {
			t.Errorf("%q is called %q", name, st.Title)
		}
	}
	for title, want := range map[string]string{"": "untitled", "Ecke № 1, «Лес»": "ecke-1", "../../etc": "etc", strings.Repeat("long ", 99): ""} {
		got := New().saveAs(title)
		if want != "" && got != want || len(got) > 60 || strings.ContainsAny(got, `/\. `) {
			t.Errorf("%q is saved as %q", title, got)
		}
	}
}

// TestShelf: blocks and items without a pass are told what each gives on each.
func TestShelf(t *testing.T) {
	text, _, _ := strings.Cut(bagged, "[[item.pass]]")
	st := New().Look(text, Picked{}, 400)
	if !st.Good || !strings.Contains(st.Shelf, "acorn") || st.Picture != nil {
		t.Errorf("%v %q", st.Problems, st.Shelf)
	}
	if p := New().Papers(text, 0, nil); len(p.Problems) != 1 || !strings.Contains(p.Problems[0].Text, "no pass") {
		t.Errorf("%v", p.Problems)
	}
}

// TestOverlaps: passes that lie on each other are told with what settles it, and each way does.
func TestOverlaps(t *testing.T) {
	ways := 0
	for _, second := range []string{
		"block = \"fern\"\ngap = \"1 mm\"", "block = \"pebble\"\ngap = \"70 mm\"\norder = \"rows\"", "block = \"acorn\"\nrepeat = \"brick\"\nlap = \"0.5 mm\"",
		"block = \"pebble\"\nbetween = \"fern\"", "block = \"acorn\"\nrepeat = \"one\"",
	} {
		text, _ := Start("cushion")
		text += "\n[[block]]\nname = \"pebble\"\nshape = \"round\"\nprint = \"40 mm\"\n\n[[block]]\nname = \"acorn\"\nprint = \"3 x 4 cm\"\n"
		text = strings.Replace(text, "colours = [\"moss\"]\n", "colours = [\"moss\"]\n[[item.pass]]\nname = \"again\"\n"+second+"\n", 1)
		s := New()
		st := s.Look(text, Picked{Only: "none"}, 400)
		if len(st.Overlaps) != 1 || st.Overlaps[0].Path != "item.0.pass.1" || !strings.Contains(st.Overlaps[0].Text, "of again lie") {
			t.Errorf("%s: %v %+v", second, st.Problems, st.Overlaps)
			continue
		}
		for _, w := range st.Overlaps[0].Ways {
			ways++
			out, err := s.Apply(text, w.Edits)
			if after := s.Look(out, Picked{Only: "none"}, 400); err != nil || !after.Good || len(after.Overlaps) > 0 {
				t.Errorf("%s: %s: %v %v %v\n%s", second, w.Text, err, after.Problems, after.Overlaps, out)
			}
		}
	}
	if ways < 10 {
		t.Errorf("%d ways were tried", ways)
	}
}
