package template

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"underlay/paper"
)

// Overrides is what flags say in place of a job. Every field is the text of the flag of its
// name, "" where it is not given.
type Overrides struct {
	Item   string // the name of the one item to keep
	Paper  string
	Extent string
	Lines  string
}

// Override changes the job to what the flags say. They go through the same checks as a job
// file; the error is of type Problems, each shown by its flag, and the job is then unchanged.
func (j *Job) Override(o Overrides) error {
	page, problems := j.overridePaper(o)
	items := j.Items
	if o.Item != "" {
		items = nil
		names := make([]string, len(j.Items))
		for i, it := range j.Items {
			names[i] = it.Name
			if it.Name == o.Item {
				items = j.Items[i : i+1]
			}
		}
		if items == nil {
			write := oneOf(names)
			if near, ok := nearest(o.Item, names); ok {
				write = quote(near)
			}
			problems = append(problems, Problem{Key: "--item", Text: fmt.Sprintf("there is no item %s; write %s", quote(o.Item), write)})
		}
	}
	if len(problems) > 0 {
		return problems
	}
	j.Paper, j.Items = page, items
	return nil
}

// overridePaper returns the job's paper with what the flags say of it, checked as [paper] of a
// job file is. Margin and overlap stay as they are; where they do not go with the paper, that
// is a problem of the paper.
func (j *Job) overridePaper(o Overrides) (Paper, Problems) {
	lines := []string{"[paper]"}
	flags := map[int]string{}
	put := func(flag, key, value string) {
		if value != "" {
			lines = append(lines, key+" = "+tomlText(value))
			flags[len(lines)] = "--" + flag
		}
	}
	put("paper", "size", o.Paper)
	put("extent", "extent", o.Extent)
	put("lines", "lines", o.Lines)
	data := []byte(strings.Join(lines, "\n") + "\n")
	root, problems := places(data)
	var raw rawJob
	if err := toml.Unmarshal(data, &raw); err != nil || len(problems) > 0 {
		return j.Paper, Problems{{Text: "the flags cannot be read; write plain words after them"}}
	}

	r := &reader{units: j.Units.String()}
	s, p := section{r: r, node: root}.below("paper"), j.Paper
	size := s.key("size", raw.Paper.Size)
	if name, ok := size.text("A4"); ok {
		stock, err := paper.ParseStock(name)
		switch {
		case err != nil:
			size.say("%s", err)
		case size.inRange(stock.Size.W, stock.Size.H):
			p.Stock = stock
			checkSheet(s, &raw.Paper, &p)
		}
	}
	extent, _ := s.key("extent", raw.Paper.Extent).word([]string{string(FullExtent), string(EdgesExtent)}, string(p.Extent))
	weight, _ := s.key("lines", raw.Paper.Lines).word([]string{string(FineLines), string(StrongLines)}, string(p.Lines))
	p.Extent, p.Lines = Extent(extent), Lines(weight)
	found := r.problems.sorted()
	for i, q := range found {
		found[i] = Problem{Key: flags[q.Line], Text: q.Text}
	}
	return p, found
}

// Nearest returns the known word most like word, and whether any is like enough to be what
// was meant.
func Nearest(word string, known []string) (string, bool) { return nearest(word, known) }
