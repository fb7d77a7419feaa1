package edit_test

import (
	"strings"
	"testing"

	"underlay/template/jobfile/edit"

	"github.com/google/go-cmp/cmp"
)

// replaced makes sure that there was something to put another in place of.
func replaced(t *testing.T, text string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%q is not in\n%s", pairs[i], text)
		}
		text = strings.ReplaceAll(text, pairs[i], pairs[i+1])
	}
	return text
}

const named = `[[paint]]
name = "moss"
looks = "green"

[[block]]
name = "FERN"
[[block]]
name = "wave"

[[item]]
name = "FERN bag"
faces = ["FACE", "back"]
[[item.keep-clear]]
face = "FACE"
[[item.colourway]]
face = "FACE"
swap = { "moss" = "teal", ochre = "moss" }
[[item.pass]]      # goes by its block's name
block = "FERN"
face = 'FACE'
colours = ["moss", "ochre"]
[[item.pass]]
name = "waves"
blocks = [["wave", "FERN"], ["FERN", "wave"]]
corner = "FERN"
between = "PASS"
colours-in-turn = [["moss"], ["ochre"]]
[[item.pass]]
name = "dots"
block = "wave"
on = "PASS"
dabs = [{ colour = "moss", middle = "3 mm" }, { colour = "ochre" }]
[[item.pass]]
name = "wave"
block = "wave"
on = "dots"
[[item]]
name = "other"
faces = ["FACE"]
[[item.pass]]
name = "FERN again"
block = "FERN"
face = "FACE"
[[item.pass]]
block = "wave"
on = "FERN again"
`

// TestRename: a new name is taken up by all that goes by the old one, and by nothing else.
func TestRename(t *testing.T) {
	start := replaced(t, named, "PASS", "FERN")
	for _, c := range []struct{ path, name, want string }{
		{"block.0.name", "leaf", replaced(t, named, `"FERN"`, `"leaf"`, "PASS", "leaf")},
		{"item.0.faces.0", "front", replaced(t, start, `faces = ["FACE", "back"]`, `faces = ["front", "back"]`, "[[item.keep-clear]]\nface = \"FACE\"", "[[item.keep-clear]]\nface = \"front\"",
			"[[item.colourway]]\nface = \"FACE\"", "[[item.colourway]]\nface = \"front\"", "'FACE'", "'front'")},
		{"paint.0.name", "dark moss", replaced(t, start, `"moss" = `, `"dark moss" = `, `"moss"`, `"dark moss"`)},
		{"item.0.pass.2.name", "spots", replaced(t, start, `"dots"`, `"spots"`)},
		{"item.0.name", "sack", replaced(t, start, "FERN bag", "sack")},
		{"item.0.pass.3.name", "w", replaced(t, start, "name = \"wave\"\nblock", "name = \"w\"\nblock")},
		{"item.1.pass.0.name", "leaf", replaced(t, start, "FERN again", "leaf")},
	} {
		p, _ := edit.ParsePath(c.path)
		got, err := edit.Rename(start, p, c.name)
		if err != nil {
			t.Errorf("%s: %v", c.path, err)
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s = %s: %s", c.path, c.name, d)
		}
	}
	// A pass that has the block's name as its own keeps it, and is still gone by.
	own := "[[block]]\nname = 'a'\n[[item]]\n[[item.pass]]\nname = 'a'\nblock = 'a'\n[[item.pass]]\nname = 'b'\non = 'a'\nblock = 'a'\n"
	if got, err := edit.Rename(own, edit.Path{"block", "0", "name"}, "c"); err != nil || got != strings.Replace(strings.ReplaceAll(own, "block = 'a'", "block = 'c'"), "name = 'a'", "name = 'c'", 1) {
		t.Errorf("%v\n%s", err, got)
	}
	// A second block of a name is not the one that passes go by.
	twice := "[[block]]\nname = 'a'\n[[block]]\nname = 'a'\n[[item]]\n[[item.pass]]\nblock = 'a'\n"
	got, err := edit.Rename(twice, edit.Path{"block", "1", "name"}, "b")
	if want := strings.Replace(twice, "[[block]]\nname = 'a'\n[[item", "[[block]]\nname = 'b'\n[[item", 1); err != nil || got != want {
		t.Errorf("%v\n%s", err, got)
	}
}
