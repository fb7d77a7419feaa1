package edit

import (
	"strings"

	"golang.org/x/text/unicode/norm"

	"underlay/template/jobfile/toml"
)

// Dropped begins the lines of an item that is not kept.
const Dropped = "# not drawn: "

// KeepItem makes remarks of all items but the one of a name. The error is as that of Set.
func KeepItem(data, name string) (string, error) {
	return edited(data, func(t *text) error {
		items := t.Root.Keys["item"]
		switch {
		case items == nil || items.Form != toml.Tables:
		case items.Closed:
			t.keepInList(items, name)
		default:
			t.keepHeadings(items, name)
		}
		return nil
	})
}

func (t *text) keepHeadings(items *toml.Node, name string) {
	item := -1
	for i, h := range t.Headings {
		if h.Name != "item" {
			continue
		}
		if item+1 < len(items.Items) && items.Items[item+1] == h.Of {
			item++
		}
		if item < 0 || nameOf(items.Items[item]) == name {
			continue
		}
		last := t.last()
		if i+1 < len(t.Headings) {
			last = t.Headings[i+1].Line - 1
		}
		for line := h.Line; line <= last; line++ {
			if t.kind(line) == other {
				t.insert(t.lineStart(line), Dropped)
			}
		}
	}
}

// nameOf is the name of a block, an item or a pass; "" where it has none.
func nameOf(n *toml.Node) string { return said(n.Keys["name"]) }

// said is what a text says; "" where it is none.
func said(n *toml.Node) string {
	if n == nil {
		return ""
	}
	s, _ := n.Value.(string)
	return norm.NFC.String(s)
}

// keepInList takes out all items of a list of {...} but one.
func (t *text) keepInList(items *toml.Node, name string) {
	for i, n := range items.Items {
		if nameOf(n) != name {
			continue
		}
		last := len(items.Items) - 1
		t.remove(toml.ByteRange{From: items.Items[0].At.From, To: n.At.From})
		if i < last {
			t.remove(toml.ByteRange{From: n.At.To, To: items.Items[last].At.To})
		}
		return
	}
}

// Above returns the text with lines put before all others.
func Above(data string, lines ...string) string {
	end := "\n"
	if strings.Contains(data, "\r\n") {
		end = "\r\n"
	}
	bare, marked := strings.CutPrefix(data, mark)
	out := strings.Join(lines, end) + end + bare
	if marked {
		return mark + out
	}
	return out
}
