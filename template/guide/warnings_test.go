package guide

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/template/internal/readback"
)

// TestWarnings: whatever will not come out on the papers as it is written is told of, once.
func TestWarnings(t *testing.T) {
	job := readJob(t, `
title = "Nook 🌿"
[[block]]
name = "fern"
print = "90 x 90 mm"
[[item]]
name = "floor\ncushion"
size = "50 x 50 cm"
border = "25 mm"
faces = ["Подушка"]
  [[item.pass]]
  name = "a fern that has been given a name much too long to be shown anywhere on a sheet of paper, however large"
  block = "fern"
  gap = "1 mm"
  colours = ["moss"]
`)
	want := []string{
		`the title "Nook □" has letters the papers cannot show; each is drawn as □`,
		`the item "floor cushion" has a line break or a tab in it; the papers show a space`,
		`the pass "a fern that has been given a name much too long…" is long; where it has not room the papers show the beginning of it`,
	}
	if d := cmp.Diff(want, Warnings(job)); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestZoneNames: a long name of a zone is broken into rows; one is told of only where even so the
// zone has not room for it.
func TestZoneNames(t *testing.T) {
	const name = "the pocket that is sewn on when all the printing is done and the paint has been set with an iron"
	for size, told := range map[string]bool{"200 x 150 mm": false, "60 x 60 mm": false, "16 x 12 mm": true} {
		j := readJob(t, "[paper]\nsize = 'one sheet'\n[[block]]\nname = 'fern'\nprint = '40 x 40 mm'\n[[item]]\nname = 'bag'\nsize = '40 x 40 cm'\nborder = '15 mm'\n"+
			"[[item.keep-clear]]\nname = '"+name+"'\nat = '100 x 100 mm'\nsize = '"+size+"'\n[[item.pass]]\nblock = 'fern'\ngap = '2 mm'\n")
		if got := len(Warnings(j)) > 0; got != told {
			t.Errorf("a zone of %s: %q", size, Warnings(j))
		}
		page := readback.Drawn(t, facesOf(t, j)[0].Pages)[0]
		var shown []string
		for _, w := range page.Texts() {
			shown = append(shown, w.Text)
		}
		if whole := strings.Contains(strings.Join(shown, " "), name); !whole && !told {
			t.Errorf("a zone of %s: its name is not shown whole, and not told of: %q", size, shown)
		}
	}
}

// TestPassNamesByTicks: by ticks names of passes are short; one that is cut there is told of.
func TestPassNamesByTicks(t *testing.T) {
	const name = "little round pebbles from the beach"
	text := "[[block]]\nname = 'fern'\nprint = '40 x 40 mm'\n[[item]]\nname = 'bag'\nsize = '40 x 40 cm'\nborder = '15 mm'\n" +
		"[[item.pass]]\nname = '" + name + "'\nblock = 'fern'\ngap = '2 mm'\n"
	second := "[[item.pass]]\nname = 'seeds'\nblock = 'fern'\non = '" + name + "'\n"
	for text, told := range map[string]int{text: 0, text + second: 1, apart(text + second): 0} {
		if got := Warnings(readJob(t, text)); len(got) != told {
			t.Errorf("%s\n%q", text, got)
		}
	}
}

// TestShortReach: what a short reach leaves out is told, and the advice does what it says.
func TestShortReach(t *testing.T) {
	const text = "[paper]\nreach = %q\n[[block]]\nname = 'fern'\nprint = '40 x 40 mm'\n" +
		"[[item]]\nname = 'napkin'\nsize = '30 x 30 cm'\nborder = '15 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '2 mm'\n"
	for reach, want := range map[string]string{
		"6 mm":  `a reach of 6 mm has no room for the ticks outside the cloth; write reach = "25 mm" to have them`,
		"7 mm":  `a reach of 7 mm has no room for all the names by the ticks; write reach = "25 mm" to have them`,
		"12 mm": `a reach of 12 mm has no room for all the names by the ticks; write reach = "25 mm" to have them`,
		"15 mm": "",
		"25 mm": "",
	} {
		p := planOf(t, fmt.Sprintf(text, reach))
		if got := strings.Join(Warnings(p.Job), "\n"); got != want {
			t.Errorf("%s: %q, want %q", reach, got, want)
		}
		g := drawIn(p.Job, p.Items[0].Faces()[0], bounds(p.Items[0], p.Job))
		// The name of a centre line between two ticks is longer than a reach of 15 mm.
		if left := slices.DeleteFunc(g.unnamed, func(s string) bool { return s == "centre" }); want == "" && len(left) > 0 {
			t.Errorf("%s: without a place are %v", reach, g.unnamed)
		}
		ticks := 0
		for _, s := range g.Strokes {
			if s.Role.Kind == RoleTick {
				ticks++
			}
		}
		if (ticks == 0) != (reach == "6 mm") {
			t.Errorf("%s: %d ticks", reach, ticks)
		}
	}
}
