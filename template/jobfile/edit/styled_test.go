package edit_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"underlay/template/words"
)

// styler writes tables as TOML in any of the forms it has: headings, dots, braces, lists on one line
// or many; with remarks and blank lines, each remark with a number of its own.
type styler struct {
	*rand.Rand
	lines   []string
	remarks map[string]string // the path of the table that a remark stands in
	end     string
}

// order is the order in which keys are written that may come in any.
func (s *styler) order(m map[string]any) []string {
	var names []string
	for name := range m {
		names = append(names, name)
	}
	slices.Sort(names)
	s.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	return names
}

func (s *styler) remark(path string) string {
	r := fmt.Sprintf("# remark %d ] } , \" '", len(s.remarks))
	s.remarks[r] = path
	return r
}

func (s *styler) put(indent, line, path string) {
	for s.IntN(5) == 0 {
		s.lines = append(s.lines, indent+s.remark(path))
	}
	if s.IntN(5) == 0 && line[0] != '[' && !strings.Contains(line, "\n") {
		line += "    " + s.remark(path)
	}
	s.lines = append(s.lines, indent+line)
}

// table writes the keys of a table, then the tables in it.
func (s *styler) table(m map[string]any, path []string, numbered string, indent string) {
	var later []string
	for _, name := range s.order(m) {
		v := m[name]
		switch v := v.(type) {
		case map[string]any:
			switch s.IntN(3) {
			case 0:
				later = append(later, name)
				continue
			case 1:
				if len(v) > 0 {
					for _, key := range s.order(v) {
						s.put(indent, s.key(name)+"."+s.key(key)+" = "+s.value(v[key], false), numbered)
					}
					continue
				}
			}
		case []any:
			if _, tables := v[0].(map[string]any); tables && s.IntN(4) > 0 {
				later = append(later, name)
				continue
			}
		}
		s.put(indent, s.key(name)+" = "+s.value(v, true), numbered)
	}
	for _, name := range later {
		to := append(slices.Clone(path), s.key(name))
		switch v := m[name].(type) {
		case map[string]any:
			s.heading(indent, "["+strings.Join(to, ".")+"]", join(numbered, name))
			s.table(v, to, join(numbered, name), indent)
		case []any:
			for i, t := range v {
				at := join(numbered, name, fmt.Sprint(i))
				s.heading(indent, "[["+strings.Join(to, ".")+"]]", at)
				s.table(t.(map[string]any), to, at, indent+strings.Repeat(" ", s.IntN(3)))
			}
		}
	}
}

func join(parts ...string) string { return strings.TrimPrefix(strings.Join(parts, "."), ".") }

func (s *styler) heading(indent, text, path string) {
	if s.IntN(3) > 0 {
		s.lines = append(s.lines, "")
	}
	if s.IntN(4) == 0 && len(s.lines) > 0 {
		s.lines = append(s.lines, indent+s.remark(path))
	}
	if s.IntN(4) == 0 {
		text += " " + s.remark(path)
	}
	s.lines = append(s.lines, indent+text)
}

func (s *styler) key(name string) string {
	if strings.ContainsAny(name, " .é") || s.IntN(9) == 0 {
		return words.TOML(name)
	}
	return name
}

// value writes a value; broken: it may go over several lines.
func (s *styler) value(v any, broken bool) string {
	sep := []string{", ", ",", " , "}[s.IntN(3)]
	switch v := v.(type) {
	case string:
		if s.IntN(2) == 0 && !strings.ContainsAny(v, "'\n") {
			return "'" + v + "'"
		}
		if broken && s.IntN(9) == 0 && !strings.ContainsAny(v, `\"`) {
			return `"""` + "\n" + v + `"""`
		}
		return words.TOML(v)
	case []any:
		var parts []string
		for _, x := range v {
			parts = append(parts, s.value(x, false))
		}
		if broken && s.IntN(2) == 0 && len(parts) > 0 {
			out := "[\n"
			for i, p := range parts {
				out += "  " + p
				if i < len(parts)-1 || s.IntN(2) == 0 {
					out += ","
				}
				if s.IntN(4) == 0 {
					out += " # ] of this, one"
				}
				out += "\n"
			}
			return out + "]"
		}
		return "[" + strings.Join(parts, sep) + "]"
	case map[string]any:
		var parts []string
		for _, name := range s.order(v) {
			parts = append(parts, s.key(name)+" = "+s.value(v[name], false))
		}
		return "{" + strings.Join(parts, sep) + "}"
	}
	return fmt.Sprint(v)
}

// String is all that was written.
func (s *styler) String() string {
	text := strings.Join(s.lines, "\n")
	if s.IntN(4) > 0 {
		text += "\n"
	}
	return strings.ReplaceAll(text, "\n", s.end)
}
