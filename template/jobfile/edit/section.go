package edit

import (
	"cmp"
	"slices"
	"strings"

	"underlay/template/jobfile/toml"
)

func sortRanges(all []toml.ByteRange) {
	slices.SortFunc(all, func(a, b toml.ByteRange) int { return cmp.Compare(a.From, b.From) })
}

// heading returns which heading is that of a table; -1 where it has none.
func (t *text) heading(n *toml.Node) int {
	for i, h := range t.Headings {
		if h.Of == n {
			return i
		}
	}
	return -1
}

// sections lists the headings of a table and of those in it, in their order.
func (t *text) sections(n *toml.Node) []int {
	within := map[*toml.Node]bool{}
	var walk func(*toml.Node)
	walk = func(n *toml.Node) {
		within[n] = true
		for _, key := range n.Order {
			walk(n.Keys[key])
		}
		for _, i := range n.Items {
			walk(i)
		}
	}
	walk(n)
	var all []int
	for i, h := range t.Headings {
		if within[h.Of] {
			all = append(all, i)
		}
	}
	return all
}

// begin is the first line of a section: that of its heading, or of the remarks right above it. What a
// file begins with is said of all of it.
func (t *text) begin(h int) int {
	line := t.Headings[h].Line
	for line > 1 && t.kind(line-1) == remark {
		line--
	}
	if line == 1 {
		return t.Headings[h].Line
	}
	return line
}

// limit is the first line of what comes after a section.
func (t *text) limit(h int) int {
	if h+1 < len(t.Headings) {
		return t.begin(h + 1)
	}
	return t.last() + 1
}

// body is the line after the last that is a section's for sure: its keys, with the remarks that follow
// on those without a blank line. h is -1 for what is above all headings.
func (t *text) body(h int) int {
	from, to := 1, t.last()+1
	if h >= 0 {
		from, to = t.Headings[h].Line+1, t.limit(h)
	} else if len(t.Headings) > 0 {
		to = t.begin(0)
	}
	line := to
	for line > from && t.kind(line-1) != other {
		line--
	}
	for line < to && t.kind(line) == remark {
		line++
	}
	return line
}

// dropSections takes away the headings of a table and of those in it, each with what is below it.
func (t *text) dropSections(n *toml.Node) {
	all := t.sections(n)
	for i, h := range all {
		from, to := t.begin(h), t.body(h)
		if i+1 < len(all) && all[i+1] == h+1 {
			to = t.begin(h + 1)
		}
		if i == 0 || all[i-1] != h-1 {
			for from > 1 && t.kind(from-1) == blank {
				from--
			}
		}
		if from == 1 {
			for to <= t.last() && t.kind(to) == blank {
				to++
			}
		}
		t.remove(toml.ByteRange{From: t.lineStart(from), To: t.lineStart(to)})
	}
}

// addSection adds a table with a heading of its own and some lines below it, at a path, to one that is
// there: after the last of the same name, or where its kin stand. Many: it is one of a run.
func (t *text) addSection(p Path, above *toml.Node, name string, many bool, lines []string) {
	heading := "[" + spelled(named(p)) + "]"
	if many {
		heading = "[" + heading + "]"
	}
	after, before := t.kinSections(above, p, name)
	indent := strings.Repeat("  ", max(0, len(named(p))-1))
	var line int
	switch {
	case after >= 0:
		line = t.body(after)
		if len(named(p)) > 1 || t.heading(above) < 0 {
			indent = t.indentAs(after, above, name, indent)
		}
	case before >= 0:
		line = t.begin(before)
	default:
		line = t.body(len(t.Headings) - 1)
	}
	out := []string{indent + heading}
	for _, l := range lines {
		out = append(out, indent+l)
	}
	spaced := t.spaced()
	if line > 1 && spaced && (after >= 0 || before < 0) {
		out = append([]string{""}, out...)
	}
	if before >= 0 && after < 0 && spaced {
		out = append(out, "")
	}
	t.insertLines(line, out...)
}

// named leaves the numbers of a path out.
func named(p Path) Path {
	return slices.DeleteFunc(slices.Clone(p), func(s string) bool { _, number := index(s); return number })
}

// indentAs is the indent of a new section below one: that of the last of its name, or of its kin in
// the same table.
func (t *text) indentAs(after int, above *toml.Node, name, otherwise string) string {
	if t.Headings[after].Of == above {
		return t.indent(t.Headings[after].Line) + otherwise[:min(len(otherwise), 2)]
	}
	if run := above.Keys[name]; run != nil && len(run.Items) > 0 {
		if h := t.heading(run.Items[len(run.Items)-1]); h >= 0 {
			return t.indent(t.Headings[h].Line)
		}
	}
	return t.indent(t.Headings[after].Line)
}

// kinSections finds the heading after whose section a new one of a name goes; where there is none, the
// heading before which it goes; -1 for none.
func (t *text) kinSections(above *toml.Node, p Path, name string) (after, before int) {
	after, before = -1, -1
	tree := Tree(t.keys, p[:len(p)-1])
	own := rank(tree, name)
	least, most := -1, -1
	for _, key := range above.Order {
		all := t.sections(above.Keys[key])
		if len(all) == 0 {
			continue
		}
		k := rank(tree, key)
		if k <= own && k > least {
			least, after = k, all[len(all)-1]
		}
		if k > own && (most < 0 || k < most) {
			most, before = k, all[0]
		}
	}
	if h := t.heading(above); after < 0 && h >= 0 {
		after = h
	}
	return after, before
}

// spaced tells whether blank lines stand before the headings of the text.
func (t *text) spaced() bool {
	for h := range t.Headings {
		if line := t.begin(h); line > 1 && t.kind(line-1) != remark {
			return t.kind(line-1) == blank
		}
	}
	return true
}
