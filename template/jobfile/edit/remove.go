package edit

import (
	"fmt"

	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// Remove returns the text without what is at a path: a key with its value and the remark behind it,
// one of a list, or a table with the remarks right above its heading and all that is below it. The
// last of a list takes the list with it. Errors as those of Set.
func Remove(data string, p Path) (string, error) {
	return edited(data, func(t *text) error {
		on := way(t.Root, p)
		if len(p) == 0 || len(on) <= len(p) {
			return fmt.Errorf("there is no %s to take away", words.Shown(p.String()))
		}
		for len(on) > 2 && on[len(on)-2].Closed && len(on[len(on)-2].Items) == 1 {
			p, on = p[:len(p)-1], on[:len(on)-1]
		}
		t.drop(p, on[len(on)-1])
		return nil
	})
}

// drop takes away a place that is at a path.
func (t *text) drop(p Path, n *toml.Node) {
	on := way(t.Root, p)
	above := on[len(on)-2]
	if above.Closed && above.Form != toml.Table {
		t.dropFrom(places(above.Items), at(above.Items, n), above.At)
		return
	}
	for i := len(on) - 2; i >= 0; i-- {
		if on[i].Closed && on[i].Form == toml.Table {
			t.dropKeys(on[i], entries(n))
			return
		}
		if !on[i].Dotted {
			break
		}
	}
	for _, r := range entries(n) {
		t.remove(t.lines(r))
	}
	t.dropSections(n)
}

// places are where the values of a list stand.
func places(items []*toml.Node) []toml.ByteRange {
	var all []toml.ByteRange
	for _, n := range items {
		all = append(all, n.At)
	}
	return all
}

func at(items []*toml.Node, n *toml.Node) int {
	for i, x := range items {
		if x == n {
			return i
		}
	}
	return -1
}

// dropKeys takes keys out of braces.
func (t *text) dropKeys(braces *toml.Node, drop []toml.ByteRange) {
	gone := map[toml.ByteRange]bool{}
	for _, r := range drop {
		gone[r] = true
	}
	var all []toml.ByteRange
	for _, key := range braces.Order {
		all = append(all, entries(braces.Keys[key])...)
	}
	sortRanges(all)
	if len(drop) == len(all) {
		t.replace(braces.At, "{}")
		return
	}
	for i := len(all) - 1; i >= 0; i-- {
		if gone[all[i]] {
			t.dropFrom(all, i, braces.At)
		}
	}
}
