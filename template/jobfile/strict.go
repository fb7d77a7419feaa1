package jobfile

import (
	"slices"
	"strings"

	"underlay/template/words"
)

// shaped reports unknown keys, and tables written as something else. It tells whether the
// rest can be read in spite of them.
func (r *reader) shaped(n *node, s *keyTree) bool {
	ok := true
	for _, key := range n.order {
		child, below := n.keys[key], s.tables[key]
		known := slices.Contains(s.order, key)
		switch {
		case !known:
			r.unknownKey(n, key, s)
			// A whole table amiss: what is said to be missing later would be in it.
			ok = ok && (child.form == single || child.form == list)
		case below == nil:
		case below.many && child.form == tables:
			for _, item := range child.items {
				ok = r.shaped(item, below) && ok
			}
		case below.many && child.form == list && len(child.items) == 0:
		case !below.many && child.form == table:
			ok = r.shaped(child, below) && ok
		default:
			ok = false
			r.misshapen(child, below)
		}
	}
	return ok
}

// misshapen reports a known table that is not written as one, or as the wrong kind.
func (r *reader) misshapen(n *node, s *keyTree) {
	last := s.path[strings.LastIndex(s.path, ".")+1:]
	switch {
	case n.form == single || n.form == list:
		r.add(n.line, "", last+" is a table, not a value; write "+s.heading()+" on a line of its own, and its keys below")
	case s.many && !n.opened:
		r.add(n.line, "", "this stands before the first "+s.heading()+"; move it below the "+s.heading()+" it belongs to")
	case s.many:
		r.add(n.line, "", "["+s.path+"] needs two brackets on each side; write "+s.heading())
	default:
		r.add(n.line, "", "there is only one "+last+", so it has one bracket on each side; write "+s.heading())
	}
}

// unknownKey reports a key that no job file has at this place.
func (r *reader) unknownKey(n *node, key string, t *keyTree) {
	child := n.keys[key]
	child.blamed = true
	what := "unknown key " + words.Quote(key)
	isTable := child.form == table || child.form == tables && !child.closed
	if isTable {
		what = "unknown table " + words.Quote(key)
	}
	write, elsewhere := t.advice(child, key)
	if elsewhere {
		what += " here"
	}
	text := what + "; " + write
	if child.form == tables && !child.closed {
		for _, item := range child.items {
			r.add(item.line, "", text)
		}
		return
	}
	r.add(child.line, "", text)
}

// advice says what to write in place of an unknown key, and notes in its node which is meant;
// elsewhere: it is a key of another table.
func (t *keyTree) advice(child *node, key string) (write string, elsewhere bool) {
	plain := words.Plain(key)
	if _, ok := t.keys[plain]; ok {
		child.meant = plain
		return "write " + t.asWritten(child, plain), false
	}
	if c, ok := t.other[plain]; ok {
		child.meant = c.key
		if c.write != "" {
			return "write " + c.write, false
		}
		return "write " + t.asWritten(child, c.key), false
	}
	if home := t.home(plain); home != "" && !t.listed[plain] {
		return home, true
	}
	if near, ok := words.Nearest(key, t.order); ok {
		child.meant = near
		return "write " + t.asWritten(child, near), false
	}
	return "the keys of " + t.heading() + " are " + strings.Join(t.order, ", "), false
}

// asWritten is the key that was meant, as it is to be written: a table with its brackets, and a
// list with what the maker wrote, where that is no list yet.
func (t *keyTree) asWritten(child *node, name string) string {
	if below := t.tables[name]; below != nil {
		return below.heading()
	}
	if text, single := child.value.(string); single && isListKind(t.keys[name].kind) {
		return name + " = [" + words.Quote(text) + "]"
	}
	return words.Quote(name)
}

func isListKind(k kind) bool { return k == nameList || k == wordList || k == turnRows }
