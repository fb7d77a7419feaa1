package edit

import (
	"fmt"
	"strings"

	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// Field is one key of a table to be added, and its value as TOML writes it.
type Field struct{ Key, Source string }

// Add returns the text with one more table at the end of a run of them, such as item.0.pass: a heading
// with its keys below, or {...} where the others are written so. Errors as those of Set.
func Add(data string, run Path, fields ...Field) (string, error) {
	return edited(data, func(t *text) error { return t.add(run, fields) })
}

func (t *text) add(run Path, fields []Field) error {
	on := way(t.Root, run)
	if len(run) == 0 || len(on) < len(run) {
		return missing(run[:max(1, len(on))])
	}
	above, name := on[len(run)-1], run[len(run)-1]
	if _, number := index(name); number || above.Form != toml.Table {
		return missing(run)
	}
	var lines []string
	for _, f := range fields {
		lines = append(lines, spelled([]string{f.Key})+" = "+f.Source)
	}
	braces := Braces(fields...)
	switch there := above.Keys[name]; {
	case there != nil && there.Closed && (there.Form == toml.Tables || len(there.Items) == 0 && there.Form == toml.List):
		t.append(there, braces)
	case there != nil && there.Form != toml.Tables:
		return fmt.Errorf("%s is there already, and is not written as one of several; write [[%[1]s]] for each", words.Shown(strings.Join(named(run), ".")))
	case there == nil && (above.Closed || above.Dotted || inList(Tree(t.keys, run))):
		t.addKey(on, run[:len(run)-1], name, "["+braces+"]")
	default:
		t.addSection(run, above, name, true, lines)
	}
	return nil
}

// inList tells whether tables are always written in a list, in braces.
func inList(tree *keys.KeyTree) bool { return tree != nil && tree.InList }

// Braces writes a table as a value.
func Braces(fields ...Field) string {
	var parts []string
	for _, f := range fields {
		parts = append(parts, spelled([]string{f.Key})+" = "+f.Source)
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}
