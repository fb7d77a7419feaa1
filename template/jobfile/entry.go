package jobfile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// longestName is the most characters a name may have.
const longestName = 300

// section is one table of the job file being checked.
type section struct {
	r     *reader
	node  *toml.Node
	keys  *keys.KeyTree // those its table can have
	label string        // what a message calls it: `item "book bag"`
}

// entry is one key of a section, or one place in its list, with its value.
type entry struct {
	s      section
	key    string
	node   *toml.Node // nil: not given
	inList bool
}

func (s section) key(key string) entry { return entry{s: s, key: key, node: s.node.Keys[key]} }

// value is what a single value says; of a list or a table it is the node; nil: not given.
func (e entry) value() any {
	switch {
	case e.node == nil:
		return nil
	case e.node.Form != toml.Single:
		return e.node
	}
	return e.node.Value
}

// report adds a problem of a place, unless one is reported there already.
func (s section) report(at *toml.Node, key, format string, args ...any) {
	if at.Blamed {
		return
	}
	at.Blamed = true
	s.r.add(at.Line, key, fmt.Sprintf(format, args...))
}

// say reports a problem of the section as a whole, at its heading. There may be several.
func (s section) say(format string, args ...any) {
	s.r.add(s.node.Line, "", fmt.Sprintf(format, args...))
}

// has tells whether a key is given, or was meant by one that is misspelt.
func (s section) has(key string) bool {
	if s.node.Keys[key] != nil {
		return true
	}
	for _, n := range s.node.Keys {
		if n.Meant == key {
			return true
		}
	}
	return false
}

// needs reports a key that must be there and is not.
func (s section) needs(key, example string) {
	if !s.has(key) {
		s.say("%s has no %s; add %s = %s", s.label, key, key, example)
	}
}

// below returns a table of the section; one that is not there is empty.
func (s section) below(key string) section {
	n := s.node.Keys[key]
	if n == nil {
		n = toml.NewTable(s.node.Line)
	}
	return section{r: s.r, node: n, keys: s.keys.Tables[key], label: "[" + key + "]"}
}

// run returns the tables of a run, [[key]], in order.
func (s section) run(key string) []section {
	at := s.node.Keys[key]
	if at == nil || at.Form != toml.Tables {
		return nil
	}
	var run []section
	for _, n := range at.Items {
		run = append(run, section{r: s.r, node: n, keys: s.keys.Tables[key], label: "this " + key})
	}
	return run
}

// named returns the section as one of those called thing, and its name; lines are those of the
// names so far.
func (s section) named(thing, example string, lines map[string]int) (section, string) {
	name := s.uniqueName(thing, example, lines)
	if name != "" {
		s.label = thing + " " + words.Quote(name)
	}
	return s, name
}

// uniqueName reads the name of a thing, and refuses one that another thing has already.
// It returns "" where there is none.
func (s section) uniqueName(thing, example string, lines map[string]int) string {
	e := s.key("name")
	name, ok := e.name(example)
	if !ok {
		s.needs("name", words.Quote(example))
		return ""
	}
	if line := lines[name]; line > 0 {
		e.say("%s is the name of the %s in line %d already; write another name for one of them", words.Quote(name), thing, line)
		return name
	}
	lines[name] = e.node.Line
	return name
}

// given tells whether the key is there at all, good or bad.
func (e entry) given() bool { return e.node != nil }

// faulty tells whether a key is there, and something has been said against it.
func (s section) faulty(key string) bool {
	n := s.node.Keys[key]
	return n != nil && n.Blamed
}

// say reports a problem of the value; the key is put before it.
func (e entry) say(format string, args ...any) {
	at := e.node
	if at == nil {
		at = e.s.node
	}
	e.s.report(at, e.key, format, args...)
}

// wrong reports a value of the wrong kind.
func (e entry) wrong(is, write string) {
	if e.inList {
		e.s.report(e.node, e.key, "%s; write %s", is, write)
		return
	}
	e.s.report(e.node, "", "%s = %s; write %s = %s", e.key, is, e.key, write)
}

