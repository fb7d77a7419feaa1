package jobfile

import (
	"bytes"
	"slices"
	"strings"

	"underlay/template/jobfile/toml"
	"underlay/template/words"

	"golang.org/x/text/unicode/norm"
)

// editor changes the text of a good job in place, so that remarks and order stay.
type editor struct {
	*toml.TreeParser
	data  []byte
	end   string // of a line
	edits []edit
	// filled: braces that were empty have got their first key.
	filled bool
}

// edit puts a text in place of a run of bytes.
type edit struct {
	toml.ByteRange
	text string
}

func newEditor(data []byte) *editor {
	e := &editor{TreeParser: toml.ParseTree(data), data: data, end: "\n"}
	if bytes.Contains(data, []byte("\r\n")) {
		e.end = "\r\n"
	}
	return e
}

func (e *editor) insert(at int, text string) { e.replace(toml.ByteRange{From: at, To: at}, text) }

func (e *editor) replace(r toml.ByteRange, text string) { e.edits = append(e.edits, edit{r, text}) }

// text is the text as edited. Of edits at one place the first made comes first.
func (e *editor) text() []byte {
	edits := slices.Clone(e.edits)
	slices.SortStableFunc(edits, func(a, b edit) int { return a.From - b.From })
	var out []byte
	at := 0
	for _, x := range edits {
		out = append(append(out, e.data[at:x.From]...), x.text...)
		at = x.To
	}
	return append(out, e.data[at:]...)
}

// lineStart is the offset of the first byte of a line; of a line after the last, the end.
func (e *editor) lineStart(line int) int {
	switch {
	case line == 1:
		return 0
	case line-2 < len(e.Ends):
		return e.Ends[line-2] + 1
	}
	return len(e.data)
}

// set gives a key of a table of its own a value.
func (e *editor) set(in, key, value string) {
	text := key + " = " + words.TOML(value)
	at := e.Root.Keys[in]
	switch {
	case at == nil:
		e.insert(len(e.data), e.end+e.end+"["+in+"]"+e.end+text+e.end)
		// The next key goes below the same heading.
		e.Root.Put(in, &toml.Node{Form: toml.Table, Line: 0})
	case at.Keys[key] != nil:
		e.replace(at.Keys[key].At, words.TOML(value))
	case at.Line == 0:
		e.insert(len(e.data), text+e.end)
	case at.Closed && len(at.Keys) > 0:
		e.insert(at.At.To, " "+text+",")
	case at.Closed && e.filled:
		e.insert(at.At.To, ", "+text)
	case at.Closed:
		e.insert(at.At.To, " "+text)
		e.filled = true
	case at.Dotted:
		e.insert(e.lineStart(at.Line), in+"."+text+e.end)
	default:
		e.insert(e.lineStart(at.Line+1), e.endOfLine(at.Line)+text+e.end)
	}
}

// endOfLine ends a line that has no end, the last of the text, where one is added below it.
func (e *editor) endOfLine(line int) string {
	if line-1 < len(e.Ends) {
		return ""
	}
	return e.end
}

// dropped begins the lines of an item that is not kept.
const dropped = "# not drawn: "

// keepItem makes remarks of all items but one.
func (e *editor) keepItem(name string) {
	items := e.Root.Keys["item"]
	if items.Closed {
		e.keepInList(items, name)
		return
	}
	item := -1
	for i, h := range e.Headings {
		if h.Name != "item" {
			continue
		}
		if item+1 < len(items.Items) && items.Items[item+1].Line == h.Line {
			item++
		}
		if itemName(items.Items[item]) == name {
			continue
		}
		last := e.LineAt(len(e.data))
		if i+1 < len(e.Headings) {
			last = e.Headings[i+1].Line - 1
		}
		for line := h.Line; line <= last; line++ {
			from := e.lineStart(line)
			if text := strings.TrimSpace(e.LineText(line)); text != "" && text[0] != '#' {
				e.insert(from, dropped)
			}
		}
	}
}

func itemName(n *toml.Node) string {
	name, _ := n.Keys["name"].Value.(string)
	return norm.NFC.String(name)
}

// keepInList takes out all items of a list of {...} but one.
func (e *editor) keepInList(items *toml.Node, name string) {
	for i, n := range items.Items {
		if itemName(n) != name {
			continue
		}
		from, last := n.At.From, items.Items[len(items.Items)-1]
		e.replace(toml.ByteRange{From: items.Items[0].At.From, To: from}, "")
		if n != last {
			to := e.braceEnd(from, items.Items[i+1].At.From)
			e.replace(toml.ByteRange{From: to, To: e.braceEnd(last.At.From, len(e.data))}, "")
		}
		return
	}
}

// braceEnd is the offset behind the brace that closes one, looked for up to a limit.
func (e *editor) braceEnd(open, limit int) int {
	for at := open; at < limit; at++ {
		if e.data[at] != '}' {
			continue
		}
		if _, problems := toml.Parse(append([]byte("x = "), e.data[open:at+1]...)); len(problems) == 0 {
			return at + 1
		}
	}
	return limit
}
