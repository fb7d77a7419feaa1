package jobfile

import (
	"bytes"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"underlay/template/words"
)

// editor changes the text of a good job in place, so that remarks and order stay.
type editor struct {
	*treeParser
	data  []byte
	end   string // of a line
	edits []edit
	// filled: braces that were empty have got their first key.
	filled bool
}

// edit puts a text in place of a run of bytes.
type edit struct {
	byteRange
	text string
}

func newEditor(data []byte) *editor {
	e := &editor{treeParser: parseTree(data), data: data, end: "\n"}
	if bytes.Contains(data, []byte("\r\n")) {
		e.end = "\r\n"
	}
	return e
}

func (e *editor) insert(at int, text string) { e.replace(byteRange{at, at}, text) }

func (e *editor) replace(r byteRange, text string) { e.edits = append(e.edits, edit{r, text}) }

// text is the text as edited. Of edits at one place the first made comes first.
func (e *editor) text() []byte {
	edits := slices.Clone(e.edits)
	slices.SortStableFunc(edits, func(a, b edit) int { return a.from - b.from })
	var out []byte
	at := 0
	for _, x := range edits {
		out = append(append(out, e.data[at:x.from]...), x.text...)
		at = x.to
	}
	return append(out, e.data[at:]...)
}

// lineStart is the offset of the first byte of a line; of a line after the last, the end.
func (e *editor) lineStart(line int) int {
	switch {
	case line == 1:
		return 0
	case line-2 < len(e.ends):
		return e.ends[line-2] + 1
	}
	return len(e.data)
}

// set gives a key of a table of its own a value.
func (e *editor) set(in, key, value string) {
	text := key + " = " + words.TOML(value)
	at := e.root.keys[in]
	switch {
	case at == nil:
		e.insert(len(e.data), e.end+e.end+"["+in+"]"+e.end+text+e.end)
		// The next key goes below the same heading.
		e.root.put(in, &node{form: table, line: 0})
	case at.keys[key] != nil:
		e.replace(at.keys[key].at, words.TOML(value))
	case at.line == 0:
		e.insert(len(e.data), text+e.end)
	case at.closed && len(at.keys) > 0:
		e.insert(at.at.to, " "+text+",")
	case at.closed && e.filled:
		e.insert(at.at.to, ", "+text)
	case at.closed:
		e.insert(at.at.to, " "+text)
		e.filled = true
	case at.dotted:
		e.insert(e.lineStart(at.line), in+"."+text+e.end)
	default:
		e.insert(e.lineStart(at.line+1), e.endOfLine(at.line)+text+e.end)
	}
}

// endOfLine ends a line that has no end, the last of the text, where one is added below it.
func (e *editor) endOfLine(line int) string {
	if line-1 < len(e.ends) {
		return ""
	}
	return e.end
}

// dropped begins the lines of an item that is not kept.
const dropped = "# not drawn: "

// keepItem makes remarks of all items but one.
func (e *editor) keepItem(name string) {
	items := e.root.keys["item"]
	if items.closed {
		e.keepInList(items, name)
		return
	}
	item := -1
	for i, h := range e.headings {
		if h.name != "item" {
			continue
		}
		if item+1 < len(items.items) && items.items[item+1].line == h.line {
			item++
		}
		if itemName(items.items[item]) == name {
			continue
		}
		last := e.lineAt(len(e.data))
		if i+1 < len(e.headings) {
			last = e.headings[i+1].line - 1
		}
		for line := h.line; line <= last; line++ {
			from := e.lineStart(line)
			if text := strings.TrimSpace(e.lineText(line)); text != "" && text[0] != '#' {
				e.insert(from, dropped)
			}
		}
	}
}

func itemName(n *node) string {
	name, _ := n.keys["name"].value.(string)
	return norm.NFC.String(name)
}

// keepInList takes out all items of a list of {...} but one.
func (e *editor) keepInList(items *node, name string) {
	for i, n := range items.items {
		if itemName(n) != name {
			continue
		}
		from, last := n.at.from, items.items[len(items.items)-1]
		e.replace(byteRange{items.items[0].at.from, from}, "")
		if n != last {
			to := e.braceEnd(from, items.items[i+1].at.from)
			e.replace(byteRange{to, e.braceEnd(last.at.from, len(e.data))}, "")
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
		if _, problems := parse(append([]byte("x = "), e.data[open:at+1]...)); len(problems) == 0 {
			return at + 1
		}
	}
	return limit
}
