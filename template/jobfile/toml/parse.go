package toml

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

// TreeParser builds the tree of a job file.
type TreeParser struct {
	parser   unstable.Parser
	Ends     []int // offsets of the line ends
	Root     *Node
	current  *Node
	depth    int // of the lists and braces that a value being read is in
	problems job.Problems
	Headings []heading // as they came
}

// deepest is how many lists, braces and names with dots may stand within each other, which is more than
// any job file needs.
const deepest = 20

// heading is where a [heading] or a [[heading]] stands, the first of its names, and the table whose
// keys follow it.
type heading struct {
	Name string
	Line int
	Of   *Node
}

// Parse reads a job file into a tree. Text that is no TOML, and keys or tables given twice, are
// problems.
func Parse(data []byte) (*Node, job.Problems) {
	p := ParseTree(data)
	return p.Root, p.problems
}

// Problems are what Parse returns of them.
func (p *TreeParser) Problems() job.Problems { return p.problems }

// ParseTree also says where the headings are.
func ParseTree(data []byte) *TreeParser {
	p := &TreeParser{Root: NewTable(1)}
	for i, c := range data {
		if c == '\n' {
			p.Ends = append(p.Ends, i)
		}
	}
	p.current = p.Root
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
		line := p.LineAt(int(p.parser.Range(broken.Highlight).Offset))
		p.report(line, "%s", syntaxText(p.LineText(line), broken.Message))
	}
	return p
}

func (p *TreeParser) report(line int, format string, args ...any) {
	p.problems = append(p.problems, job.Problem{Line: line, Text: fmt.Sprintf(format, args...)})
}

// LineAt returns the line of an offset, counted from 1.
func (p *TreeParser) LineAt(offset int) int { return sort.SearchInts(p.Ends, offset) + 1 }

// LineText returns a line without its end.
func (p *TreeParser) LineText(line int) string {
	data := p.parser.Data()
	from, to := 0, len(data)
	if line > 1 {
		from = p.Ends[line-2] + 1
	}
	if line <= len(p.Ends) {
		to = p.Ends[line-1]
	}
	return strings.TrimSuffix(string(data[from:to]), "\r")
}

// heading enters the table of a [heading] or a [[heading]].
func (p *TreeParser) heading(e *unstable.Node, many bool) {
	names, line := p.names(e)
	defer func() { p.Headings = append(p.Headings, heading{names[0], line, p.current}) }()
	var at *Node
	if len(names) > deepest {
		p.tooDeep(line)
	} else {
		at = p.descend(p.Root, names[:len(names)-1], line, false)
	}
	// What stands below a heading that is refused still gets its places, outside the tree.
	p.current = NewTable(line)
	if at == nil {
		return
	}
	last := names[len(names)-1]
	shown := strings.Join(names, ".")
	there := at.Keys[last]
	switch {
	case there == nil && many:
		run := &Node{Line: line, Form: Tables, Items: []*Node{p.current}}
		at.Put(last, run)
	case there == nil:
		p.current.Opened = true
		at.Put(last, p.current)
	case there.Closed || there.Dotted:
		p.report(line, "%s is there twice, first in line %d; keep one of them", shown, there.Line)
	case many && there.Form == Tables:
		there.Items = append(there.Items, p.current)
	case many && there.Form == Table && !there.Opened:
		p.report(there.Line, "this stands before the first [[%s]]; move it below the [[%s]] it belongs to", shown, shown)
	case !many && there.Form == Tables:
		p.report(line, "[%s] needs two brackets on each side, as in line %d; write [[%s]]", shown, there.Line, shown)
	case !many && there.Form == Table && !there.Opened:
		there.Opened, there.Line = true, line
		p.current = there
	case !many && there.Form == Table:
		p.report(line, "[%s] is there twice, first in line %d; put its keys under one of them", shown, there.Line)
	default:
		p.report(line, "%s is there twice, first in line %d; keep one of them", shown, there.Line)
	}
}

// descend follows names from a table, making the tables that are not there; nil where one of
// them cannot have more keys. The names may be those of a heading, or of a key with dots.
func (p *TreeParser) descend(at *Node, names []string, line int, dotted bool) *Node {
	for _, name := range names {
		next := at.Keys[name]
		switch {
		case next == nil:
			next = NewTable(line)
			next.Dotted = dotted
			at.Put(name, next)
		case next.Closed || dotted && (next.Opened || next.Form == Tables):
			p.report(line, "%s is there already, in line %d; put all its keys there", words.Shown(name), next.Line)
			return nil
		case next.Form == Tables:
			next = next.Items[len(next.Items)-1]
		case next.Form != Table:
			p.report(line, "%s is a single value in line %d and cannot have keys of its own; take one of them out", words.Shown(name), next.Line)
			return nil
		}
		at = next
	}
	return at
}

