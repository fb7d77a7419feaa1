package jobfile

import (
	"testing"

	"underlay/template/jobfile/toml"
	"underlay/template/words"

	"github.com/google/go-cmp/cmp"
)

func TestQuickJob(t *testing.T) {
	q := Quick{Item: "50x50cm", Border: "25mm", Hem: "12mm", Block: "90x90mm", Wood: "98x98mm", Gap: "1mm",
		Repeat: "straight", Order: "rows", Paper: "Letter", Units: "in", Hand: "left", Shape: "rectangle"}
	got, err := FromFlags(q)
	if err != nil {
		t.Fatal(err)
	}
	want := readJob(t, `
title = "90x90mm on 50x50cm"
units = "in"
[paper]
size = "Letter"
[printing]
hand = "left"
[[block]]
name = "block"
print = "90 x 90 mm"
wood = "98 x 98 mm"
[[item]]
name = "item"
size = "50 x 50 cm"
border = "25 mm"
hem = "12 mm"
  [[item.pass]]
  block = "block"
  gap = "1 mm"
  order = "rows"
`)
	if d := sameJob(want, got); d != "" {
		t.Error(d)
	}
	again, err := Read("again.toml", got.Source)
	if err != nil {
		t.Fatalf("the job file that says the same is not good: %v\n%s", err, got.Source)
	}
	if d := sameJob(got, again); d != "" {
		t.Errorf("the job file says something else: %s", d)
	}
}

func TestQuickProblems(t *testing.T) {
	good := Quick{Item: "50x50cm", Border: "25mm", Block: "90x90mm", Gap: "1mm"}
	for _, c := range []struct {
		name   string
		change func(*Quick)
		want   string
	}{
		{"nothing", func(q *Quick) { *q = Quick{} }, "--item: not given; add --item 50x50cm\n--border: not given; add --border 25mm\n" +
			"--block: not given; add --block 90x90mm\n--gap: not given; add --gap 1mm"},
		{"gap and lap", func(q *Quick) { q.Lap = "0.5mm" }, "--lap: --gap is given too; keep one of them"},
		{"two at once", func(q *Quick) { q.Border, q.Repeat = "-25mm", "brik" },
			`--border: "-25mm" is less than nothing; write a length of 0 or more, such as "25 mm"` + "\n" + `--repeat: "brik" is not known here; write "brick"`},
		{"hem", func(q *Quick) { q.Hem = "30mm" },
			`--border: 25 mm is less than the hem, 30 mm, and a block that rides over the hem prints badly; write "30 mm" or more`},
		{"block of one length", func(q *Quick) { q.Block = "90mm" },
			`--block: the shape is a rectangle, which has two sides; write "90 x 90mm", or give another shape`},
		{"wood", func(q *Quick) { q.Wood = "80x80mm" },
			`--wood: wood of 80 mm by 80 mm is smaller than the face of 90 mm by 90 mm; write its outer size`},
		{"lap", func(q *Quick) { q.Gap, q.Lap = "", "90mm" },
			`--lap: prints that lap by 90 mm, with a face of 90 mm across, would lie half on each other or more; write a smaller lap, such as "0.5 mm"`},
		{"units and hand", func(q *Quick) { q.Units, q.Hand = "feet\n", "both" },
			`--units: "feet " is not known here; write "mm", "cm" or "in"` + "\n" + `--hand: "both" is not known here; write "right" or "left"`},
		{"order", func(q *Quick) { q.Order = "centre" }, `--order: "centre" is not known here; write "centre-out"`},
		{"shape misspelt", func(q *Quick) { q.Shape = "rond" }, `--shape: "rond" is not known here; write "round"`},
		{"drum", func(q *Quick) { q.Shape = "drum" },
			`--shape: a drum needs a job file; begin with the one that underlay start --shape drum prints`},
		{"size of a round item", func(q *Quick) { q.Shape = "round" }, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			q := good
			c.change(&q)
			got := ""
			if _, err := FromFlags(q); err != nil {
				got = err.Error()
			}
			if d := cmp.Diff(c.want, got); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestTOMLText brings texts through a job file and back.
func TestTOMLText(t *testing.T) {
	for _, s := range []string{"fern", `17 3/4"`, `a\b`, "two\nlines\ttab\x00\x7f", "Ферн", `'''"""`, "\u2028", "#", "a\r\nb"} {
		root, problems := toml.Parse([]byte("title = " + words.TOML("-"+s)))
		if len(problems) > 0 {
			t.Errorf("%q: %v", s, problems)
		} else if got := root.Keys["title"].Value; got != "-"+s {
			t.Errorf("%q became %q", s, got)
		}
	}
}
