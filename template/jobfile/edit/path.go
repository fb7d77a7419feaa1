package edit

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// Path is the way from the top of a job to a place in it: names of keys, and in runs of tables and
// in lists numbers counted from 0: item, 0, pass, 1, gap.
type Path []string

// ParsePath reads a path as it is written, with dots: item.0.pass.1.gap. A name with a dot or a quote
// in it stands in quotes, as in TOML.
func ParsePath(s string) (Path, error) {
	wrong := fmt.Errorf("%s is no path to a place in a job; write one such as item.0.size", words.Quote(s))
	if !utf8.ValidString(s) {
		return nil, wrong
	}
	var p Path
	for rest := s; ; {
		var name string
		if strings.HasPrefix(rest, `"`) {
			quoted, err := strconv.QuotedPrefix(rest)
			if err == nil {
				name, err = strconv.Unquote(quoted)
			}
			if err != nil || !utf8.ValidString(name) {
				return nil, wrong
			}
			rest = rest[len(quoted):]
		} else {
			end := strings.IndexByte(rest, '.')
			if end < 0 {
				end = len(rest)
			}
			name, rest = rest[:end], rest[end:]
		}
		p = append(p, name)
		if rest == "" {
			return p, nil
		}
		if rest[0] != '.' || name == "" {
			return nil, wrong
		}
		rest = rest[1:]
	}
}

// String writes a path as ParsePath reads it.
func (p Path) String() string {
	parts := make([]string, len(p))
	for i, name := range p {
		parts[i] = name
		if name == "" || strings.ContainsAny(name, `."\`) {
			parts[i] = strconv.Quote(name)
		}
	}
	return strings.Join(parts, ".")
}

// Sub returns the path of a place within.
func (p Path) Sub(names ...string) Path {
	return append(append(Path{}, p...), names...)
}

// step returns the place of a name in a table, or of a number in a list; nil where there is none.
func step(n *toml.Node, name string) *toml.Node {
	if n.Form == toml.Table {
		return n.Keys[name]
	}
	if i, ok := index(name); ok && i < len(n.Items) {
		return n.Items[i]
	}
	return nil
}

// index reads a number of a path.
func index(name string) (int, bool) {
	i, err := strconv.Atoi(name)
	return i, err == nil && i >= 0 && strconv.Itoa(i) == name
}

// Find returns the place that a path leads to; nil where there is none.
func Find(root *toml.Node, p Path) *toml.Node {
	for _, name := range p {
		if root = step(root, name); root == nil {
			return nil
		}
	}
	return root
}

// Tree returns what the table at a path may hold; nil where it is none that a job file knows.
func Tree(root *keys.KeyTree, p Path) *keys.KeyTree {
	for _, name := range p {
		if root == nil {
			return nil
		}
		if _, number := index(name); !number {
			root = root.Tables[name]
		}
	}
	return root
}

// way returns the places that a path leads past, the root first, up to the last that is there.
func way(root *toml.Node, p Path) []*toml.Node {
	all := []*toml.Node{root}
	for _, name := range p {
		next := step(all[len(all)-1], name)
		if next == nil {
			break
		}
		all = append(all, next)
	}
	return all
}

// missing says that there is nothing at a path.
func missing(p Path) error {
	if i, ok := index(p[len(p)-1]); ok && len(p) > 1 {
		return fmt.Errorf("there is no %s number %d; add it first", words.Shown(p[len(p)-2]), i+1)
	}
	return fmt.Errorf("there is no %s here; add it first", words.Shown(p.String()))
}
