package toml

import (
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/pelletier/go-toml/v2"
)

// each calls f for n and every table and value below it, with the names that lead there;
// the tables of a run share their name. What stands in a list is part of its value.
func (n *Node) each(path []string, f func(path []string, n *Node)) {
	if n.Form == Tables {
		for _, item := range n.Items {
			item.each(path, f)
		}
		return
	}
	f(path, n)
	for _, k := range n.Order {
		n.Keys[k].each(append(path[:len(path):len(path)], k), f)
	}
}

// TestPlaces checks the line of everything in a file that uses every way TOML has of writing
// a table.
func TestParse(t *testing.T) {
	root, problems := Parse([]byte(`title = "Nook"
paper.size = "A4"
paper.margin = "7 mm"
printer = { across = "180 mm",  down = "250 mm" }

[[block]]
name = "fern"
[[block]]
name = "wave"

[[item]]
border = ["25 mm",
  "20 mm",
  "25 mm"]
[[item.pass]]
gap = "1 mm"
[[item.pass]]
gap = """
1 mm"""
[[item]]
keep-clear = [
  { name = "pocket" },
  { name = "badge", at = "0 x 0 mm" },
]
[printing]
hand = "left"
`))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var got []string
	root.each(nil, func(path []string, n *Node) {
		got = append(got, strings.Join(path, ".")+" "+strconv.Itoa(n.Line))
	})
	want := []string{
		" 1", "title 1", "paper 2", "paper.size 2", "paper.margin 3",
		"printer 4", "printer.across 4", "printer.down 4",
		"block 6", "block.name 7", "block 8", "block.name 9",
		"item 11", "item.border 12", "item.pass 15", "item.pass.gap 16", "item.pass 17", "item.pass.gap 18",
		"item 20", "item.keep-clear 22", "item.keep-clear.name 22", "item.keep-clear 23", "item.keep-clear.name 23", "item.keep-clear.at 23",
		"printing 25", "printing.hand 26",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	border := root.Keys["item"].Items[0].Keys["border"]
	var lines []int
	for _, i := range border.Items {
		lines = append(lines, i.Line)
	}
	if d := cmp.Diff([]int{12, 13, 14}, lines); d != "" {
		t.Errorf("lines of the list: %s", d)
	}
}

func TestGivenTwice(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"a = 1\na = 2", "2: a is there twice, first in line 1; keep one of them"},
		{"[a]\nb = 1\n[a]\nb = 2", "3: [a] is there twice, first in line 1; put its keys under one of them"},
		{"[a.b]\n[a]\n[a]", "3: [a] is there twice, first in line 2; put its keys under one of them"},
		{"a = 1\n[a]", "2: a is there twice, first in line 1; keep one of them"},
		{"a = 1\na.b = 2", "2: a is a single value in line 1 and cannot have keys of its own; take one of them out"},
		{"[[a]]\n[a]", "2: [a] needs two brackets on each side, as in line 1; write [[a]]"},
		{"[[a.b]]\n[[a]]", "1: this stands before the first [[a]]; move it below the [[a]] it belongs to"},
		{"a.b = 1\n[a]\nc = 2", "2: a is there twice, first in line 1; keep one of them"},
		{"[a.b]\n[a]\nb.c = 1", "3: b is there already, in line 1; put all its keys there"},
		{"a = {b = 1}\na.c = 2", "2: a is there already, in line 1; put all its keys there"},
		{"a = {b = 1}\n[a]", "2: a is there twice, first in line 1; keep one of them"},
		{"a = {b = 1}\n[a.c]", "2: a is there already, in line 1; put all its keys there"},
		{"a = [{b = 1}]\n[[a]]", "2: a is there twice, first in line 1; keep one of them"},
		{"a = [{b = 1}]\n[a.c]", "2: a is there already, in line 1; put all its keys there"},
		{"a = {b = 1, b = 2}", "1: b is there twice, first in line 1; keep one of them"},
	} {
		_, problems := Parse([]byte(c.text))
		if len(problems) != 1 {
			t.Errorf("%q: %v", c.text, problems)
			continue
		}
		if err := toml.Unmarshal([]byte(c.text), new(any)); err == nil {
			t.Errorf("%q: another reader of TOML takes it", c.text)
		}
		if d := cmp.Diff(c.want, strconv.Itoa(problems[0].Line)+": "+problems[0].Text); d != "" {
			t.Errorf("%q: %s", c.text, d)
		}
	}
}
