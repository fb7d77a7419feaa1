package jobfile

import (
	"strings"
)

// keyTree is what a job file may hold at a place: the keys of a table, and which of them are
// tables in turn.
type keyTree struct {
	path   string // "", "paper", "item.pass"
	many   bool   // written [[path]]
	order  []string
	keys   map[string]key
	tables map[string]*keyTree
	above  *keyTree // nil: the job itself
}

// newKeyTree is the tree of a whole job file.
func newKeyTree() *keyTree {
	root := &keyTree{}
	at := map[string]*keyTree{"": root}
	for _, k := range jobKeys() {
		t := at[k.in]
		t.add(k)
		if k.kind == oneTable || k.kind == manyTable {
			path := strings.TrimPrefix(k.in+"."+k.name, ".")
			below := &keyTree{path: path, many: k.kind == manyTable, above: t}
			if t.tables == nil {
				t.tables = map[string]*keyTree{}
			}
			t.tables[k.name], at[path] = below, below
		}
	}
	return root
}

func (t *keyTree) add(k key) {
	if t.keys == nil {
		t.keys = map[string]key{}
	}
	t.keys[k.name] = k
	t.order = append(t.order, k.name)
}

// heading is how the table is written.
func (t *keyTree) heading() string {
	switch {
	case t.path == "":
		return "the top of the file"
	case t.many:
		return "[[" + t.path + "]]"
	}
	return "[" + t.path + "]"
}

// home returns where a key belongs that another table has: the heading of that table, or the
// heading that the key itself is. It is the one table below or above this that has the key,
// else the only one that has; "" where there is none, or several it could be.
func (t *keyTree) home(name string) string {
	if h := t.homeBelow(name); len(h) == 1 {
		return h[0]
	}
	for up := t.above; up != nil; up = up.above {
		if h := up.own(name); h != "" {
			return h
		}
	}
	root := t
	for root.above != nil {
		root = root.above
	}
	if h := root.homeBelow(name); len(h) == 1 {
		return h[0]
	}
	return ""
}

// own is where the table has a key: its heading, or that of the table the key is; "" where it
// has no such key.
func (t *keyTree) own(name string) string {
	if below := t.tables[name]; below != nil {
		return below.heading()
	}
	if _, ok := t.keys[name]; ok {
		return t.heading()
	}
	return ""
}

// homeBelow lists where the tables below this one have a key.
func (t *keyTree) homeBelow(name string) []string {
	var homes []string
	for _, k := range t.order {
		if below := t.tables[k]; below != nil {
			if h := below.own(name); h != "" {
				homes = append(homes, h)
			}
			homes = append(homes, below.homeBelow(name)...)
		}
	}
	return homes
}
