package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/words"

	"github.com/google/go-cmp/cmp"
)

// TestNumbers writes numbers that a computer's arithmetic leaves a little off.
func TestNumbers(t *testing.T) {
	for want, l := range map[string]geometry.Length{
		"454": 454.00000000000006, "0": -1e-9, "-0.5": -0.5, "68.5": 68.49999999999999, "2000": 2000,
		"0.333333": geometry.Length(1) / 3, "50000000": 5e7,
	} {
		got, err := json.Marshal(length(l))
		if err != nil || string(got) != want {
			t.Errorf("%v: %s, %v; want %s", float64(l), got, err, want)
		}
	}
}

// jsonJobs are job files whose plans have everything that JSON can hold: the examples, the files
// to begin with, a pass on another, passes that lie on each other, and faces that differ.
func jsonJobs(t *testing.T) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "examples", "*.toml"))
	if err != nil || len(files) < 2 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	jobs := map[string][]byte{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(file)] = data
	}
	for _, shape := range words.Texts(job.Shapes()) {
		text, err := jobfile.StartFile(shape)
		if err != nil {
			t.Fatal(err)
		}
		jobs["start "+shape] = []byte(text)
	}
	jobs["on"] = []byte("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = '<b>&'\nsize = '50 x 50 cm'\nborder = '25 mm'\n" +
		"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n[[item.pass]]\nname = 'fill'\nblock = 'fern'\non = 'fern'\n")
	jobs["on each other"] = append(jobs["on"], "[[item.pass]]\nname = 'third'\nblock = 'fern'\ngap = '30 mm'\n"...)
	jobs["faces that differ"] = []byte("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'bag'\nsize = '50 x 50 cm'\nborder = ['5 mm', '5 mm', '5 mm', '25 mm']\n" +
		"faces = ['front', 'back']\n[[item.colourway]]\nname = 'evening'\nface = 'back'\nswap = { moss = 'teal' }\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss']\n[[item.pass]]\nname = 'again'\nblock = 'fern'\ngap = '1 mm'\n")
	return jobs
}

// shelfOf is the shelf of a job: its blocks and items, no pass.
func shelfOf(t *testing.T, j job.Job) *plan.Shelf {
	t.Helper()
	var items []*job.Item
	for _, it := range j.Items {
		bare := *it
		bare.Passes = nil
		items = append(items, &bare)
	}
	j.Items = items
	shelf, err := plan.NewShelf(&j, plan.ShelfGap)
	if err != nil {
		t.Fatal(err)
	}
	return shelf
}

// again writes a value as JSON, reads that into the same type, which must know every key, and
// writes it once more: nothing may be lost on the way.
func again[T any](t *testing.T, v T) []byte {
	t.Helper()
	first, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var back T
	d := json.NewDecoder(bytes.NewReader(first))
	d.DisallowUnknownFields()
	if err := d.Decode(&back); err != nil {
		t.Fatal(err)
	}
	second, err := json.Marshal(back)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(first), string(second)); d != "" {
		t.Error(d)
	}
	return first
}

