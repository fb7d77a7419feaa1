package template

import (
	"bytes"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper/pdf"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

const tagJob = `
[[block]]
name = "fern"
print = "90 x 80 mm"
wood = "98 x 90 mm"
wood-offset = "1 x 2 mm"
[[block]]
name = "wave"
print = "300 x 250 mm"
[[item]]
name = "floor cushion"
size = "80 x 80 cm"
border = "25 mm"
  [[item.pass]]
  block = "fern"
  gap-across = "6 mm"
  gap-down = "4 mm"
  colours = ["moss"]
  [[item.pass]]
  block = "wave"
  gap = "1 mm"
`

// TestTags measures tags and gap strips with pdfium, on a true printer and on one that needs
// a correction: what comes out of the printer is within 0.01 mm of the block.
func TestTags(t *testing.T) {
	for _, printer := range []job.Printer{{}, {Across: 179.2, Down: 251}} {
		job := readJob(t, tagJob)
		job.Printer = printer
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		doc, _, err := Document(plan, []string{"tags"})
		if err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		if err := pdf.Write(&file, doc); err != nil {
			t.Fatal(err)
		}
		scale := printer.Scale().OnPage(false)
		var sizes []geometry.Size // as they come out
		words := map[string]bool{}
		for _, page := range pdfread.Open(t, file.Bytes()).Pages() {
			for _, p := range page.Paths() {
				b := p.Lines.Bounds()
				sizes = append(sizes, geometry.Size{W: b.W() / geometry.Length(scale.Across), H: b.H() / geometry.Length(scale.Down)})
			}
			for _, text := range page.Texts() {
				words[text.Text] = true
			}
		}
		for _, want := range []struct {
			what string
			size geometry.Size
		}{
			{"the fern's wood", geometry.Size{W: 98, H: 90}},
			{"the fern's face", geometry.Size{W: 90, H: 80}},
			{"the strip between columns", geometry.Size{W: 80, H: 6}},
			{"the strip between rows", geometry.Size{W: 90, H: 4}},
			{"the cross tag of a block larger than a sheet", geometry.Size{W: 90, H: 90}},
		} {
			found := false
			for _, s := range sizes {
				found = found || math.Abs(float64(s.W-want.size.W)) < 0.01 && math.Abs(float64(s.H-want.size.H)) < 0.01
			}
			if !found {
				t.Errorf("printer %v: %s, %v, is not on the tags", printer, want.what, want.size)
			}
		}
		for _, w := range []string{"fern", "wave", "floor cushion, moss"} {
			if !words[w] {
				t.Errorf("printer %v: the tags do not say %q", printer, w)
			}
		}
	}
}
