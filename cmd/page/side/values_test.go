package side

import (
	"strings"
	"testing"

	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/toml"
)

// all lists the values of every table.
func (v *Values) all() []Value {
	all := append([]Value{}, v.Job...)
	add := func(tables []Table) {
		for _, t := range tables {
			all = append(all, t.Values...)
		}
	}
	add(v.Blocks)
	add(v.Paints)
	for _, it := range v.Items {
		all = append(all, it.Values...)
		add(it.Zones)
		add(it.Colourways)
		for _, p := range it.Passes {
			all = append(all, p.Values...)
			add(p.Dabs)
		}
	}
	return all
}

// TestValuesSayAllThatStandsInAJob: each key of a job is among the values, with its line; and typed
// again as it is shown, it says the same, and no other line of the text changes.
func TestValuesSayAllThatStandsInAJob(t *testing.T) {
	n := 0
	for name, text := range jobs(t) {
		s := New()
		st := s.Look(text, Picked{Only: "none"}, 300)
		shown := map[string]Value{}
		for _, v := range st.Values.all() {
			shown[v.Path] = v
		}
		tree, err := treeOf(text)
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range placesIn(tree.TreeParser, tree.Root, nil, nil) {
			n := edit.Find(tree.Root, at.path)
			if n.Entry == (toml.ByteRange{}) || at.path[len(at.path)-1] == "dabs" || strings.Contains(at.path.String(), ".swap.") {
				continue
			}
			if v := shown[at.path.String()]; !v.Given || v.Line != n.Line || v.Text == "" || !v.Fits {
				t.Errorf("%s: %s is shown as %+v", name, at.path, v)
			}
		}
		for _, v := range shown {
			if !v.Given {
				continue
			}
			n++
			out, err := s.Set(text, v.Path, v.Text)
			if err != nil {
				t.Errorf("%s: %s = %s: %v", name, v.Path, v.Text, err)
				continue
			}
			if squeezed(out) != squeezed(text) {
				t.Errorf("%s: %s typed again as %q makes\n%s", name, v.Path, v.Text, out)
			}
		}
	}
	if n < 400 {
		t.Errorf("%d values", n)
	}
}

// squeezed leaves out of a text how lists are spaced.
func squeezed(text string) string {
	return strings.NewReplacer(" ", "", "'", `"`).Replace(text)
}

// value finds a value by its path.
func value(t *testing.T, st State, path string) Value {
	t.Helper()
	for _, v := range st.Values.all() {
		if v.Path == path {
			return v
		}
	}
	t.Fatalf("there is no %s", path)
	return Value{}
}

// TestValuesOffer: what is not given says what holds then, words are those that make sense there, and
// keys that make none are left out.
func TestValuesOffer(t *testing.T) {
	text, _ := Start("shade")
	text += "\n  [[item.pass]]\n  block = \"pebble\"\n  on = \"pebbles\"\n"
	st := New().Look(text, Picked{}, 300)
	if v := value(t, st, "paper.margin"); v.Given || v.Text != "" || v.Usual != "7 mm" || v.Kind != "a length" {
		t.Errorf("%+v", v)
	}
	if v := value(t, st, "item.0.pass.0.repeat"); strings.Join(v.Words, " ") != "straight brick half-drop honeycomb one placed" || v.Text != "half-drop" {
		t.Errorf("%+v", v)
	}
	if v := value(t, st, "item.0.pass.1.on"); strings.Join(v.Words, ",") != "pebbles" {
		t.Errorf("%+v", v)
	}
	if v := value(t, st, "item.0.pass.0.over"); strings.Join(v.Words, ",") != "true,false" || v.Usual != "false" {
		t.Errorf("%+v", v)
	}
	for _, v := range st.Values.all() {
		for _, none := range []string{"item.0.size", "item.0.top", "item.0.pass.0.on", "item.0.pass.0.sides", "item.0.pass.1.gap", "item.0.pass.1.repeat", "item.0.pass.0.face", "block.0.outline"} {
			if v.Path == none {
				t.Errorf("%s is offered", none)
			}
		}
		if v.Says == "" {
			t.Errorf("%s says nothing", v.Path)
		}
	}
}
