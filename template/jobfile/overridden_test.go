package jobfile

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"underlay/template/internal/repo"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// same makes a text of all that a job says, pointers followed, without where it is written.
func same(j *job.Job) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%q %v %#v %#v %#v\n", j.Title, j.Units, j.Paper, j.Printer, j.Printing)
	for _, block := range j.Blocks {
		fmt.Fprintf(&b, "%#v\n", *block)
	}
	for _, it := range j.Items {
		item := *it
		item.Passes, item.Line = nil, 0
		fmt.Fprintf(&b, "%#v\n", item)
		for _, p := range it.Passes {
			pass := *p
			fmt.Fprintf(&b, "on %v, between %v, block %s\n", nameOf(p.On), nameOf(p.Between), p.Block.Name)
			for _, part := range pass.Mix.Parts {
				fmt.Fprintf(&b, "%s %q\n", part.Block.Name, part.Colours)
			}
			pass.Mix.Parts = nil
			if p.Corner != nil {
				fmt.Fprintf(&b, "corner %s\n", p.Corner.Name)
			}
			pass.On, pass.Between, pass.Block, pass.Corner, pass.Line = nil, nil, nil, nil, 0
			pass.Places = slices.Clone(pass.Places)
			for i := range pass.Places {
				pass.Places[i].Line = 0
			}
			fmt.Fprintf(&b, "%#v\n", pass)
		}
	}
	return b.String()
}

func nameOf(p *job.Pass) string {
	if p == nil {
		return "none"
	}
	return p.Name
}

// TestOverriddenSource overrides every example in every way: the job's source, read again under
// another name, is the job as it was overridden.
func TestOverriddenSource(t *testing.T) {
	files, err := filepath.Glob(repo.Path(t, "examples", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	jobs := map[string]string{
		"no end of line": "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'bag'\nsize = '50 x 50 cm'\nborder = '25 mm'\n[paper]",
		"dotted":         "paper.margin = '8 mm'\npaper.reach = '20 mm'\n" + goodTail,
		"in braces":      "paper = {margin = '8 mm', lines = 'fine'}\n" + goodTail,
		"empty braces":   "paper = { }\n" + goodTail,
		"Windows":        strings.ReplaceAll("[paper] # of the printer\nsize = 'A4'\n"+goodTail, "\n", "\r\n"),
		"list of items": `item = [{name = "a } b", size = "50 x 50 cm", border = "25 mm"},
			{name = "bag", size = "40 x 40 cm", border = ["25 mm", "25 mm", "25 mm", "25 mm"] }, # }
			{name = "bag two", size = "50 x 50 cm", border = "25 mm", pass = [{block = "fern", gap = "1 mm"}]}]` +
			"\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n",
		"items all over": "[[item]]\nname = '''\n[[item]]\nbag'''\nsize = '50 x 50 cm'\nborder = '25 mm'\n# the block\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n" +
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n[[item]] # another\nname = 'bag'\nsize = '30 x 50 cm'\nborder = '25 mm'\n\n[paper]\nmargin = '8 mm'\n" +
			"[[item.keep-clear]]\nname = 'p'\nat = '0 x 0 mm'\nsize = '9 x 9 mm'\n[printing]\nhand = 'left'\n",
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(f)] = string(data)
	}
	tried := 0
	for name, text := range jobs {
		items := []string{""}
		for _, it := range readJob(t, text).Items {
			items = append(items, it.Name)
		}
		for _, item := range items {
			for _, o := range []Overrides{
				{Item: item}, {Item: item, Paper: "A3"}, {Item: item, Lines: "strong", Extent: "edges"},
				{Item: item, Paper: "610 x 900 mm", Extent: "full", Lines: "fine"},
			} {
				job := readJob(t, text)
				if err := Override(job, o); err != nil || o == (Overrides{}) {
					continue
				}
				tried++
				again, err := ReadWith("again.toml", job.Source, examplePictures)
				if err != nil {
					t.Errorf("%s, %+v: %v\n%s", name, o, err, job.Source)
					continue
				}
				if d := cmp.Diff(same(job), same(again)); d != "" {
					t.Errorf("%s, %+v: %s\n%s", name, o, d, job.Source)
				}
			}
		}
	}
	if tried < 50 {
		t.Errorf("%d jobs were overridden", tried)
	}
}

// TestOverriddenWords shows what becomes of a job: remarks and order stay.
func TestOverriddenWords(t *testing.T) {
	job := readJob(t, `# For the nook
[paper]
size = "A4" # the usual
[[block]]
name = "fern"
print = "90 x 90 mm"

# Cushions
[[item]]
name = "cushion"
size = "50 x 50 cm"
border = "25 mm"

  # all over
  [[item.pass]]
  block = "fern"
  gap = "1 mm"

# Bags
[[item]]
name = "bag"
size = "30 x 30 cm"
border = "25 mm"
`)
	if err := Override(job, Overrides{Item: "bag", Paper: "A3", Lines: "strong"}); err != nil {
		t.Fatal(err)
	}
	want := `# Drawn with --item "bag" --paper "A3" --lines "strong"
title = "nook"
# For the nook
[paper]
size = "A3" # the usual
lines = "strong"
[[block]]
name = "fern"
print = "90 x 90 mm"

# Cushions
# not drawn: [[item]]
# not drawn: name = "cushion"
# not drawn: size = "50 x 50 cm"
# not drawn: border = "25 mm"

  # all over
# not drawn:   [[item.pass]]
# not drawn:   block = "fern"
# not drawn:   gap = "1 mm"

# Bags
[[item]]
name = "bag"
size = "30 x 30 cm"
border = "25 mm"
`
	if d := cmp.Diff(want, string(job.Source)); d != "" {
		t.Error(d)
	}
}
