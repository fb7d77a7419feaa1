package jobfile

import (
	"errors"
	"fmt"
	"sort"
	"strings"

	"underlay/template/job"
	"underlay/template/words"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
	"golang.org/x/text/unicode/norm"
)

// treeParser builds the tree of a job file.
type treeParser struct {
	parser   unstable.Parser
	ends     []int // offsets of the line ends
	root     *node
	current  *node
	problems job.Problems
	headings []heading // as they came
}

// heading is where a [heading] or a [[heading]] stands, and the first of its names.
type heading struct {
	name string
	line int
}

// parse reads a job file into a tree. Text that is no TOML, and keys or tables given twice, are
// problems.
func parse(data []byte) (*node, job.Problems) {
	p := parseTree(data)
	return p.root, p.problems
}

// parseTree also says where the headings are.
func parseTree(data []byte) *treeParser {
	p := &treeParser{root: newTable(1)}
	for i, c := range data {
		if c == '\n' {
			p.ends = append(p.ends, i)
		}
	}
	p.current = p.root
	p.parser.Reset(data)
	for p.parser.NextExpression() {
		e := p.parser.Expression()
		switch e.Kind {
		case unstable.Table:
			p.heading(e, false)
		case unstable.ArrayTable:
			p.heading(e, true)
		case unstable.KeyValue:
			p.keyValue(p.current, e)
		}
	}
	var broken *unstable.ParserError
	if errors.As(p.parser.Error(), &broken) {
		line := p.lineAt(int(p.parser.Range(broken.Highlight).Offset))
		p.report(line, "%s", syntaxText(p.lineText(line), broken.Message))
	}
	return p
}

func (p *treeParser) report(line int, format string, args ...any) {
	p.problems = append(p.problems, job.Problem{Line: line, Text: fmt.Sprintf(format, args...)})
}

// lineAt returns the line of an offset, counted from 1.
func (p *treeParser) lineAt(offset int) int { return sort.SearchInts(p.ends, offset) + 1 }

// lineText returns a line without its end.
func (p *treeParser) lineText(line int) string {
	data := p.parser.Data()
	from, to := 0, len(data)
	if line > 1 {
		from = p.ends[line-2] + 1
	}
	if line <= len(p.ends) {
		to = p.ends[line-1]
	}
	return strings.TrimSuffix(string(data[from:to]), "\r")
}

// heading enters the table of a [heading] or a [[heading]].
func (p *treeParser) heading(e *unstable.Node, many bool) {
	names, line := p.names(e)
	p.headings = append(p.headings, heading{names[0], line})
	at := p.descend(p.root, names[:len(names)-1], line, false)
	// What stands below a heading that is refused still gets its places, outside the tree.
	p.current = newTable(line)
	if at == nil {
		return
	}
	last := names[len(names)-1]
	shown := strings.Join(names, ".")
	there := at.keys[last]
	switch {
	case there == nil && many:
		run := &node{line: line, form: tables, items: []*node{p.current}}
		at.put(last, run)
	case there == nil:
		p.current.opened = true
		at.put(last, p.current)
	case there.closed || there.dotted:
		p.report(line, "%s is there twice, first in line %d; keep one of them", shown, there.line)
	case many && there.form == tables:
		there.items = append(there.items, p.current)
	case many && there.form == table && !there.opened:
		p.report(there.line, "this stands before the first [[%s]]; move it below the [[%s]] it belongs to", shown, shown)
	case !many && there.form == tables:
		p.report(line, "[%s] needs two brackets on each side, as in line %d; write [[%s]]", shown, there.line, shown)
	case !many && there.form == table && !there.opened:
		there.opened, there.line = true, line
		p.current = there
	case !many && there.form == table:
		p.report(line, "[%s] is there twice, first in line %d; put its keys under one of them", shown, there.line)
	default:
		p.report(line, "%s is there twice, first in line %d; keep one of them", shown, there.line)
	}
}

// descend follows names from a table, making the tables that are not there; nil where one of
// them cannot have more keys. The names may be those of a heading, or of a key with dots.
func (p *treeParser) descend(at *node, names []string, line int, dotted bool) *node {
	for _, name := range names {
		next := at.keys[name]
		switch {
		case next == nil:
			next = newTable(line)
			next.dotted = dotted
			at.put(name, next)
		case next.closed || dotted && (next.opened || next.form == tables):
			p.report(line, "%s is there already, in line %d; put all its keys there", words.Shown(name), next.line)
			return nil
		case next.form == tables:
			next = next.items[len(next.items)-1]
		case next.form != table:
			p.report(line, "%s is a single value in line %d and cannot have keys of its own; take one of them out", words.Shown(name), next.line)
			return nil
		}
		at = next
	}
	return at
}

// keyValue adds a key to a table.
func (p *treeParser) keyValue(at *node, e *unstable.Node) {
	names, line := p.names(e)
	if at = p.descend(at, names[:len(names)-1], line, true); at == nil {
		return
	}
	last := names[len(names)-1]
	value := p.value(e.Value(), line)
	if there := at.keys[last]; there != nil {
		p.report(line, "%s is there twice, first in line %d; keep one of them", words.Shown(last), there.line)
		return
	}
	at.put(last, value)
}

// value returns the place of a value that begins in a line.
func (p *treeParser) value(v *unstable.Node, line int) *node {
	if v.Raw.Length > 0 {
		line = p.lineAt(int(v.Raw.Offset))
	}
	switch v.Kind {
	case unstable.InlineTable:
		n := newTable(line)
		n.at = byteRange{int(v.Raw.Offset), int(v.Raw.Offset + v.Raw.Length)}
		n.opened = true
		for it := v.Children(); it.Next(); {
			p.keyValue(n, it.Node())
		}
		n.closed = true
		return n
	case unstable.Array:
		n := &node{line: line, form: list, closed: true}
		all := true
		for it := v.Children(); it.Next(); {
			item := p.value(it.Node(), line)
			all = all && item.form == table
			n.items = append(n.items, item)
		}
		if all && len(n.items) > 0 {
			n.form = tables
		}
		return n
	}
	from := int(v.Raw.Offset)
	n := &node{line: line, form: single, source: string(p.parser.Raw(v.Raw)), at: byteRange{from, from + int(v.Raw.Length)}}
	if v.Kind == unstable.String {
		// One form for letters that can be written in two, such as é.
		n.value = norm.NFC.String(string(v.Data))
		return n
	}
	var err error
	if n.value, err = decoded(n.source); err != nil {
		p.report(line, "%s", syntaxText(p.lineText(line), err.Error()))
	}
	return n
}

// decoded returns what a number, a date, true or false says.
func decoded(source string) (any, error) {
	var one struct{ V any }
	err := toml.Unmarshal([]byte("V = "+source), &one)
	return one.V, err
}

// names returns the parts of an expression's key, and its line.
func (p *treeParser) names(e *unstable.Node) (names []string, line int) {
	for it := e.Key(); it.Next(); {
		k := it.Node()
		if line == 0 {
			line = p.lineAt(int(k.Raw.Offset))
		}
		names = append(names, string(k.Data))
	}
	return names, line
}
