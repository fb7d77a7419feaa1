package bench_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/bench"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/look"
	"underlay/template/plan"
)

const waysJob = `
title = "Ways"
[[paint]]
name = "moss"
looks = "#5f7a3a"
[[block]]
name = "fern"
print = "60 x 80 mm"
[[block]]
name = "pebble"
shape = "round"
print = "30 mm"
[[item]]
name = "lamp"
shape = "cone"
top = "18 cm"
bottom = "32 cm"
height = "24 cm"
border = "15 mm"
quantity = 6
[[item.colourway]]
name = "evening"
quantity = 2
swap = { moss = "teal", tan = "linen" }
[[item.colourway]]
name = "dusk, the one of many grey mornings that nobody in the reading nook has ever seen"
quantity = 1
swap = { moss = "nobody knows" }
[[item.pass]]
block = "fern"
gap = "1 mm"
dabs = [{ colour = "tan", middle = "30 mm" }, { colour = "moss" }]
[[item.pass]]
block = "pebble"
between = "fern"
over = true
colours = ["berry"]
[[item]]
name = "towel"
size = "48 x 70 cm"
border = "30 mm"
hem = "10 mm"
quantity = 10
faces = ["front", "back"]
%s
[[item.keep-clear]]
name = "loop"
at = "0 x 0 mm"
size = "60 x 60 mm"
face = "back"
[[item.pass]]
block = "fern"
gap = "1 mm"
colours = ["moss", "teal"]
`

// looks returns the pages of the looks of a job, and what they are of.
func looks(t *testing.T, j *job.Job) (all []paper.Page, faces []plan.FacePlan) {
	t.Helper()
	p, err := plan.New(j)
	if err != nil {
		t.Fatal(err)
	}
	for _, ip := range p.Items {
		of := ip.Faces()
		papers := bench.Looks(p, ip)
		if len(papers) != len(of) {
			t.Fatalf("%s: looks of %d faces of %d", ip.Item.Name, len(papers), len(of))
		}
		for i, f := range papers {
			if want := of[i].Titled("look"); f.Name != want || f.Mark == "" {
				t.Errorf("papers called %q, mark %q", f.Name, f.Mark)
			}
			for range f.Pages {
				faces = append(faces, of[i])
			}
			all = append(all, f.Pages...)
		}
	}
	return all, faces
}

// TestLooksAreReadable: pages of looks keep the margin, no text on text nor under a line; each says
// whose look it is, and beside every paint's name is its swatch, in the very colour of its prints.
func TestLooksAreReadable(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	ways := ""
	for i := range 7 {
		ways += fmt.Sprintf("[[item.colourway]]\nname = 'way %d'\nquantity = 1\nswap = { moss = 'navy' }\n", i+1)
	}
	j, err := jobfile.Read("ways.toml", fmt.Appendf(nil, waysJob, ways))
	if err != nil {
		t.Fatal(err)
	}
	jobs["ways"] = j
	for name, j := range jobs {
		pages, faces := looks(t, j)
		for i, page := range readback.Drawn(t, pages) {
			at := fmt.Sprintf("%s, page %d", name, i+1)
			readback.CheckMargin(t, at, page, j.Paper.Margin)
			readback.CheckTexts(t, at, page)
			readback.CheckLinesClearOfText(t, at, page)
			if text := page.Text(); !strings.HasPrefix(strings.ToLower(text), strings.ToLower(start(faces[i].Item.Item.Name))) {
				t.Errorf("%s begins with %.40q", at, text)
			}
			for _, c := range look.Colourings(faces[i]) {
				for _, s := range look.Swatches(j, faces[i], c) {
					if i == 0 || faces[i].Item != faces[i-1].Item {
						checkSwatch(t, at, page, s)
					}
				}
			}
		}
	}
}

// start is how a name begins, where it may be wrapped or shortened.
func start(name string) string { return name[:min(len(name), 12)] }

