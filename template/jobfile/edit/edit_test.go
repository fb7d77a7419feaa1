package edit_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"underlay/template/jobfile/edit"
	"underlay/template/words"

	"github.com/google/go-cmp/cmp"
	"github.com/pelletier/go-toml/v2"
)

// madeUp is a job of any keys, good or not.
func madeUp(r *rand.Rand) map[string]any {
	text := func() any {
		return []any{"50 x 60 cm", "a } b", "é ] # no", "17 3/4\"", "it's", "", int64(6), true, 0.5}[r.IntN(9)]
	}
	some := func(m map[string]any) map[string]any {
		for k := range maps.Clone(m) {
			if r.IntN(3) == 0 {
				delete(m, k)
			}
		}
		return m
	}
	run := func(least int, one func() any) []any {
		var all []any
		for range least + r.IntN(3) {
			all = append(all, one())
		}
		return all
	}
	list := func() any { return run(1, text) }
	pass := func() any {
		return some(map[string]any{"name": text(), "block": text(), "gap": text(), "colours": list(), "blocks": []any{list(), list()},
			"turns": list(), "over": true, "unknown.key é": text(), "dabs": run(1, func() any { return some(map[string]any{"colour": text(), "middle": text()}) })})
	}
	item := func() any {
		m := some(map[string]any{"name": text(), "size": text(), "border": list(), "hem": text(), "quantity": int64(3), "faces": list()})
		if all := run(0, pass); len(all) > 0 {
			m["pass"] = all
		}
		if all := run(0, func() any { return some(map[string]any{"name": text(), "at": text(), "size": text()}) }); len(all) > 0 {
			m["keep-clear"] = all
		}
		if all := run(0, func() any {
			return some(map[string]any{"name": text(), "quantity": int64(2), "swap": some(map[string]any{"moss": text(), "pond blue": text(), "a.b": text()})})
		}); len(all) > 0 {
			m["colourway"] = all
		}
		return m
	}
	m := some(map[string]any{"title": text(), "units": text(), "paper": some(map[string]any{"size": text(), "margin": text(), "reach": text()}),
		"printing": some(map[string]any{"hand": text()}), "strange": map[string]any{"deep": map[string]any{"x": text(), "y": list()}}})
	if all := run(0, func() any { return some(map[string]any{"name": text(), "print": text(), "inked": 0.5}) }); len(all) > 0 {
		m["block"] = all
	}
	if all := run(0, item); len(all) > 0 {
		m["item"] = all
	}
	return m
}

// spots lists the paths to all there is in a tree.
func spots(v any, at edit.Path) []edit.Path {
	var all []edit.Path
	if len(at) > 0 {
		all = append(all, at)
	}
	switch v := v.(type) {
	case map[string]any:
		for _, k := range slices.Sorted(maps.Keys(v)) {
			all = append(all, spots(v[k], at.Sub(k))...)
		}
	case []any:
		for i, x := range v {
			all = append(all, spots(x, at.Sub(fmt.Sprint(i)))...)
		}
	}
	return all
}

// with returns a tree with the place at a path as change makes it; nil: without it.
func with(v any, p edit.Path, change func(any) any) any {
	if len(p) == 0 {
		return change(v)
	}
	switch v := v.(type) {
	case map[string]any:
		m := maps.Clone(v)
		if x := with(m[p[0]], p[1:], change); x != nil {
			m[p[0]] = x
		} else {
			delete(m, p[0])
		}
		return m
	case []any:
		var i int
		fmt.Sscan(p[0], &i)
		l := slices.Clone(v)
		if i == len(l) {
			l = append(l, nil)
		}
		if x := with(l[i], p[1:], change); x != nil {
			l[i] = x
		} else {
			l = slices.Delete(l, i, i+1)
		}
		if len(l) == 0 {
			return nil // the last of a list takes the list with it
		}
		return l
	}
	if p[0] == "0" {
		return []any{with(nil, p[1:], change)}
	}
	return with(map[string]any{}, p, change)
}

