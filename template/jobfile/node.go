package jobfile

import "underlay/template/words"

// node is a place in a job file: a table, a list, or a single value. The tree of them holds
// what was written, where, and as what.
type node struct {
	line   int
	form   form
	source string           // a single value as it was written
	value  any              // what it says: a string, int64, float64, bool, or a date
	at     byteRange        // where its source stands in the file; of {...} its first brace
	keys   map[string]*node // of a table
	order  []string         // its keys as they came
	items  []*node          // of a list, or of a run of tables
	// opened: the table has had its own [heading]; without one it exists only because
	// something below it was named.
	opened bool
	// dotted: the table was made by a key with a dot in it, as in paper.size = "A4".
	dotted bool
	// closed: the table or the run of tables was written as a value, and nothing can be added.
	closed bool
	// blamed: a problem of this place is reported already; one is enough.
	blamed bool
	// meant is the known key an unknown one was probably to be.
	meant string
}

// byteRange is a run of bytes of a file: those from one offset up to another.
type byteRange struct{ from, to int }

// form is what stands at a place.
type form int

const (
	single form = iota
	list        // [1, 2]
	table       // [name], or name = {...}
	tables      // [[name]], once or more, or a list of {...}
)

func newTable(line int) *node { return &node{line: line, form: table, keys: map[string]*node{}} }

// newText is a text that stands in no file.
func newText(line int, text string) *node {
	return &node{line: line, form: single, source: words.TOML(text), value: text}
}

// put adds a place to a table.
func (n *node) put(key string, child *node) {
	n.keys[key] = child
	n.order = append(n.order, key)
}
