package side

import (
	"fmt"
	"slices"
	"strings"

	"underlay/paper"
	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// valueReader lists what stands in a text.
type valueReader struct {
	text string
	root *toml.Node
	keys *keys.KeyTree
}

// values lists all that stands in a job, and what could.
func (r valueReader) values() *Values {
	all := &Values{Blocks: r.tables(edit.Path{"block"}, noWords), Paints: r.tables(edit.Path{"paint"}, noWords), Items: []Item{}}
	all.Job = r.of(edit.Path{}, noWords)
	for _, name := range []string{"paper", "printing", "printer"} {
		all.Job = append(all.Job, r.of(edit.Path{name}, noWords)...)
	}
	for i := range r.run(edit.Path{"item"}) {
		all.Items = append(all.Items, r.item(edit.Path{"item", fmt.Sprint(i)}))
	}
	return all
}

// item lists what stands in an item.
func (r valueReader) item(p edit.Path) Item {
	shape := r.word(p.Sub("shape"), string(job.Rectangle))
	faces := r.texts(p.Sub("faces"))
	onFace := func(key string) []string {
		if key == "face" {
			return faces
		}
		return nil
	}
	it := Item{Table: r.table(p, noWords), Shape: shape, Passes: []Pass{}}
	it.Zones, it.Colourways = r.tables(p.Sub("keep-clear"), onFace), r.tables(p.Sub("colourway"), onFace)
	for i := range r.run(p.Sub("pass")) {
		it.Passes = append(it.Passes, r.pass(p, i, shape, faces))
	}
	return it
}

// pass lists what stands in a pass.
func (r valueReader) pass(item edit.Path, i int, shape string, faces []string) Pass {
	p := item.Sub("pass", fmt.Sprint(i))
	var earlier []string
	for k := range i {
		earlier = append(earlier, r.passName(item.Sub("pass", fmt.Sprint(k))))
	}
	block := r.word(p.Sub("block"), "")
	pass := Pass{Block: block, Repeat: r.word(p.Sub("repeat"), string(job.Straight))}
	if r.seat(p) != "" {
		pass.Repeat = ""
	}
	pass.Table = r.table(p, func(key string) []string {
		switch key {
		case "block", "corner":
			return r.blocks()
		case "face":
			return faces
		case "between", "on":
			return earlier
		case "repeat":
			return r.repeats(job.Shape(shape), block)
		}
		return nil
	})
	pass.Name = r.passName(p)
	pass.Dabs = r.tables(p.Sub("dabs"), noWords)
	return pass
}

// repeats lists those that an item's shape takes, and a block's.
func (r valueReader) repeats(shape job.Shape, block string) []string {
	face := job.RectangleFace
	for i := range r.run(edit.Path{"block"}) {
		if at := (edit.Path{"block", fmt.Sprint(i)}); r.word(at.Sub("name"), "") == block {
			face = job.FaceShape(r.word(at.Sub("shape"), string(face)))
		}
	}
	all := job.RepeatsOn(shape)
	return words.Texts(slices.DeleteFunc(all, func(x job.Repeat) bool { return !slices.Contains(x.Faces(), face) }))
}

// passName is what a pass is called.
func (r valueReader) passName(p edit.Path) string {
	if name := r.word(p.Sub("name"), ""); name != "" {
		return name
	}
	return r.word(p.Sub("block"), "")
}

// seat is the key by which another pass says where the prints of one go; "" for none.
func (r valueReader) seat(p edit.Path) string {
	for _, key := range []string{"between", "on"} {
		if edit.Find(r.root, p.Sub(key)) != nil {
			return key
		}
	}
	return ""
}

// run are the tables of a run.
func (r valueReader) run(p edit.Path) []*toml.Node {
	n := edit.Find(r.root, p)
	if n == nil || n.Form != toml.Tables {
		return nil
	}
	return n.Items
}

// tables lists the tables of a run.
func (r valueReader) tables(p edit.Path, named func(key string) []string) []Table {
	all := []Table{}
	for i := range r.run(p) {
		all = append(all, r.table(p.Sub(fmt.Sprint(i)), named))
	}
	return all
}

func (r valueReader) table(p edit.Path, named func(key string) []string) Table {
	t := Table{Path: p.String(), Name: r.word(p.Sub("name"), ""), Values: r.of(p, named)}
	if n := edit.Find(r.root, p); n != nil {
		t.Line = n.Line
	}
	return t
}

func noWords(string) []string { return nil }

// blocks are the names of all blocks.
func (r valueReader) blocks() []string {
	var names []string
	for i := range r.run(edit.Path{"block"}) {
		if name := r.word(edit.Path{"block", fmt.Sprint(i), "name"}, ""); name != "" {
			names = append(names, name)
		}
	}
	return names
}

// word is what a text says; otherwise where it is not given, or no text.
func (r valueReader) word(p edit.Path, otherwise string) string {
	n := edit.Find(r.root, p)
	if n == nil {
		return otherwise
	}
	s, ok := n.Value.(string)
	if !ok {
		return otherwise
	}
	return s
}

// texts are those of a list.
func (r valueReader) texts(p edit.Path) []string {
	var all []string
	if n := edit.Find(r.root, p); n != nil {
		for _, i := range n.Items {
			if s, ok := i.Value.(string); ok {
				all = append(all, s)
			}
		}
	}
	return all
}

// of lists the keys of a table: those that mean something there, and what else stands in it. Named
// gives the names that are the values a key can take.
func (r valueReader) of(p edit.Path, named func(key string) []string) []Value {
	n := edit.Find(r.root, p)
	if n == nil || n.Form != toml.Table {
		n = toml.NewTable(0)
	}
	tree := edit.Tree(r.keys, p)
	if tree == nil {
		return r.strangers(p, n)
	}
	all := []Value{}
	for _, name := range tree.Order {
		k := tree.Keys[name]
		if tree.Tables[name] != nil || k.Kind.Form() == keys.Tabled {
			continue
		}
		child := n.Keys[name]
		fits := r.fits(p, name)
		if child == nil && !fits {
			continue
		}
		v := Value{Path: p.Sub(name).String(), Key: name, Usual: plain(k.Usual()), Words: slices.Clone(k.Words), Kind: string(k.Kind),
			Says: k.Says(), Must: k.Must(), Example: plain(k.Example()), Fits: fits, Suggests: suggests(p, name)}
		if given := named(name); given != nil {
			v.Words = slices.Clone(given)
		}
		if v.Words == nil && k.Kind.YesNo() {
			v.Words = []string{"true", "false"}
		}
		if child != nil {
			v.Given, v.Line, v.Text = true, child.Line, edit.Typed(k.Kind, child, r.source(child))
		}
		v.Words, v.Suggests = notNil(v.Words), notNil(v.Suggests)
		all = append(all, v)
	}
	return all
}

// strangers lists what stands in a table that no job file knows.
func (r valueReader) strangers(p edit.Path, n *toml.Node) []Value {
	all := []Value{}
	for _, name := range n.Order {
		child := n.Keys[name]
		text := r.source(child)
		if s, ok := child.Value.(string); ok {
			text = s
		}
		all = append(all, Value{Path: p.Sub(name).String(), Key: name, Text: text, Given: true, Line: child.Line, Words: []string{}, Suggests: []string{}})
	}
	return all
}

// source is how a value is written.
func (r valueReader) source(n *toml.Node) string { return r.text[n.At.From:n.At.To] }

// fits tells whether a key means something in its table, with what else stands there.
func (r valueReader) fits(p edit.Path, name string) bool {
	switch len(p) {
	case 2:
		if p[0] == "block" && name == "outline" {
			return r.word(p.Sub("shape"), "") == string(job.OutlineFace)
		}
		if p[0] == "item" {
			shape := r.word(p.Sub("shape"), string(job.Rectangle))
			return edit.Tree(r.keys, p).Keys[name].SuitsItem(shape)
		}
	case 4:
		item := p[:2]
		if name == "face" && edit.Find(r.root, item.Sub("faces")) == nil {
			return false
		}
		if p[2] == "pass" {
			if (name == "between" || name == "on") && p[3] == "0" {
				return false
			}
			return edit.Tree(r.keys, p).Keys[name].SuitsPass(r.word(p.Sub("repeat"), string(job.Straight)), r.seat(p))
		}
	}
	return true
}

// suggests lists what is often written for a key that takes more than a few words.
func suggests(p edit.Path, name string) []string {
	if len(p) != 1 || p[0] != "paper" || name != "size" {
		return nil
	}
	var all []string
	for _, s := range paper.Stocks() {
		all = append(all, s.Name)
	}
	return append(all, "roll 610 mm", "one sheet")
}

// plain takes a text out of its quotes.
func plain(s string) string {
	if len(s) > 1 && s[0] == '"' && strings.Count(s, `"`) == 2 && s[len(s)-1] == '"' {
		return s[1 : len(s)-1]
	}
	return s
}

// notNil makes of no list an empty one, which JSON writes as such.
func notNil[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