func at(v any, p edit.Path) any {
	for _, name := range p {
		switch x := v.(type) {
		case map[string]any:
			v = x[name]
		case []any:
			var i int
			fmt.Sscan(name, &i)
			v = x[i]
		}
	}
	return v
}

// oneEdit makes one change of any kind to a text, and to the tree it says.
func oneEdit(r *rand.Rand, text string, tree map[string]any) (what, out string, want any, err error) {
	all := spots(tree, nil)
	var p edit.Path
	if len(all) > 0 {
		p = all[r.IntN(len(all))]
	}
	value := any([]string{"91 x 91 mm", "x", "a longer text that has \" and '", "é # ]"}[r.IntN(4)])
	source := words.TOML(value.(string))
	if r.IntN(4) == 0 {
		value, source = []any{"a", int64(2)}, "[\"a\", 2]"
	}
	there := at(tree, p)
	switch k := r.IntN(5); {
	case k == 0 && p != nil: // take away
		out, err = edit.Remove(text, p)
		return "remove " + p.String(), out, with(tree, p, func(any) any { return nil }), err
	case k == 1: // a key that is not there, in any table
		var tables []edit.Path
		for _, q := range append(all, edit.Path{}) {
			if _, ok := at(tree, q).(map[string]any); ok {
				tables = append(tables, q)
			}
		}
		q := tables[r.IntN(len(tables))]
		q = q.Sub([]string{"name", "size", "border", "hem", "gap", "print", "units", "margin", "new.key", "middle", "hand"}[r.IntN(11)])
		if len(q) == 1 && r.IntN(2) == 0 {
			q = edit.Path{[]string{"printer", "paper", "printing", "odd"}[r.IntN(4)], "across"}
		}
		if x := at(tree, q[:len(q)-1]); x != nil && at(tree, q) != nil {
			p, there = q, at(tree, q)
			break
		}
		out, err = edit.Set(text, q, source)
		return "add " + q.String() + " " + source, out, with(tree, q, func(any) any { return value }), err
	case k == 2: // a table
		runs := []edit.Path{{"block"}, {"item"}, {"paint"}}
		for i := range at(tree, edit.Path{}).(map[string]any) {
			if i != "item" {
				continue
			}
			for n := range tree["item"].([]any) {
				for _, run := range []string{"pass", "keep-clear", "colourway"} {
					runs = append(runs, edit.Path{"item", fmt.Sprint(n), run})
				}
			}
		}
		q := runs[r.IntN(len(runs))]
		n, _ := at(tree, q).([]any)
		out, err = edit.Add(text, q, edit.Field{Key: "name", Source: source}, edit.Field{Key: "odd key", Source: "1"})
		return "add table " + q.String(), out, with(tree, q.Sub(fmt.Sprint(len(n))), func(any) any {
			return map[string]any{"name": value, "odd key": int64(1)}
		}), err
	case k == 3: // one more of a list
		for _, q := range all {
			if l, ok := at(tree, q).([]any); ok && r.IntN(3) == 0 {
				if _, table := l[0].(map[string]any); table {
					continue
				}
				q = q.Sub(fmt.Sprint(len(l)))
				out, err = edit.Set(text, q, source)
				return "append " + q.String() + " " + source, out, with(tree, q, func(any) any { return value }), err
			}
		}
	}
	if p == nil {
		return "", text, tree, nil
	}
	if _, table := there.(map[string]any); table {
		return "", text, tree, nil
	}
	if l, ok := there.([]any); ok {
		if _, table := l[0].(map[string]any); table {
			return "", text, tree, nil
		}
	}
	out, err = edit.Set(text, p, source)
	return "set " + p.String() + " " + source, out, with(tree, p, func(any) any { return value }), err
}

