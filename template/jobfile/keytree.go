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
	above  *keyTree             // nil: the job itself
	other  map[string]otherName // what else its keys are called
	listed map[string]bool      // keys of other tables that mean something else here
}

// newKeyTree is the tree of a whole job file.
func newKeyTree() *keyTree {
	root := &keyTree{}
	root.prepare()
	at := map[string]*keyTree{"": root}
	for _, k := range jobKeys() {
		t := at[k.in]
		t.add(k)
		if k.kind == oneTable || k.kind == manyTable {
			path := strings.TrimPrefix(k.in+"."+k.name, ".")
			below := &keyTree{path: path, many: k.kind == manyTable, above: t}
			below.prepare()
			t.tables[k.name], at[path] = below, below
		}
	}
	for _, n := range otherNames() {
		for _, w := range strings.Fields(n.called) {
			at[n.in].other[w] = n
		}
	}
	for _, n := range listed() {
		for _, w := range strings.Fields(n.called) {
			at[n.in].listed[w] = true
		}
	}
	return root
}

func (t *keyTree) prepare() {
	t.keys, t.tables = map[string]key{}, map[string]*keyTree{}
	t.other, t.listed = map[string]otherName{}, map[string]bool{}
}

func (t *keyTree) add(k key) {
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

// home says where a key belongs that another table has: the one table below or above this
// that has the key, else the only one that has; "" where there is none, or several it could be.
func (t *keyTree) home(name string) string {
	if homes := t.homesBelow(name); len(homes) == 1 {
		return homes[0]
	}
	root := t
	for up := t.above; up != nil; up = up.above {
		if h := up.own(name); h != "" {
			return h
		}
		root = up
	}
	if homes := root.homesBelow(name); len(homes) == 1 {
		return homes[0]
	}
	return ""
}

// own says that a key belongs in this table; "" where it has no such key.
func (t *keyTree) own(name string) string {
	if below := t.tables[name]; below != nil {
		return "write " + below.heading()
	}
	if _, ok := t.keys[name]; !ok {
		return ""
	}
	if t.path == "" {
		return "it belongs at the top of the file, above all headings"
	}
	return "it belongs in " + t.heading()
}

// homesBelow lists which tables below this one have a key.
func (t *keyTree) homesBelow(name string) []string {
	var homes []string
	for _, k := range t.order {
		if below := t.tables[k]; below != nil {
			if h := below.own(name); h != "" {
				homes = append(homes, h)
			}
			homes = append(homes, below.homesBelow(name)...)
		}
	}
	return homes
}
