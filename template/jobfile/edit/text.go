package edit

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"unicode/utf8"

	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
)

// largest is the most bytes of a text that is edited: more than any job has, so that one that became
// too long can be made shorter.
const largest = 4 << 20

// mark is what some editors put before a text in UTF-8.
const mark = "\ufeff"

// text is a job file being edited.
type text struct {
	*toml.TreeParser
	data  []byte
	end   string // of a line
	keys  *keys.KeyTree
	edits []replacement
}

// replacement puts a text in place of a run of bytes.
type replacement struct {
	toml.ByteRange
	text string
}

// read takes a text apart; the error, of type job.Problems, says why it cannot be edited.
func read(data string) (*text, error) {
	switch {
	case len(data) > largest:
		return nil, job.Problems{{Text: "the text is larger than 4 MiB, and a job file may have 1 MiB; write a smaller one"}}
	case !utf8.ValidString(data):
		return nil, job.Problems{{Text: "this is not a text in UTF-8; save the file as UTF-8"}}
	}
	t := &text{data: []byte(data), end: "\n", keys: keys.NewKeyTree()}
	t.TreeParser = toml.ParseTree(t.data)
	if p := t.Problems(); len(p) > 0 {
		return nil, p.Sorted()
	}
	if bytes.Contains(t.data, []byte("\r\n")) {
		t.end = "\r\n"
	}
	return t, nil
}

// edited reads a text, has it changed, and returns it as changed. The mark before it stays.
func edited(data string, change func(*text) error) (string, error) {
	bare, marked := strings.CutPrefix(data, mark)
	t, err := read(bare)
	if err == nil {
		err = change(t)
	}
	if err != nil {
		return data, err
	}
	out := t.text()
	if _, problems := toml.Parse([]byte(out)); len(problems) > 0 {
		return data, errors.New("this cannot be put there without breaking what stands there; change the text by hand")
	}
	if marked {
		out = mark + out
	}
	return out, nil
}

func (t *text) insert(at int, text string) { t.replace(toml.ByteRange{From: at, To: at}, text) }
func (t *text) remove(r toml.ByteRange)    { t.replace(r, "") }
func (t *text) replace(r toml.ByteRange, text string) {
	t.edits = append(t.edits, replacement{r, text})
}

// text is the text as edited. Of edits at one place the first made comes first.
func (t *text) text() string {
	edits := slices.Clone(t.edits)
	slices.SortStableFunc(edits, func(a, b replacement) int { return a.From - b.From })
	var out strings.Builder
	at := 0
	for _, x := range edits {
		out.Write(t.data[at:max(at, x.From)])
		out.WriteString(x.text)
		at = max(at, x.To)
	}
	out.Write(t.data[at:])
	return out.String()
}

// lineStart is the offset of the first byte of a line; of a line after the last, the end.
func (t *text) lineStart(line int) int {
	switch {
	case line <= 1:
		return 0
	case line-2 < len(t.Ends):
		return t.Ends[line-2] + 1
	}
	return len(t.data)
}

// lines returns the whole lines that a run of bytes touches, with their ends.
func (t *text) lines(r toml.ByteRange) toml.ByteRange {
	return toml.ByteRange{From: t.lineStart(t.LineAt(r.From)), To: t.lineStart(t.LineAt(max(r.From, r.To-1)) + 1)}
}

// last is the number of the last line that has anything in it.
func (t *text) last() int { return t.LineAt(max(0, len(t.data)-1)) }

// kind is what a line is.
type kind int

const (
	blank kind = iota
	remark
	other
)

func (t *text) kind(line int) kind {
	switch s := strings.TrimSpace(t.LineText(line)); {
	case s == "":
		return blank
	case s[0] == '#':
		return remark
	}
	return other
}

// indent is the white space that a line begins with.
func (t *text) indent(line int) string {
	s := t.LineText(line)
	return s[:len(s)-len(strings.TrimLeft(s, " \t"))]
}

// insertLines puts lines before a line; after the last, where that has no end, it gets one.
func (t *text) insertLines(before int, lines ...string) {
	at := t.lineStart(before)
	if at == len(t.data) && at > 0 && t.data[at-1] != '\n' {
		t.insert(at, t.end+strings.Join(lines, t.end))
		return
	}
	t.insert(at, strings.Join(lines, t.end)+t.end)
}
