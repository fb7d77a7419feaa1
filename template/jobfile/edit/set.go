package edit

import (
	"fmt"
	"strings"

	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// Set returns the text with the value at a path as source has it, which is a value as TOML writes
// it. One that is not there is added where its kin stand; with the source "" it is taken away. A
// number one past the last of a list adds to it.
//
// The error is of type job.Problems where the text is no TOML; otherwise it says that there is no
// such place, or that the source is no value. The text then comes back as it was.
func Set(data string, p Path, source string) (string, error) {
	if source == "" {
		return Remove(data, p)
	}
	if !isValue(source) {
		return data, fmt.Errorf("%s is no single value; write a text in quotes, a number, or a list in brackets", words.Quote(source))
	}
	return edited(data, func(t *text) error { return t.set(p, source) })
}

// isValue tells whether a text is one value of TOML, and nothing more.
func isValue(source string) bool {
	root, problems := toml.Parse([]byte("x = " + source))
	x := root.Keys["x"]
	return len(problems) == 0 && len(root.Order) == 1 && x != nil && x.Entry.From == 0 && x.At.From == 4 && x.At.To == 4+len(source)
}

func (t *text) set(p Path, source string) error {
	if len(p) == 0 || p[0] == "" {
		return missing(Path{"key"})
	}
	on := way(t.Root, p)
	at := on[len(on)-1]
	left := p[len(on)-1:]
	switch {
	case len(left) == 0 && at.At == (toml.ByteRange{}):
		return t.setTable(p, at, source)
	case len(left) == 0:
		t.put(at, source)
		return nil
	case at.Form == toml.Table:
		return t.grow(on, p[:len(on)-1], left, source)
	case at.Form == toml.Single:
		return fmt.Errorf("%s is a single value and has nothing in it; set it as a whole", words.Shown(p[:len(on)-1].String()))
	case len(left) == 1 && left[0] == fmt.Sprint(len(at.Items)) && at.Closed:
		t.append(at, source)
		return nil
	}
	return missing(p[:len(on)])
}

// setTable sets what is written as tables of its own, or with dots, and is to be a value. Of the tables
// that a job file knows it is refused.
func (t *text) setTable(p Path, at *toml.Node, source string) error {
	if tree := Tree(t.keys, p); tree != nil && !tree.InList || at.Form != toml.Table {
		return fmt.Errorf("%s is a table and not a value; set its keys one by one", words.Shown(p.String()))
	}
	t.drop(p, at)
	without, err := read(t.text())
	if err != nil {
		return err
	}
	if err := without.set(p, source); err != nil {
		return err
	}
	t.edits = []replacement{{toml.ByteRange{To: len(t.data)}, without.text()}}
	return nil
}

// put replaces a value. A text in single quotes stays so where it can, and a remark after it where it
// stood.
func (t *text) put(at *toml.Node, source string) {
	old := string(t.data[at.At.From:at.At.To])
	if bare, ok := plainText(source); ok && strings.HasPrefix(old, "'") && !strings.HasPrefix(old, "'''") && !strings.Contains(bare, "'") {
		source = "'" + bare + "'"
	}
	r := at.At
	if more := len([]rune(source)) - len([]rune(old)); more != 0 && !strings.Contains(old+source, "\n") {
		room := 0
		for r.To+room < len(t.data) && t.data[r.To+room] == ' ' {
			room++
		}
		if room > 1 && r.To+room < len(t.data) && t.data[r.To+room] == '#' {
			source += strings.Repeat(" ", max(1, room-more))
			r.To += room
		}
	}
	t.replace(r, source)
}

// plainText returns what a text in double quotes says; false where it has any sign that needs to be
// written otherwise in them, or is no such text.
func plainText(source string) (string, bool) {
	if len(source) < 2 || source[0] != '"' || strings.HasPrefix(source, `"""`) || strings.Contains(source, `\`) {
		return "", false
	}
	return source[1 : len(source)-1], true
}

// grow adds what is not there, left, to the last table on the way, which is at a path.
func (t *text) grow(on []*toml.Node, to, left Path, source string) error {
	for _, name := range left[1:] {
		if _, number := index(name); number {
			return missing(to.Sub(left[0], name))
		}
	}
	tree := Tree(t.keys, to.Sub(left[0]))
	braced := on[len(on)-1].Closed || on[len(on)-1].Dotted
	if len(left) > 1 && tree != nil && !tree.Many && !tree.InList && !braced {
		t.addSection(to.Sub(left[0]), on[len(on)-1], left[0], false, []string{spelled(left[1:]) + " = " + source})
		return nil
	}
	if tree != nil && !tree.InList && len(left) == 1 {
		return fmt.Errorf("%s is a table and not a value; set its keys one by one", words.Shown(to.Sub(left...).String()))
	}
	for i := len(left) - 1; i > 0; i-- {
		source = "{ " + spelled(left[i:i+1]) + " = " + source + " }"
	}
	t.addKey(on, to, left[0], source)
	return nil
}

// spelled writes names as a key, in quotes where they need them.
func spelled(names []string) string {
	parts := make([]string, len(names))
	for i, name := range names {
		parts[i] = name
		bare := func(c rune) bool {
			return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_'
		}
		if name == "" || strings.ContainsFunc(name, func(c rune) bool { return !bare(c) }) {
			parts[i] = words.TOML(name)
		}
	}
	return strings.Join(parts, ".")
}