// checkSwatch looks for a name with its paint to its left.
func checkSwatch(t *testing.T, at string, page *readback.Page, s look.Swatch) {
	t.Helper()
	for _, w := range page.Texts() {
		if !strings.HasPrefix(w.Text, start(s.Name)) || !strings.HasPrefix(s.Name, w.Text) && !strings.HasSuffix(w.Text, "…") {
			continue // neither the name, nor its first row
		}
		for _, p := range page.Paths() {
			b := p.Lines.Bounds()
			beside := b.Max.X < w.Box.Min.X && w.Box.Min.X-b.Max.X < 4 && b.Min.Y < w.Box.Min.Y && b.Max.Y > w.Box.Max.Y
			ink := paper.Ink{R: uint8(p.Fill.R), G: uint8(p.Fill.G), B: uint8(p.Fill.B)}
			if p.Filled && beside && (s.Hatched() || ink == s.Ink) {
				return
			}
		}
	}
	t.Errorf("%s: no swatch of %v beside its name %q", at, s.Ink, s.Name)
}

var drawn = regexp.MustCompile(`1 : ([0-9.]+)`)

// TestLooksSayHowLarge: a cloth is drawn as many times smaller as its page says; a shade that stands
// too, straight from its diameters and height.
func TestLooksSayHowLarge(t *testing.T) {
	for name, c := range map[string]struct {
		job   string
		sizes []geometry.Size
	}{
		"reading-nook.toml": {sizes: []geometry.Size{{W: 500, H: 500}}},
		"napkins.toml":      {sizes: []geometry.Size{{W: 640, H: 860}}},
		"long-curtain.toml": {sizes: []geometry.Size{{W: 600, H: 3000}}},
		"lampshades.toml":   {sizes: []geometry.Size{{W: 320, H: 240}, {W: 880.59, H: 366.54}}},
	} {
		pages, _ := looks(t, sample.Examples(t)[name])
		page := readback.Drawn(t, pages)[0]
		said := drawn.FindAllStringSubmatch(page.Text(), -1)
		if len(said) != len(c.sizes) {
			t.Fatalf("%s says %q", name, said)
		}
		for i, size := range c.sizes {
			ratio, err := strconv.ParseFloat(said[i][1], 64)
			if err != nil {
				t.Fatal(err)
			}
			want := geometry.Size{W: size.W / geometry.Length(ratio), H: size.H / geometry.Length(ratio)}
			found := false
			for _, p := range page.Paths() {
				b := p.Lines.Bounds().Size()
				found = found || p.Stroked && (b.W-want.W).Abs() < 0.05 && (b.H-want.H).Abs() < 0.05
			}
			if !found {
				t.Errorf("%s says 1 : %g and has no edge of %.2f x %.2f mm", name, ratio, float64(want.W), float64(want.H))
			}
			if want.W > 182 || want.H > 255 {
				t.Errorf("%s: %.1f x %.1f mm is larger than the page", name, float64(want.W), float64(want.H))
			}
		}
	}
}

// TestLooksOfColourings: each way of colouring an item is shown once with its name and how many
// pieces are so, on as many pages as it takes; a face that differs has pages of its own.
func TestLooksOfColourings(t *testing.T) {
	j, err := jobfile.Read("ways.toml", fmt.Appendf(nil, waysJob, "[[item.colourway]]\nname = 'seaside'\nquantity = 4\nface = 'back'\nswap = { moss = 'navy' }\n"))
	if err != nil {
		t.Fatal(err)
	}
	pages, _ := looks(t, j)
	var texts []string
	for _, p := range readback.Drawn(t, pages) {
		texts = append(texts, strings.Join(strings.Fields(p.Text()), " "))
	}
	if len(texts) != 3 {
		t.Fatalf("%d pages", len(texts))
	}
	for page, says := range [][]string{
		{"Lamp", "As it stands, from the front, 1 : ", "Laid flat, 1 : ", "name them: 3 pieces", "Evening (teal for moss, linen for tan): 2 pieces", "Dusk, the one of many grey mornings", "nobody knows",
			"cloth is drawn grey", "How \"nobody knows\" looks is not known, and grey stands for it", "Hatched"},
		{"Towel, front", "name them: 10 pieces", "Dashed: the hem", "one above the other"},
		{"Towel, back", "name them: 6 pieces", "Back in seaside (navy for moss): 4 pieces", "Pale grey: kept clear, loop"},
	} {
		for _, want := range says {
			if !strings.Contains(texts[page], want) {
				t.Errorf("page %d does not say %q: %s", page+1, want, texts[page])
			}
		}
	}
	for _, not := range []string{"seaside", "loop"} {
		if strings.Contains(texts[1], not) {
			t.Errorf("the front says %q: %s", not, texts[1])
		}
	}
}
