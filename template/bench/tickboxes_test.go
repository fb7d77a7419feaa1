package bench

import (
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
)

// TestTickBoxesByColourway: a box for each piece, under the name of its colours; the back of some in
// others again, where a guide serves front and back; and of very many pieces fewer boxes, on the page.
func TestTickBoxesByColourway(t *testing.T) {
	const head = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
	const pass = "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss', 'ochre']\n"
	way := func(name, more string) string {
		return "[[item.colourway]]\nname = '" + name + "'\nswap = { moss = 'teal' }\n" + more
	}
	for name, c := range map[string]struct {
		item  string
		boxes map[string]int // under a caption that begins so
	}{
		"none":     {"quantity = 7\n" + pass, map[string]int{"Tick each piece": 7}},
		"evening":  {"quantity = 7\n" + way("evening", "quantity = 3\n") + pass, map[string]int{"Colours as the passes": 4, "Evening (teal for moss)": 3}},
		"all":      {"quantity = 3\n" + way("evening", "quantity = 3\n") + pass, map[string]int{"Evening (teal for moss)": 3}},
		"of faces": {"faces = ['front', 'back']\nquantity = 6\n" + way("evening", "quantity = 2\n") + way("night", "face = 'back'\n"+"quantity = 1\n") + pass, map[string]int{"Front in colours": 4, "Back in colours": 3, "Evening (": 2, "Back in night": 1}},
		"many":     {"quantity = 7000\n" + way("evening", "quantity = 3000\n") + pass, map[string]int{"Colours as the passes": 40, "Evening (teal for moss)": 30}},
	} {
		j := readJob(t, head+c.item)
		p := workedOut(t, j)
		face := p.Items[0].Faces()[0]
		page, _ := newCard(bench{j, face, newFlow(j)})
		drawing := page.Views[0].Drawing
		got := map[string]int{}
		for _, l := range drawing.Labels {
			for caption := range c.boxes {
				if !strings.HasPrefix(l.Text, caption) {
					continue
				}
				// The boxes below this caption and above the next in bold.
				next := geometry.Length(1e9)
				for _, m := range drawing.Labels {
					if m.Bold && m.At.X >= l.At.X-1 && m.At.Y > l.At.Y+6 && m.At.Y < next {
						next = m.At.Y
					}
				}
				for _, s := range drawing.Strokes {
					if b := s.Bounds(); s.Role.Kind == "box" && b.Min.Y > l.At.Y && b.Min.Y < next {
						got[caption]++
					}
					if s.Role.Kind == "box" && !drawing.Bounds.Holds(s.Bounds()) {
						t.Errorf("%s: a box at %v is off the page", name, s.Bounds())
					}
				}
			}
		}
		for caption, n := range c.boxes {
			if name == "many" {
				// So many that each box is for several; all of them in the end.
				if got[caption] < 3 || got[caption] > n {
					t.Errorf("%s: %d boxes under %q", name, got[caption], caption)
				}
			} else if got[caption] != n {
				t.Errorf("%s: %d boxes under %q, want %d", name, got[caption], caption, n)
			}
		}
		readback.CheckTexts(t, name, readback.Drawn(t, Sheets(p, p.Items[0])[0].Pages)[0])
	}
}