// TestEditsSayWhatTheyDo makes edits of all kinds in texts of all forms. To another reader of TOML the
// text says what the edit asked for and all else as before, and only the lines concerned differ.
func TestEditsSayWhatTheyDo(t *testing.T) {
	counts := map[string]int{}
	for seed := range 3000 {
		r := rand.New(rand.NewPCG(uint64(seed), 14))
		tree := madeUp(r)
		s := &styler{Rand: r, remarks: map[string]string{}, end: []string{"\n", "\n", "\r\n"}[r.IntN(3)]}
		s.table(tree, nil, "", "")
		text := s.String()
		what, out, want, err := oneEdit(r, text, tree)
		if what == "" {
			continue
		}
		kind, _, _ := strings.Cut(what, " ")
		counts[kind]++
		if err != nil {
			t.Fatalf("seed %d, %s: %v\n%s", seed, what, err, text)
		}
		got := map[string]any{}
		if err := toml.Unmarshal([]byte(out), &got); err != nil {
			t.Fatalf("seed %d, %s: %v\n%s\n--- became\n%s", seed, what, err, text, out)
		}
		if d := cmp.Diff(emptied(want), emptied(got)); d != "" {
			t.Fatalf("seed %d, %s: %s\n%s\n--- became\n%s", seed, what, d, text, out)
		}
		if why := concerned(what, text, out, s.remarks); why != "" {
			t.Fatalf("seed %d, %s: %s\n%s\n--- became\n%s", seed, what, why, text, out)
		}
		if strings.Count(out, "\r\n") != strings.Count(out, "\n") && strings.Contains(text, "\r\n") {
			t.Fatalf("seed %d, %s: line ends are mixed: %q", seed, what, out)
		}
	}
	for _, kind := range []string{"remove", "add", "append", "set"} {
		if counts[kind] < 200 {
			t.Errorf("%d edits of the kind %s", counts[kind], kind)
		}
	}
}

// emptied leaves tables out that have nothing in them: they say nothing.
func emptied(v any) any {
	switch v := v.(type) {
	case map[string]any:
		m := map[string]any{}
		for k, x := range v {
			if x = emptied(x); x != nil {
				m[k] = x
			}
		}
		if len(m) == 0 {
			return nil
		}
		return m
	case []any:
		var l []any
		for _, x := range v {
			x = emptied(x)
			l = append(l, x)
		}
		if l == nil {
			return nil
		}
		return l
	}
	return v
}

// concerned says why more lines differ than an edit has to do with; "": they don't.
func concerned(what, before, after string, remarks map[string]string) string {
	kind, path, _ := strings.Cut(what, " ")
	path = strings.TrimPrefix(path, "table ")
	path, _, _ = strings.Cut(path, " \"")
	old, now := strings.Split(before, "\n"), strings.Split(after, "\n")
	for r, of := range remarks {
		gone := !strings.Contains(after, r)
		if gone && kind != "remove" && !strings.Contains(what, "swap") {
			return "lost " + r
		}
		if gone && of != path && !strings.HasPrefix(of, path+".") && !strings.HasPrefix(path, of) && of != "" {
			return "lost " + r + " of " + of
		}
	}
	// What differs is one run of lines.
	for len(old) > 0 && len(now) > 0 && old[0] == now[0] {
		old, now = old[1:], now[1:]
	}
	for len(old) > 0 && len(now) > 0 && old[len(old)-1] == now[len(now)-1] {
		old, now = old[:len(old)-1], now[:len(now)-1]
	}
	most := map[string]int{"set": 1, "add": 4, "append": 3}[kind]
	if kind != "remove" && len(now) > most+1 && !strings.Contains(what, "swap") {
		return fmt.Sprintf("%d lines differ: %q", len(now), now)
	}
	if kind == "add" && len(old) > 1 || kind == "append" && len(old) > 2 {
		return fmt.Sprintf("%d lines were there: %q", len(old), old)
	}
	return ""
}
