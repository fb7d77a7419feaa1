package jobfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"underlay/template/job"
	"underlay/template/words"
)

// Quick is a job of one item and one block, given by flags. Every field is the text of the
// flag of its name, "" where it is not given; lengths and sizes are as in a job file.
type Quick struct {
	Item   string // size of the item
	Shape  string // of the item: "rectangle" or "round"
	Border string
	Hem    string
	Block  string // size of the block's face
	Wood   string
	Gap    string
	Lap    string
	Repeat string
	Order  string
	Paper  string
	Units  string
	Hand   string
}

// flagLine says in which line of a job file a flag's text stands.
type flagLine struct {
	name string
	line int
}

// FromFlags makes the job that flags ask for. It goes through the same checks as a job file;
// the error is of type Problems, each shown by its flag.
func FromFlags(q Quick) (*job.Job, error) {
	if p := q.missing(); len(p) > 0 {
		return nil, p
	}
	text, flags := q.file()
	j, err := Read("quick.toml", []byte(text))
	var problems job.Problems
	if !errors.As(err, &problems) {
		if j != nil {
			j.File = ""
		}
		return j, err
	}
	for i, p := range problems {
		key := ""
		for _, f := range flags {
			if f.line == p.Line {
				key = "--" + f.name
			}
		}
		problems[i] = job.Problem{Key: key, Text: p.Text}
	}
	return nil, problems
}

// missing reports what cannot be done without, and what flags cannot say.
func (q Quick) missing() job.Problems {
	var p job.Problems
	needs := func(given bool, name, example string) {
		if !given {
			p = append(p, job.Problem{Key: "--" + name, Text: fmt.Sprintf("not given; add --%s %s", name, example)})
		}
	}
	needs(q.Item != "", "item", "50x50cm")
	needs(q.Border != "", "border", "25mm")
	needs(q.Block != "", "block", "90x90mm")
	needs(q.Gap != "" || q.Lap != "" || !job.Repeat(q.Repeat).Gapped(), "gap", "1mm")
	if q.Gap != "" && q.Lap != "" {
		p = append(p, job.Problem{Key: "--lap", Text: "--gap is given too; keep one of them"})
	}
	if job.Repeat(q.Repeat) == job.Placed {
		p = append(p, job.Problem{Key: "--repeat", Text: "placed needs a job file, which says where; begin with the one that underlay start prints"})
	}
	if shapes := []job.Shape{job.Rectangle, job.Round}; q.Shape != "" && !slices.Contains(shapes, job.Shape(q.Shape)) {
		text := notKnown(q.Shape, words.Texts(shapes))
		if slices.Contains(job.Shapes(), job.Shape(q.Shape)) {
			text = fmt.Sprintf("%s needs a job file; begin with the one that underlay start --shape %s prints",
				words.Article(q.Shape), q.Shape)
		}
		p = append(p, job.Problem{Key: "--shape", Text: text})
	}
	return p
}

// file writes a job file that says what the flags say, and the lines of the flags in it.
func (q Quick) file() (text string, flags []flagLine) {
	var lines []string
	heading := func(s string) { lines = append(lines, "", s) }
	put := func(name, key, value string) {
		if value != "" {
			lines = append(lines, key+" = "+words.TOML(value))
			flags = append(flags, flagLine{name, len(lines)})
		}
	}
	lines = append(lines, "title = "+words.TOML(words.Shown(q.Block+" on "+q.Item)))
	put("units", "units", q.Units)
	if q.Paper != "" {
		heading("[paper]")
		put("paper", "size", q.Paper)
	}
	if q.Hand != "" {
		heading("[printing]")
		put("hand", "hand", q.Hand)
	}
	heading("[[block]]")
	lines = append(lines, `name = "block"`)
	put("block", "print", q.Block)
	put("wood", "wood", q.Wood)
	heading("[[item]]")
	lines = append(lines, `name = "item"`)
	put("shape", "shape", q.Shape)
	put("item", "size", q.Item)
	put("border", "border", q.Border)
	put("hem", "hem", q.Hem)
	heading("[[item.pass]]")
	lines = append(lines, `block = "block"`)
	put("repeat", "repeat", q.Repeat)
	put("gap", "gap", q.Gap)
	put("lap", "lap", q.Lap)
	put("order", "order", q.Order)
	return strings.Join(lines, "\n") + "\n", flags
}
