package guide

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
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
		`the pass "a fern that has been given a name much too long…" is long; the papers show the beginning of it`,
	}
	if d := cmp.Diff(want, Warnings(job)); d != "" {
		t.Errorf("(-want +got):\n%s", d)
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