// TestJSONForm reads everything that is written as JSON back, and holds its keys to those that
// the form of each has.
func TestJSONForm(t *testing.T) {
	seen := map[string][]string{}
	note := func(form string, data []byte) {
		var v any
		if err := json.Unmarshal(data, &v); err != nil {
			t.Fatal(err)
		}
		seen[form] = append(seen[form], keysOf("", v)...)
	}
	for name, data := range jsonJobs(t) {
		t.Run(strings.ReplaceAll(name, " ", "-"), func(t *testing.T) {
			job, err := jobfile.ReadWith(name, data, picturesBeside("../../examples/nook.toml"))
			if err != nil {
				t.Fatal(err)
			}
			plan, err := plan.New(job)
			if err != nil {
				t.Fatal(err)
			}
			_, sheets, err := template.Document(plan, []string{"guide"})
			if err != nil {
				t.Fatal(err)
			}
			note("plan", again(t, planJSON(plan, threeByTwo())))
			note("shelf", again(t, shelfJSON(shelfOf(t, *job))))
			note("drawn", again(t, sheetsJSON("guide.pdf", len(sheets), sheets)))
		})
	}
	edges := func(at string) string {
		return strings.NewReplacer("@", at).Replace("@ @.top @.right @.bottom @.left")
	}
	pair := func(at string) string { return strings.NewReplacer("@", at).Replace("@ @.across @.down") }
	const pass = "items[].passes[]"
	for form, want := range map[string][]string{
		"plan": {
			"title items items[].name items[].shape items[].width_mm items[].height_mm items[].quantity items[].passes",
			strings.NewReplacer("@", pass).Replace("@.name @.block @.repeat @.count @.columns @.rows @.serves_mm @.serves_mm.width @.serves_mm.height"),
			pair(pass + ".centre"), pair(pass + ".gap_mm"), pair(pass + ".pitch_mm"), edges(pass + ".border_mm"), pair(pass + ".tape_mm"),
			strings.NewReplacer("@", pass+".choices").Replace("@ @[].across @[].down @[].count @[].columns @[].rows @[].taken"), edges(pass + ".choices[].border_mm"),
			strings.NewReplacer("@", pass+".near_misses").Replace("@ @[].axis @[].cloth_mm @[].border_mm @[].gap_mm @[].block_mm"),
			strings.NewReplacer("@", pass+".wanted").Replace("@ @.columns @.rows @.cloth_mm @.cloth_mm.width @.cloth_mm.height @.block_mm @.block_mm.width @.block_mm.height"), pair(pass + ".wanted.gap_mm"),
			strings.NewReplacer("@", pass).Replace("@.blocks"),
			strings.NewReplacer("@", pass+".prints").Replace("@ @[].number @[].block @[].colours @[].x_mm @[].y_mm @[].turn_deg @[].touch_down @[].touch_down.x_mm @[].touch_down.y_mm @[].stretch @[].number_in_stretch @[].piece @[].number_in_piece"),
			strings.NewReplacer("@", "items[].pieces").Replace("@ @.across @.down @.apart_mm @.width_mm @.height_mm"), pair("items[].pieces.cuts_mm"),
			"items[].moves items[].moves.axis items[].moves.stretch_mm items[].moves.times",
			"items[].overlaps items[].overlaps[].pass items[].overlaps[].on items[].overlaps[].prints items[].overlaps[].faces",
			"items[].faces items[].faces[].name items[].faces[].mirrored items[].passes[].faces",
			"items[].colourways items[].colourways[].name items[].colourways[].quantity items[].colourways[].face items[].colourways[].swap items[].colourways[].swap[].colour items[].colourways[].swap[].becomes",
		},
		"shelf": {
			"title shelf shelf[].item shelf[].block shelf[].turned shelf[].count shelf[].columns shelf[].rows",
			pair("shelf[].centre"), pair("shelf[].gap_mm"), edges("shelf[].border_mm"),
		},
		"drawn": {
			"file pages sheets sheets[].page sheets[].item sheets[].part sheets[].name sheets[].row sheets[].column",
			"sheets[].page_mm sheets[].page_mm.width sheets[].page_mm.height",
			"sheets[].area_mm sheets[].area_mm.x sheets[].area_mm.y sheets[].area_mm.width sheets[].area_mm.height",
			"sheets[].at_mm sheets[].at_mm.x sheets[].at_mm.y", pair("sheets[].scale"),
		},
	} {
		keys := strings.Fields(strings.Join(want, " "))
		slices.Sort(keys)
		slices.Sort(seen[form])
		if d := cmp.Diff(keys, slices.Compact(seen[form])); d != "" {
			t.Errorf("%s (-want +got): %s", form, d)
		}
	}
}

// keysOf lists the keys of a JSON value, each with those it stands below; lists count as one.
func keysOf(at string, v any) []string {
	var keys []string
	switch v := v.(type) {
	case map[string]any:
		for k, below := range v {
			key := strings.TrimPrefix(at+"."+k, ".")
			keys = append(append(keys, key), keysOf(key, below)...)
		}
	case []any:
		for _, below := range v {
			keys = append(keys, keysOf(at+"[]", below)...)
		}
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}

// threeByTwo is a number of prints to ask for.
func threeByTwo() job.Counts { return job.Counts{Across: 3, Down: 2} }
