package jobfile

import (
	"slices"
	"strings"

	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// shaped reports unknown keys, and tables written as something else. It tells whether the
// rest can be read in spite of them.
func (r *reader) shaped(n *toml.Node, s *keys.KeyTree) bool {
	ok := true
	for _, key := range n.Order {
		child, below := n.Keys[key], s.Tables[key]
		known := slices.Contains(s.Order, key)
		switch {
		case !known:
			r.unknownKey(n, key, s)
			// A whole table amiss: what is said to be missing later would be in it.
			ok = ok && (child.Form == toml.Single || child.Form == toml.List)
		case below == nil:
		case below.InList:
			// What is no table there is told by the check of the key.
			for _, item := range child.Items {
				if item.Form == toml.Table {
					ok = r.shaped(item, below) && ok
				}
			}
		case below.Many && child.Form == toml.Tables:
			for _, item := range child.Items {
				ok = r.shaped(item, below) && ok
			}
		case below.Many && child.Form == toml.List && len(child.Items) == 0:
		case !below.Many && child.Form == toml.Table:
			ok = r.shaped(child, below) && ok
		default:
			ok = false
			r.misshapen(child, below)
		}
	}
	return ok
}

// misshapen reports a known table that is not written as one, or as the wrong kind.
func (r *reader) misshapen(n *toml.Node, s *keys.KeyTree) {
	last := s.Path[strings.LastIndex(s.Path, ".")+1:]
	switch {
	case n.Form == toml.Single || n.Form == toml.List:
		r.add(n.Line, "", last+" is a table, not a value; write "+s.Heading()+" on a line of its own, and its keys below")
	case s.Many && !n.Opened:
		r.add(n.Line, "", "this stands before the first "+s.Heading()+"; move it below the "+s.Heading()+" it belongs to")
	case s.Many:
		r.add(n.Line, "", "["+s.Path+"] needs two brackets on each side; write "+s.Heading())
	default:
		r.add(n.Line, "", "there is only one "+last+", so it has one bracket on each side; write "+s.Heading())
	}
}

// unknownKey reports a key that no job file has at this place.
func (r *reader) unknownKey(n *toml.Node, key string, t *keys.KeyTree) {
	child := n.Keys[key]
	child.Blamed = true
	what := "unknown key " + words.Quote(key)
	isTable := child.Form == toml.Table || child.Form == toml.Tables && !child.Closed
	if isTable {
		what = "unknown table " + words.Quote(key)
	}
	write, elsewhere := advice(t, child, key)
	if elsewhere {
		what += " here"
	}
	text := what + "; " + write
	if child.Form == toml.Tables && !child.Closed {
		for _, item := range child.Items {
			r.add(item.Line, "", text)
		}
		return
	}
	r.add(child.Line, "", text)
}

// advice says what to write in place of an unknown key, and notes in its node which is meant;
// elsewhere: it is a key of another table.
func advice(t *keys.KeyTree, child *toml.Node, key string) (write string, elsewhere bool) {
	plain := words.Plain(key)
	if _, ok := t.Keys[plain]; ok {
		child.Meant = plain
		return "write " + asWritten(t, child, plain), false
	}
	if c, ok := t.Other[plain]; ok {
		child.Meant = c.Key
		if c.Write != "" {
			return "write " + c.Write, false
		}
		return "write " + asWritten(t, child, c.Key), false
	}
	if home := t.Home(plain); home != "" && !t.Listed[plain] {
		return home, true
	}
	if near, ok := words.Nearest(key, t.Order); ok {
		child.Meant = near
		return "write " + asWritten(t, child, near), false
	}
	return "the keys of " + t.Heading() + " are " + strings.Join(t.Order, ", "), false
}

// asWritten is the key that was meant, as it is to be written: a table with its brackets, and a
// list with what the maker wrote, where that is no list yet.
func asWritten(t *keys.KeyTree, child *toml.Node, name string) string {
	if below := t.Tables[name]; below != nil {
		return below.Written()
	}
	if text, single := child.Value.(string); single && isListKind(t.Keys[name].Kind) {
		return name + " = [" + words.Quote(text) + "]"
	}
	return words.Quote(name)
}

func isListKind(k keys.Kind) bool {
	return k == keys.NameList || k == keys.WordList || k == keys.TurnRows
}
