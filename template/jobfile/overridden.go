package jobfile

import (
	"bytes"
	"slices"
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// overridden is the source of a job with what flags say written into it: the keys of [paper], and
// of all items the one that is kept, the others as remarks. What it says first tells which flags
// they were.
func overridden(j *job.Job, o Overrides) []byte {
	text, err := toml.DecodeText(j.Source)
	if err != nil {
		return j.Source
	}
	e := newEditor(text)
	var flags []string
	say := func(flag, value string) {
		if value != "" {
			flags = append(flags, flag+" "+words.Quote(value))
		}
	}
	set := func(flag, key, value string) {
		if value != "" {
			e.set("paper", key, value)
		}
		say(flag, value)
	}
	say("--item", o.Item)
	set("--paper", "size", o.Paper)
	set("--extent", "extent", o.Extent)
	set("--lines", "lines", o.Lines)
	if o.Item != "" {
		e.keepItem(o.Item)
	}
	edited := append([]byte(e.head(strings.Join(flags, " "), j.Title)), e.text()...)
	if len(edited) <= LargestJob {
		return edited
	}
	lines := bytes.SplitAfter(edited, []byte("\n"))
	return bytes.Join(slices.DeleteFunc(lines, func(l []byte) bool { return bytes.HasPrefix(l, []byte(dropped)) }), nil)
}

// head is what comes before the text of a job that flags changed. Without a title it gets one: else
// that is the name of the file, which may be another one day.
func (e *editor) head(flags, title string) string {
	head := "# Drawn with " + flags + e.end
	if e.Root.Keys["title"] == nil {
		head += "title = " + words.TOML(title) + e.end
	}
	return head
}
