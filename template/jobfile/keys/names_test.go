package keys

import (
	"strings"
	"testing"
)

// TestNamesOfKeys holds the lists of other names to the table of keys.
func TestNamesOfKeys(t *testing.T) {
	trees := map[string]*KeyTree{}
	var walk func(*KeyTree)
	walk = func(k *KeyTree) {
		trees[k.Path] = k
		for _, below := range k.Tables {
			walk(below)
		}
	}
	walk(NewKeyTree())
	for _, n := range append(otherNames(), listed()...) {
		tree := trees[n.in]
		if tree == nil {
			t.Errorf("there is no table %q", n.in)
			continue
		}
		if _, ok := tree.Keys[n.Key]; n.Key != "" && !ok {
			t.Errorf("%s has no key %q", tree.Heading(), n.Key)
		}
		for _, w := range strings.Fields(n.called) {
			if _, ok := tree.Keys[w]; ok {
				t.Errorf("%s has a key %q of its own", tree.Heading(), w)
			}
		}
	}
	for _, tree := range trees {
		for _, name := range tree.Order {
			k := tree.Keys[name]
			if k.says == "" || k.Kind == "" || !strings.HasSuffix(k.says, ".") || k.Kind == aWord && len(k.Words) == 0 {
				t.Errorf("%s: %+v lacks something", tree.Heading(), k)
			}
		}
	}
}
