package keys

import (
	"strings"
)

// KeyTree is what a job file may hold at a place: the keys of a table, and which of them are
// tables in turn.
type KeyTree struct {
	Path   string // "", "paper", "item.pass"
	Many   bool   // written [[path]]
	InList bool   // written in braces, in the list of a key
	Order  []string
	Keys   map[string]key
	Tables map[string]*KeyTree
	above  *KeyTree             // nil: the job itself
	Other  map[string]otherName // what else its keys are called
	Listed map[string]bool      // keys of other tables that mean something else here
}

// NewKeyTree is the tree of a whole job file.
func NewKeyTree() *KeyTree {
	root := &KeyTree{}
	root.prepare()
	at := map[string]*KeyTree{"": root}
	for _, k := range jobKeys() {
		t := at[k.in]
		t.add(k)
		if k.Kind == oneTable || k.Kind == manyTable || k.Kind == DabList {
			path := strings.TrimPrefix(k.in+"."+k.name, ".")
			below := &KeyTree{Path: path, Many: k.Kind == manyTable, InList: k.Kind == DabList, above: t}
			below.prepare()
			t.Tables[k.name], at[path] = below, below
		}
	}
	for _, n := range otherNames() {
		for _, w := range strings.Fields(n.called) {
			at[n.in].Other[w] = n
		}
	}
	for _, n := range listed() {
		for _, w := range strings.Fields(n.called) {
			at[n.in].Listed[w] = true
		}
	}
	return root
}

func (t *KeyTree) prepare() {
	t.Keys, t.Tables = map[string]key{}, map[string]*KeyTree{}
	t.Other, t.Listed = map[string]otherName{}, map[string]bool{}
}

func (t *KeyTree) add(k key) {
	t.Keys[k.name] = k
	t.Order = append(t.Order, k.name)
}

// Heading is how the table is written.
func (t *KeyTree) Heading() string {
	switch {
	case t.Path == "":
		return "the top of the file"
	case t.InList:
		return t.name() + " of " + t.above.Heading()
	case t.Many:
		return "[[" + t.Path + "]]"
	}
	return "[" + t.Path + "]"
}

// name is what the table is called in the one above it.
func (t *KeyTree) name() string { return t.Path[strings.LastIndex(t.Path, ".")+1:] }

// Written is how the table is begun.
func (t *KeyTree) Written() string {
	if t.InList {
		return t.name() + " = " + t.above.Keys[t.name()].example
	}
	return t.Heading()
}

// Home says where a key belongs that another table has: the one table below or above this
// that has the key, else the only one that has; "" where there is none, or several it could be.
func (t *KeyTree) Home(name string) string {
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
func (t *KeyTree) own(name string) string {
	if below := t.Tables[name]; below != nil {
		return "write " + below.Written()
	}
	if _, ok := t.Keys[name]; !ok {
		return ""
	}
	if t.InList {
		return "it belongs in " + t.Heading() + ", as in " + t.Written()
	}
	if t.Path == "" {
		return "it belongs at the top of the file, above all headings"
	}
	return "it belongs in " + t.Heading()
}

// homesBelow lists which tables below this one have a key.
func (t *KeyTree) homesBelow(name string) []string {
	var homes []string
	for _, k := range t.Order {
		if below := t.Tables[k]; below != nil {
			if h := below.own(name); h != "" {
				homes = append(homes, h)
			}
			homes = append(homes, below.homesBelow(name)...)
		}
	}
	return homes
}
