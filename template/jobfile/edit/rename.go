package edit

import (
	"slices"

	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// Rename returns the text with another name at a path, which is one that Names knows, and with that
// name wherever the job goes by the old one: a block's in the passes that print it, a pass's in those
// that are set by its prints, a face's in zones, passes and colourways, a paint's where it is a
// colour. Of two things of one name only the first is gone by. Errors as those of Set.
func Rename(data string, p Path, name string) (string, error) {
	return edited(data, func(t *text) error {
		n := Find(t.Root, p)
		if n == nil || n.Form != toml.Single {
			return missing(p)
		}
		old := said(n)
		t.put(n, words.TOML(name))
		if old != "" {
			for _, other := range t.goneBy(p, old) {
				if other != n && said(other) == old {
					t.put(other, words.TOML(name))
				}
			}
			t.renameSwaps(p, old, name)
		}
		return nil
	})
}

// Names tells whether other places of a job go by the name at a path.
func Names(p Path) bool {
	switch named := named(p); {
	case slices.Equal(named, Path{"item", "faces"}):
		return len(p) == 4
	default:
		return slices.Equal(named, Path{"block", "name"}) || slices.Equal(named, Path{"item", "pass", "name"}) || slices.Equal(named, Path{"paint", "name"})
	}
}

// goneBy lists the places that may have the name at a path.
func (t *text) goneBy(p Path, old string) []*toml.Node {
	if !Names(p) {
		return nil
	}
	var all []*toml.Node
	items := tables(t.Root, "item")
	switch p[0] {
	case "paint":
		if first := firstNamed(tables(t.Root, "paint"), old); first != at(tables(t.Root, "paint"), Find(t.Root, p[:2])) {
			return nil
		}
		for _, it := range items {
			all = append(all, colours(it)...)
		}
	case "block":
		if first := firstNamed(tables(t.Root, "block"), old); first != at(tables(t.Root, "block"), Find(t.Root, p[:2])) {
			return nil
		}
		for _, it := range items {
			all = append(all, ofBlock(it, old)...)
		}
	default:
		it := Find(t.Root, p[:2])
		passes := tables(it, "pass")
		if p[2] == "faces" {
			for _, run := range []string{"keep-clear", "colourway", "pass"} {
				for _, n := range tables(it, run) {
					all = append(all, leaves(n.Keys["face"])...)
				}
			}
			return all
		}
		if firstPass(passes, old) == at(passes, Find(t.Root, p[:4])) {
			all = hosts(passes)
		}
	}
	return all
}

// ofBlock lists where the passes of an item name a block, and by it a pass that has no name of its own.
func ofBlock(it *toml.Node, old string) []*toml.Node {
	var all []*toml.Node
	passes := tables(it, "pass")
	for _, n := range passes {
		all = append(all, leaves(n.Keys["block"])...)
		all = append(all, leaves(n.Keys["blocks"])...)
		all = append(all, leaves(n.Keys["corner"])...)
	}
	if i := firstPass(passes, old); i >= 0 && passes[i].Keys["name"] == nil {
		all = append(all, hosts(passes)...)
	}
	return all
}

// firstPass is the first pass of a name, given or that of its block; -1 for none.
func firstPass(passes []*toml.Node, name string) int {
	return slices.IndexFunc(passes, func(n *toml.Node) bool {
		if n.Keys["name"] != nil {
			return nameOf(n) == name
		}
		return said(n.Keys["block"]) == name
	})
}

func firstNamed(run []*toml.Node, name string) int {
	return slices.IndexFunc(run, func(n *toml.Node) bool { return nameOf(n) == name })
}

// hosts lists where passes say by whose prints they are set.
func hosts(passes []*toml.Node) []*toml.Node {
	var all []*toml.Node
	for _, n := range passes {
		all = append(append(all, leaves(n.Keys["between"])...), leaves(n.Keys["on"])...)
	}
	return all
}

// colours lists where an item names colours, but for the left sides of swaps.
func colours(it *toml.Node) []*toml.Node {
	var all []*toml.Node
	for _, n := range tables(it, "pass") {
		all = append(append(all, leaves(n.Keys["colours"])...), leaves(n.Keys["colours-in-turn"])...)
		for _, dab := range tables(n, "dabs") {
			all = append(all, leaves(dab.Keys["colour"])...)
		}
	}
	for _, n := range tables(it, "colourway") {
		if swap := n.Keys["swap"]; swap != nil {
			for _, key := range swap.Order {
				all = append(all, leaves(swap.Keys[key])...)
			}
		}
	}
	return all
}

// renameSwaps changes the left sides of swaps that are a paint's name.
func (t *text) renameSwaps(p Path, old, name string) {
	if p[0] != "paint" || firstNamed(tables(t.Root, "paint"), old) != at(tables(t.Root, "paint"), Find(t.Root, p[:2])) {
		return
	}
	for _, it := range tables(t.Root, "item") {
		for _, n := range tables(it, "colourway") {
			if swap := n.Keys["swap"]; swap != nil && swap.Form == toml.Table && swap.Keys[old] != nil && swap.Keys[name] == nil {
				t.replace(swap.Keys[old].Name, spelled([]string{name}))
			}
		}
	}
}

// tables are those of a run in a table; none where there is no such run.
func tables(n *toml.Node, run string) []*toml.Node {
	if n == nil || n.Keys[run] == nil || n.Keys[run].Form != toml.Tables {
		return nil
	}
	return n.Keys[run].Items
}

// leaves are the single values of a value.
func leaves(n *toml.Node) []*toml.Node {
	if n == nil {
		return nil
	}
	if n.Form == toml.Single {
		return []*toml.Node{n}
	}
	var all []*toml.Node
	for _, i := range n.Items {
		all = append(all, leaves(i)...)
	}
	return all
}