// keyValue adds a key to a table.
func (p *TreeParser) keyValue(at *Node, e *unstable.Node) {
	names, line := p.names(e)
	if len(names) > deepest {
		p.tooDeep(line)
		return
	}
	if at = p.descend(at, names[:len(names)-1], line, true); at == nil {
		return
	}
	last := names[len(names)-1]
	whole := rangeOf(e.Raw)
	name := p.lastName(e)
	value := p.value(e.Value(), line, p.past(name.To, "="))
	value.Entry, value.Name = whole, name
	if there := at.Keys[last]; there != nil {
		p.report(line, "%s is there twice, first in line %d; keep one of them", words.Shown(last), there.Line)
		return
	}
	at.Put(last, value)
}

// value returns the place of a value whose key stands in a line, and which begins at an offset.
func (p *TreeParser) value(v *unstable.Node, line, from int) *Node {
	if v.Raw.Length > 0 {
		line = p.LineAt(int(v.Raw.Offset))
	}
	if p.depth++; p.depth > deepest {
		p.tooDeep(line)
		p.depth--
		return &Node{Line: line, Form: Single, Value: "", At: ByteRange{from, from + 1}}
	}
	defer func() { p.depth-- }()
	switch v.Kind {
	case unstable.InlineTable:
		n := NewTable(line)
		n.Opened = true
		end := from + 1
		for it := v.Children(); it.Next(); {
			e := it.Node()
			p.keyValue(n, e)
			end = rangeOf(e.Raw).To
		}
		n.At = ByteRange{from, p.past(end, ",") + 1}
		n.Closed = true
		return n
	case unstable.Array:
		n := &Node{Line: line, Form: List, Closed: true}
		all := true
		end := from + 1
		for it := v.Children(); it.Next(); {
			item := p.value(it.Node(), line, p.past(end, ","))
			end = item.At.To
			all = all && item.Form == Table
			n.Items = append(n.Items, item)
		}
		n.At = ByteRange{from, p.past(end, ",") + 1}
		if all && len(n.Items) > 0 {
			n.Form = Tables
		}
		return n
	}
	n := &Node{Line: line, Form: Single, Source: string(p.parser.Raw(v.Raw)), At: rangeOf(v.Raw)}
	if v.Kind == unstable.String {
		// One form for letters that can be written in two, such as é.
		n.Value = norm.NFC.String(string(v.Data))
		return n
	}
	var err error
	if n.Value, err = decoded(n.Source); err != nil {
		p.report(line, "%s", syntaxText(p.LineText(line), err.Error()))
	}
	return n
}

// tooDeep reports what stands within too much else; once is enough.
func (p *TreeParser) tooDeep(line int) {
	if n := len(p.problems); n == 0 || p.problems[n-1].Line != line {
		p.report(line, "more than %d things stand within each other here, and no job file needs so many; take some brackets, braces or names with dots out", deepest)
	}
}

func rangeOf(r unstable.Range) ByteRange { return ByteRange{int(r.Offset), int(r.Offset + r.Length)} }

// past returns the offset of what comes next at or after one: past white space, line ends, remarks
// and the signs given.
func (p *TreeParser) past(at int, signs string) int {
	data := p.parser.Data()
	for at < len(data) {
		switch c := data[at]; {
		case c == '#':
			if line := sort.SearchInts(p.Ends, at); line < len(p.Ends) {
				at = p.Ends[line]
			} else {
				at = len(data)
			}
		case strings.IndexByte(" \t\r\n"+signs, c) >= 0:
			at++
		default:
			return at
		}
	}
	return at
}

// lastName returns where the last of an expression's names stands.
func (p *TreeParser) lastName(e *unstable.Node) ByteRange {
	var last ByteRange
	for it := e.Key(); it.Next(); {
		last = rangeOf(it.Node().Raw)
	}
	return last
}

// decoded returns what a number, a date, true or false says.
func decoded(source string) (any, error) {
	var one struct{ V any }
	err := toml.Unmarshal([]byte("V = "+source), &one)
	return one.V, err
}

// names returns the parts of an expression's key, and its line.
func (p *TreeParser) names(e *unstable.Node) (names []string, line int) {
	for it := e.Key(); it.Next(); {
		k := it.Node()
		if line == 0 {
			line = p.LineAt(int(k.Raw.Offset))
		}
		names = append(names, string(k.Data))
	}
	return names, line
}
