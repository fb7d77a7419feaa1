package edit

import (
	"slices"

	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
)

// addKey adds a key to the last table on the way, which is at a path, where its kin stand.
func (t *text) addKey(on []*toml.Node, to Path, name, source string) {
	n := on[len(on)-1]
	entry := spelled([]string{name}) + " = " + source
	if n.Closed {
		t.addInBraces(n, Tree(t.keys, to), name, entry)
		return
	}
	base := len(on) - 1
	for base > 0 && on[base].Dotted {
		base--
	}
	if base < len(on)-1 {
		entry = spelled(to[base:]) + "." + entry
	}
	before, after := kin(n, Tree(t.keys, to), name)
	switch {
	case on[base].Closed && before != nil:
		t.insert(before.To, ", "+entry)
	case on[base].Closed && after != nil:
		t.insert(after.From, entry+", ")
	case before != nil:
		line := t.LineAt(before.To - 1)
		t.insertLines(line+1, t.indent(t.LineAt(before.From))+entry)
	case base < len(on)-1 && after != nil:
		line := t.LineAt(after.From)
		t.insertLines(line, t.indent(line)+entry)
	case len(on) == 1:
		t.insertLines(t.top(after), entry)
	default:
		t.addBelowHeading(on, to, name, entry)
	}
}

// addBelowHeading adds the first key of a table; one that has no heading of its own gets it.
func (t *text) addBelowHeading(on []*toml.Node, to Path, name, entry string) {
	n := on[len(on)-1]
	h := t.heading(n)
	if h < 0 {
		t.addSection(to, on[len(on)-2], to[len(to)-1], false, []string{entry})
		return
	}
	line := t.Headings[h].Line
	t.insertLines(line+1, t.indent(line)+entry)
}

// top is the line before which the first key of a file goes: that of its first key, after is where
// that stands; else above the first heading with its remarks; else the end.
func (t *text) top(after *toml.ByteRange) int {
	if after != nil {
		return t.LineAt(after.From)
	}
	if len(t.Headings) == 0 {
		return t.last() + 1
	}
	return t.Headings[0].Line
}

// kin finds, of the keys written in a table, the one after which another goes by the order of the
// table of keys; where there is none, the one before which it goes.
func kin(n *toml.Node, tree *keys.KeyTree, name string) (before, after *toml.ByteRange) {
	own := rank(tree, name)
	least, most := -1, -1
	for _, key := range n.Order {
		for _, r := range entries(n.Keys[key]) {
			k := rank(tree, key)
			if k <= own && k >= least {
				least, before = k, &r
			}
			if k > own && (most < 0 || k < most) {
				most, after = k, &r
			}
		}
	}
	return before, after
}

// rank is the place of a key in its table of keys; those that no table has come last.
func rank(tree *keys.KeyTree, name string) int {
	if tree != nil {
		if i := slices.Index(tree.Order, name); i >= 0 {
			return i
		}
		return len(tree.Order)
	}
	return 0
}

// entries are where a key, or those that dots make of it, stand with their values.
func entries(n *toml.Node) []toml.ByteRange {
	if n.Entry != (toml.ByteRange{}) {
		return []toml.ByteRange{n.Entry}
	}
	var all []toml.ByteRange
	if n.Dotted {
		for _, key := range n.Order {
			all = append(all, entries(n.Keys[key])...)
		}
	}
	return all
}

// addInBraces adds a key to a table that is written {...}.
func (t *text) addInBraces(n *toml.Node, tree *keys.KeyTree, name, entry string) {
	before, after := kin(n, tree, name)
	switch {
	case before != nil:
		t.insert(before.To, ", "+entry)
	case after != nil:
		t.insert(after.From, entry+", ")
	case t.empty(n.At):
		t.replace(n.At, "{ "+entry+" }")
	default:
		t.insert(n.At.From+1, " "+entry+" ")
	}
}

// empty tells whether there is nothing but white space within brackets or braces.
func (t *text) empty(r toml.ByteRange) bool {
	for _, c := range t.data[r.From+1 : r.To-1] {
		if c != ' ' && c != '\t' && c != '\r' && c != '\n' {
			return false
		}
	}
	return true
}