// wrongKind reports a value that is, say, a list where a text should be.
func (e entry) wrongKind(write string) {
	is := words.Shown(e.node.Source)
	switch e.node.Form {
	case toml.List:
		is = "[...] is a list"
	case toml.Table, toml.Tables:
		is = "{...} is a table"
	case toml.Single:
		is += " is " + kindOf(e.value())
	}
	e.wrong(is, write)
}

func kindOf(v any) string {
	switch v.(type) {
	case string:
		return "a text"
	case int64, float64:
		return "a number without quotes"
	case bool:
		return "neither text nor number"
	}
	return "a date"
}

// text reads a text.
func (e entry) text(example string) (string, bool) {
	switch v := e.value().(type) {
	case nil:
		return "", false
	case string:
		return v, true
	case int64, float64:
		e.wrong(words.Shown(e.node.Source)+" is a number without quotes", words.Quote(e.node.Source))
	default:
		e.wrongKind(words.Quote(example))
	}
	return "", false
}

// name reads what the maker calls a thing.
func (e entry) name(example string) (string, bool) {
	s, ok := e.text(example)
	switch {
	case !ok:
		return "", false
	case strings.TrimSpace(s) == "":
		e.say("the name is empty; write one such as %s", words.Quote(example))
		return "", false
	case utf8.RuneCountInString(s) > longestName:
		e.say("this name is longer than %d characters; write a shorter one", longestName)
		return "", false
	}
	return s, true
}

// word reads one of a few known words; otherwise where the key is not given.
func (e entry) word(known []string, otherwise string) (string, bool) {
	s, ok := e.text(known[0])
	if !ok {
		return otherwise, !e.given()
	}
	return s, e.knows(s, known)
}

// word reads a key that is one of a few words, the usual one where it is not given.
func (s section) word(key string) (string, bool) {
	known := s.keys.Keys[key].Words
	return s.key(key).word(known, known[0])
}

// knows tells whether s is one of the known words, and reports where it is not.
func (e entry) knows(s string, known []string) bool {
	if slices.Contains(known, s) {
		return true
	}
	e.say("%s", notKnown(s, known))
	return false
}

// notKnown says of a word that it is none of those known.
func notKnown(word string, known []string) string {
	return fmt.Sprintf("%s is not known here; write %s", words.Quote(word), keys.Instead(word, known))
}

// yes reads true or false.
func (e entry) yes() (bool, bool) {
	v, ok := e.value().(bool)
	if !ok && e.given() {
		e.wrongKind("true or false")
	}
	return v, ok
}

// asList is how a list is written: for turns with the number the maker gave, else as the example.
func (e entry) asList(example string) string {
	var turn float64
	switch v := e.value().(type) {
	case int64:
		turn = float64(v)
	case float64:
		turn = v
	}
	quarters := math.Mod(turn/90, 4)
	if e.key != "turns" || quarters != math.Trunc(quarters) {
		return example
	}
	return "[" + words.Quote(strconv.Itoa(90*((int(quarters)+4)%4))) + "]"
}

// isList tells whether a list is given.
func (e entry) isList() bool {
	return e.node != nil && (e.node.Form == toml.List || e.node.Form == toml.Tables && e.node.Closed)
}

// list reads a list; example is how one looks.
func (e entry) list(example string) ([]entry, bool) {
	if !e.given() {
		return nil, false
	}
	if !e.isList() {
		if s, text := e.value().(string); text {
			e.wrong(words.Quote(s)+" is not a list", "["+words.Quote(s)+"]")
		} else {
			e.wrongKind(e.asList(example))
		}
		return nil, false
	}
	if len(e.node.Items) == 0 {
		e.wrong("[] is empty", example+", or leave the line out")
		return nil, false
	}
	entries := make([]entry, len(e.node.Items))
	for i, n := range e.node.Items {
		entries[i] = entry{s: e.s, key: e.key, node: n, inList: true}
	}
	return entries, true
}
