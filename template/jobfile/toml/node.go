package toml

import (
	"underlay/template/words"
)

// Node is a place in a job file: a table, a list, or a single value. The tree of them holds
// what was written, where, and as what.
type Node struct {
	Line   int
	Form   form
	Source string           // a single value as it was written
	Value  any              // what it says: a string, int64, float64, bool, or a date
	At     ByteRange        // where the value stands in the file; of a table under a heading nothing
	Entry  ByteRange        // from the key to the end of the value; of what has no key of its own nothing
	Name   ByteRange        // of the last of the key's names
	Keys   map[string]*Node // of a table
	Order  []string         // its keys as they came
	Items  []*Node          // of a list, or of a run of tables
	// opened: the table has had its own [heading]; without one it exists only because
	// something below it was named.
	Opened bool
	// dotted: the table was made by a key with a dot in it, as in paper.size = "A4".
	Dotted bool
	// closed: the table or the run of tables was written as a value, and nothing can be added.
	Closed bool
	// blamed: a problem of this place is reported already; one is enough.
	Blamed bool
	// meant is the known key an unknown one was probably to be.
	Meant string
}

// ByteRange is a run of bytes of a file: those from one offset up to another.
type ByteRange struct{ From, To int }

// form is what stands at a place.
type form int

const (
	Single form = iota
	List        // [1, 2]
	Table       // [name], or name = {...}
	Tables      // [[name]], once or more, or a list of {...}
)

func NewTable(line int) *Node { return &Node{Line: line, Form: Table, Keys: map[string]*Node{}} }

// NewText is a text that stands in no file.
func NewText(line int, text string) *Node {
	return &Node{Line: line, Form: Single, Source: words.TOML(text), Value: text}
}

// Put adds a place to a table.
func (n *Node) Put(key string, child *Node) {
	n.Keys[key] = child
	n.Order = append(n.Order, key)
}
