package jobfile

import (
	"fmt"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
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
// file; the error is of type Problems, each shown by its flag, and the job is then unchanged. The
// job's source becomes one that says what the flags say, and reads as the job does now.
func Override(j *job.Job, o Overrides) error {
	page, problems := overridePaper(j, o)
	items := j.Items
	o.Item = norm.NFC.String(o.Item)
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
			problems = append(problems, job.Problem{Key: "--item", Text: fmt.Sprintf("there is no item %s; write %s", words.Quote(o.Item), keys.Instead(o.Item, names))})
		}
	}
	if len(problems) > 0 {
		return problems
	}
	j.Paper, j.Items = page, items
	if o != (Overrides{}) {
		j.Source = overridden(j, o)
	}
	return nil
}

// overridePaper returns the job's paper with what the flags say of it, checked as [paper] of a
// job file is. Margin and overlap stay as they are; where they do not go with the paper, that
// is a problem of the paper.
func overridePaper(j *job.Job, o Overrides) (job.Paper, job.Problems) {
	r := &reader{units: j.Units, keys: keys.NewKeyTree()}
	s, p := section{r: r, node: toml.NewTable(0), keys: r.keys.Tables["paper"], label: "[paper]"}, j.Paper
	var flags []string // by the line their key is given, counted from 1
	put := func(flag, key, value string) {
		if value != "" {
			flags = append(flags, flag)
			s.node.Put(key, toml.NewText(len(flags), value))
		}
	}
	put("--paper", "size", o.Paper)
	put("--extent", "extent", o.Extent)
	put("--lines", "lines", o.Lines)
	size := s.key("size")
	if name, ok := size.text("A4"); ok {
		stock, err := ParseStock(name)
		switch {
		case err != nil:
			size.say("%s", err)
		case size.inRange(stock.Size.W, stock.Size.H):
			p.Stock = stock
			checkSheet(s, &p)
		}
	}
	if word, ok := s.word("extent"); ok && o.Extent != "" {
		p.Extent = job.Extent(word)
	}
	if word, ok := s.word("lines"); ok && o.Lines != "" {
		p.Lines = job.Lines(word)
	}
	found := r.problems.Sorted()
	for i, q := range found {
		found[i] = job.Problem{Key: flags[q.Line-1], Text: q.Text}
	}
	return p, found
}

// overridden is the source of a job with what flags say written into it: the keys of [paper], and
// of all items the one that is kept, the others as remarks. What it says first tells which flags
// they were.
func overridden(j *job.Job, o Overrides) []byte {
	data, err := toml.DecodeText(j.Source)
	if err != nil {
		return j.Source
	}
	text := string(data)
	var flags []string
	say := func(flag, value string) {
		if value != "" {
			flags = append(flags, flag+" "+words.Quote(value))
		}
	}
	set := func(flag, key, value string) {
		if value != "" && err == nil {
			text, err = edit.Set(text, edit.Path{"paper", key}, words.TOML(value))
		}
		say(flag, value)
	}
	say("--item", o.Item)
	set("--paper", "size", o.Paper)
	set("--extent", "extent", o.Extent)
	set("--lines", "lines", o.Lines)
	if o.Item != "" && err == nil {
		text, err = edit.KeepItem(text, o.Item)
	}
	if err != nil {
		return j.Source
	}
	// Without a title the job gets one: else that is the name of the file, which may be another one day.
	head := []string{"# Drawn with " + strings.Join(flags, " ")}
	if !titled(text) {
		head = append(head, "title = "+words.TOML(j.Title))
	}
	text = edit.Above(text, head...)
	if len(text) <= LargestJob {
		return []byte(text)
	}
	lines := strings.SplitAfter(text, "\n")
	return []byte(strings.Join(slices.DeleteFunc(lines, func(l string) bool { return strings.HasPrefix(l, edit.Dropped) }), ""))
}

// titled tells whether a job file has a title.
func titled(text string) bool {
	root, _ := toml.Parse([]byte(text))
	return root.Keys["title"] != nil
}
