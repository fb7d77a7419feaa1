package edit

import (
	"strings"

	"underlay/template/jobfile/toml"
)

// append adds a value to the end of a list; on a line of its own where the last has one.
func (t *text) append(list *toml.Node, source string) {
	n := len(list.Items)
	switch {
	case n == 0 && t.empty(list.At):
		t.replace(list.At, "["+source+"]")
		return
	case n == 0:
		t.insert(list.At.From+1, source)
		return
	}
	last := list.Items[n-1].At
	line := t.LineAt(last.From)
	comma := t.past(last.To)
	given := t.data[comma] == ','
	to := last.To
	if given {
		to = comma + 1
	}
	if !t.begins(last.From) || t.LineAt(list.At.To) == t.LineAt(to) {
		t.insert(last.To, ", "+source)
		return
	}
	own := t.indent(line) + source
	if given {
		own += ","
	} else {
		t.insert(last.To, ",")
	}
	t.insertLines(t.LineAt(to)+1, own)
}

// past returns where the next sign after an offset stands that is neither white space nor in a remark.
func (t *text) past(at int) int {
	for at < len(t.data) {
		switch t.data[at] {
		case ' ', '\t', '\r', '\n':
			at++
		case '#':
			at = t.lineStart(t.LineAt(at) + 1)
		default:
			return at
		}
	}
	return at
}

// begins tells whether nothing but white space stands before an offset in its line.
func (t *text) begins(at int) bool {
	return strings.TrimSpace(string(t.data[t.lineStart(t.LineAt(at)):at])) == ""
}

// dropFrom takes one of several places out of the brackets or braces that are around them.
func (t *text) dropFrom(all []toml.ByteRange, i int, around toml.ByteRange) {
	r := all[i]
	comma := t.past(r.To)
	given := t.data[comma] == ','
	to := r.To
	if given {
		to = comma + 1
	}
	switch next := t.past(to); {
	case t.begins(r.From) && t.LineAt(next) > t.LineAt(to-1):
		// Alone on its lines. Where it was the last, a comma may stay before the closing sign.
		t.remove(t.lines(toml.ByteRange{From: r.From, To: to}))
	case given && t.LineAt(next) == t.LineAt(to-1) && next < around.To-1:
		t.remove(toml.ByteRange{From: r.From, To: next})
	case i > 0 && strings.Trim(string(t.data[all[i-1].To:r.From]), " \t,") == "":
		t.remove(toml.ByteRange{From: all[i-1].To, To: r.To})
	default:
		t.remove(toml.ByteRange{From: r.From, To: to})
	}
}
