package jobfile

import (
	"testing"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

const twoItems = `
[paper]
size = "A4"
margin = "40 mm"
overlap = "12 mm"

[[block]]
name = "fern"
print = "90 x 90 mm"

[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"

[[item]]
name = "book bag"
size = "40 x 45 cm"
border = "25 mm"
`

func TestOverride(t *testing.T) {
	for _, c := range []struct {
		name string
		o    Overrides
		want string // problems
	}{
		{"nothing", Overrides{}, ""},
		{"all", Overrides{Item: "book bag", Paper: "a3", Extent: "edges", Lines: "strong"}, ""},
		{"misspelt item", Overrides{Item: "bok bag"}, `--item: there is no item "bok bag"; write "book bag"`},
		{"unknown item", Overrides{Item: "50x50cm"}, `--item: there is no item "50x50cm"; write "floor cushion" or "book bag"`},
		{"unknown words", Overrides{Paper: "A9", Extent: "edge\n", Lines: `"bold"`},
			`--paper: "A9" is not a paper this knows; write one of A0, A1, A2, A3, A4, A5, A6, Letter, Legal, Tabloid, ANSI C, ANSI D, ANSI E, or a size such as "610 x 900 mm", "roll 610 mm" or "one sheet"
--extent: "edge " is not known here; write "edges"
--lines: '"bold"' is not known here; write "fine" or "strong"`},
		{"too large", Overrides{Paper: "60 x 60 m"}, `--paper: a sheet with a side of 60000 mm is larger than a page can be; write 10000 mm or less`},
		{"too small for the job's margin", Overrides{Paper: "A6"},
			`--paper: a sheet 105 mm wide is too small for a margin of 40 mm and an overlap of 12 mm; write a larger one, such as "A4"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := readJob(t, twoItems)
			before := *job
			got := ""
			if err := Override(job, c.o); err != nil {
				got = err.Error()
			}
			if d := cmp.Diff(c.want, got); d != "" {
				t.Error(d)
			}
			if got != "" {
				if d := sameJob(&before, job); d != "" {
					t.Errorf("the job changed: %s", d)
				}
			}
		})
	}
}

func TestOverrideChanges(t *testing.T) {
	j := readJob(t, twoItems)
	if err := Override(j, Overrides{Item: "book bag", Paper: "a3", Extent: "edges", Lines: "strong"}); err != nil {
		t.Fatal(err)
	}
	// A3 is 297 x 420 mm (ISO 216).
	if s := j.Paper.Stock; s.Name != "A3" || s.Size != (geometry.Size{W: 297, H: 420}) {
		t.Errorf("paper %+v", s)
	}
	if p := j.Paper; p.Extent != job.EdgesExtent || p.Lines != job.StrongLines || p.Margin != 40 || p.Overlap != 12 || p.Reach != 25 {
		t.Errorf("paper %+v", p)
	}
	if len(j.Items) != 1 || j.Items[0].Name != "book bag" {
		t.Errorf("items %+v", j.Items)
	}
}
