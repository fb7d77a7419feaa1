package guide

import (
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
