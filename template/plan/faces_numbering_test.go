package plan

import (
	"testing"
	"underlay/template/jobfile"
)

// TestNumbersByFace: each face counts its own prints, and a pass on several faces has the
// number it has on the first of them.
func TestNumbersByFace(t *testing.T) {
	job, err := jobfile.Read("bag.toml", []byte(`
[[block]]
name = "fern"
print = "90 x 90 mm"
[[item]]
name = "book bag"
size = "20 x 20 cm"
border = "5 mm"
faces = ["front", "back"]
  [[item.pass]]
  name = "a"
  block = "fern"
  gap = "1 mm"
  face = "front"
  [[item.pass]]
  name = "b"
  block = "fern"
  gap = "1 mm"
  face = "back"
  [[item.pass]]
  name = "c"
  block = "fern"
  on = "b"
  face = "back"
`))
	if err != nil {
		t.Fatal(err)
	}
	plan, err := New(job)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []int{1, 1, 5} {
		p := plan.Items[0].Passes[i]
		if p.First != want || p.Prints[0].Number != want {
			t.Errorf("pass %s begins with %d (print %d), want %d", p.Pass.Name, p.First, p.Prints[0].Number, want)
		}
	}
}
