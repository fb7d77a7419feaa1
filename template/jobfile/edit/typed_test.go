package edit_test

import (
	"math/rand/v2"
	"testing"

	"underlay/template/internal/sample"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"

	"github.com/google/go-cmp/cmp"
)

// TestSource: what is typed into the blank of a key, and what it makes.
func TestSource(t *testing.T) {
	root := keys.NewKeyTree()
	for _, c := range []struct{ path, typed, want string }{
		{"item.size", "50 x 60 cm", `"50 x 60 cm"`},
		{"item.size", ` 17 3/4" `, `"17 3/4\""`},
		{"item.quantity", "6", "6"},
		{"item.quantity", "six", `"six"`},
		{"item.quantity", "6 # no", `"6 # no"`},
		{"item.quantity", "", ""},
		{"item.border", "25 mm", `"25 mm"`},
		{"item.border", "25 mm, 20 mm, 25 mm, 20 mm", `["25 mm", "20 mm", "25 mm", "20 mm"]`},
		{"item.faces", "front, back", `["front", "back"]`},
		{"item.faces", `["a, b", "c"]`, `["a, b", "c"]`},
		{"item.name", "[x]", `"[x]"`},
		{"item.name", "true", `"true"`},
		{"item.pass.step", "1/3", `"1/3"`},
		{"item.pass.step", "0.4", "0.4"},
		{"item.pass.over", "true", "true"},
		{"item.pass.over", "yes", `"yes"`},
		{"item.pass.turns", "0 90, 270 180", `["0 90", "270 180"]`},
		{"item.pass.blocks", "fern, wave; wave, fern", `[["fern", "wave"], ["wave", "fern"]]`},
		{"item.pass.at", "120 x 80 mm", `["120 x 80 mm"]`},
		{"item.pass.dabs", `[{ colour = "moss" }]`, `[{ colour = "moss" }]`},
		{"item.colourway.swap", "moss = teal, pond blue = sage", `{ moss = "teal", "pond blue" = "sage" }`},
		{"item.colourway.swap", "moss", `"moss"`},
		{"block.inked", "0.5", "0.5"},
		{"title", `say "x"`, `"say \"x\""`},
	} {
		p, _ := edit.ParsePath(c.path)
		kind := edit.Tree(root, p[:len(p)-1]).Keys[p[len(p)-1]].Kind
		if got := edit.Source(kind, c.typed); got != c.want {
			t.Errorf("%s: %q makes %s, want %s", c.path, c.typed, got, c.want)
		}
	}
}

// TestTypedSaysTheSame: each value of random jobs, and of odd ones, as it stands in a blank makes a value
// that says what it said.
func TestTypedSaysTheSame(t *testing.T) {
	texts := []string{
		"[[item]]\nfaces = ['a, b', 'c']\nborder = ['1 mm']\nquantity = 0x10\nname = ' x '\n[[item.pass]]\nturns = ['', '0']\nblocks = [['a'], 'b', [1]]\nstep = '0.4'\nover = 'true'\ncolours = []\nat = 'x, y'\nlap = '\"1\"'\noffset = '[1]'\n" +
			"[[item.colourway]]\nswap = { a = 'x=y', 'b,c' = '' }\n[[item.colourway]]\nswap = { 'pond blue' = 'sage', b = 1 }\n",
	}
	r := rand.New(rand.NewPCG(3, 14))
	for range 300 {
		choices := make([]byte, 80)
		for i := range choices {
			choices[i] = byte(r.Uint32())
		}
		texts = append(texts, sample.Made(choices))
	}
	tree := keys.NewKeyTree()
	for _, text := range texts {
		root, problems := toml.Parse([]byte(text))
		if len(problems) > 0 {
			continue
		}
		var walk func(n *toml.Node, p edit.Path)
		walk = func(n *toml.Node, p edit.Path) {
			for _, key := range n.Order {
				child := n.Keys[key]
				table := edit.Tree(tree, p)
				if table == nil || table.Tables[key] != nil {
					walk(child, p.Sub(key))
					continue
				}
				kind := table.Keys[key].Kind
				typed := edit.Typed(kind, child, text[child.At.From:child.At.To])
				source := edit.Source(kind, typed)
				again, problems := toml.Parse([]byte("x = " + source))
				if len(problems) > 0 || cmp.Diff(saying(child), saying(again.Keys["x"])) != "" {
					t.Errorf("%s = %s stands as %q and makes %s", key, text[child.At.From:child.At.To], typed, source)
				}
			}
			for i, item := range n.Items {
				walk(item, p.Sub(string(rune('0'+i%10))))
			}
		}
		walk(root, nil)
	}
}

// saying is what a place says.
func saying(n *toml.Node) any {
	switch {
	case n == nil:
		return nil
	case n.Form == toml.Single:
		return n.Value
	case n.Form == toml.Table:
		m := map[string]any{}
		for _, key := range n.Order {
			m[key] = saying(n.Keys[key])
		}
		return m
	}
	l := []any{}
	for _, i := range n.Items {
		l = append(l, saying(i))
	}
	return l
}
