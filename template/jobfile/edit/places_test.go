package edit_test

import (
	"testing"

	"underlay/template/jobfile/edit"

	"github.com/google/go-cmp/cmp"
)

const nook = `# For the nook
title = "Nook"

[paper]
size = "A4"             # or "Letter"
reach = "25 mm"

# The fern.
[[block]]
name = 'fern'
print = "90 x 90 mm"    # carved

# A cushion.
[[item]]
name = "cushion"
size = "50 x 50 cm"
border = "25 mm"
# hem = "12 mm"

  # All over.
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
  # lap = "0.5 mm"

[printing]
hand = "right"
`

// TestPlaces shows where things go, and what goes with what is taken away. Each case is a run of lines
// of the text above, and what becomes of it.
func TestPlaces(t *testing.T) {
	set := func(path, source string) func(string) (string, error) {
		return func(text string) (string, error) {
			p, err := edit.ParsePath(path)
			if err != nil {
				return "", err
			}
			return edit.Set(text, p, source)
		}
	}
	add := func(path string, fields ...edit.Field) func(string) (string, error) {
		return func(text string) (string, error) {
			p, _ := edit.ParsePath(path)
			return edit.Add(text, p, fields...)
		}
	}
	for _, c := range []struct {
		name     string
		change   func(string) (string, error)
		old, new string
	}{
		{"a longer value keeps the remark in its column", set("paper.size", `"Letter"`), "\"A4\"             # or", "\"Letter\"         # or"},
		{"a value longer than the room moves it", set("block.0.print", `"90.25 x 90.25 mm"`), "\"90 x 90 mm\"    # carved", "\"90.25 x 90.25 mm\" # carved"},
		{"single quotes stay", set("block.0.name", `"leaf"`), "'fern'", "'leaf'"},
		{"between its kin", set("paper.margin", `"7 mm"`), "# or \"Letter\"\n", "# or \"Letter\"\nmargin = \"7 mm\"\n"},
		{"the first of its kin", set("item.0.pass.0.name", `"ground"`), "  [[item.pass]]\n", "  [[item.pass]]\n  name = \"ground\"\n"},
		{"at the top", set("units", `"mm"`), "title = \"Nook\"\n", "title = \"Nook\"\nunits = \"mm\"\n"},
		{"a table of its own", set("printer.across", `"179 mm"`), "reach = \"25 mm\"\n", "reach = \"25 mm\"\n\n[printer]\nacross = \"179 mm\"\n"},
		{"a remark that offers the key is let be", set("item.0.hem", `"10 mm"`), "border = \"25 mm\"\n", "border = \"25 mm\"\nhem = \"10 mm\"\n"},
		{"a paint before the blocks", add("paint", edit.Field{"name", `"moss"`}), "[printing]\nhand = \"right\"\n", "[printing]\nhand = \"right\"\n\n[[paint]]\nname = \"moss\"\n"},
		{"a block after the blocks", add("block", edit.Field{"name", `"wave"`}), "# carved\n", "# carved\n\n[[block]]\nname = \"wave\"\n"},
		{"a pass after the passes", add("item.0.pass", edit.Field{"block", `"fern"`}), "  # lap = \"0.5 mm\"\n", "  # lap = \"0.5 mm\"\n\n  [[item.pass]]\n  block = \"fern\"\n"},
		{"a zone before the passes", add("item.0.keep-clear", edit.Field{"name", `"p"`}), "# hem = \"12 mm\"\n", "# hem = \"12 mm\"\n\n  [[item.keep-clear]]\n  name = \"p\"\n"},
		{"a key goes with its remark behind it", set("paper.size", ""), "size = \"A4\"             # or \"Letter\"\n", ""},
		{"a table goes with the remark above it", set("block.0", ""), "\n# The fern.\n[[block]]\nname = 'fern'\nprint = \"90 x 90 mm\"    # carved\n", ""},
		{"a pass goes alone", set("item.0.pass.0", ""), "\n  # All over.\n  [[item.pass]]\n  block = \"fern\"\n  gap = \"1 mm\"\n  # lap = \"0.5 mm\"\n", ""},
		{"an item goes with its passes", set("item.0", ""), "\n# A cushion.\n[[item]]\nname = \"cushion\"\nsize = \"50 x 50 cm\"\nborder = \"25 mm\"\n# hem = \"12 mm\"\n" +
			"\n  # All over.\n  [[item.pass]]\n  block = \"fern\"\n  gap = \"1 mm\"\n  # lap = \"0.5 mm\"\n", ""},
	} {
		got, err := c.change(nook)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if d := cmp.Diff(replaced(t, nook, c.old, c.new), got); d != "" {
			t.Errorf("%s: %s", c.name, d)
		}
	}
}

// TestDotsAndBraces: what is written with dots or in braces goes on so.
func TestDotsAndBraces(t *testing.T) {
	for _, c := range []struct{ text, path, source, want string }{
		{"paper.margin = '8 mm'\n[[block]]\n", "paper.size", `"A3"`, "paper.size = \"A3\"\npaper.margin = '8 mm'\n[[block]]\n"},
		{"paper = { margin = '8 mm' }", "paper.size", `"A3"`, "paper = { size = \"A3\", margin = '8 mm' }"},
		{"paper = {}\n", "paper.size", `"A3"`, "paper = { size = \"A3\" }\n"},
		{"x = [1, 2, 3]", "x.1", "", "x = [1, 3]"},
		{"x = [1, 2, 3]", "x.2", "", "x = [1, 2]"},
		{"x = [1, 2]", "x.2", "3", "x = [1, 2, 3]"},
		{"x = [\n  1, # one\n  2  # two\n]", "x.2", "3", "x = [\n  1, # one\n  2,  # two\n  3\n]"},
		{"x = [\n  1, # one\n  2, # two\n]", "x.2", "3", "x = [\n  1, # one\n  2, # two\n  3,\n]"},
		{"x = [\n  1, # one\n  2, # two\n]", "x.0", "", "x = [\n  2, # two\n]"},
		{"x = [\n  1, 2, # two\n  3\n]", "x.1", "", "x = [\n  1, # two\n  3\n]"},
		{"# All of it.\n[[block]]\nname = 'a'\n", "block.0", "", "# All of it.\n"},
		{"# All of it.\n[[block]]\nname = 'a'\n", "paper.size", `"A3"`, "# All of it.\n[paper]\nsize = \"A3\"\n\n[[block]]\nname = 'a'\n"},
		{"x = [ 1 ]\ny = 2", "x.0", "", "y = 2"},
		{"[[item]]\nname = 'a'\n", "item.0.colourway.0.swap.moss", `"teal"`, "refused"},
		{"[[item]]\n[[item.colourway]]\nname = 'a'\n", "item.0.colourway.0.swap.pond blue", `"teal"`, "[[item]]\n[[item.colourway]]\nname = 'a'\nswap = { \"pond blue\" = \"teal\" }\n"},
		{"[[item]]\n[[item.colourway]]\n[item.colourway.swap]\nmoss = 'teal'\n", "item.0.colourway.0.swap", `{ moss = "oak" }`, "[[item]]\n[[item.colourway]]\nswap = { moss = \"oak\" }\n"},
		{"[[item]]\n[[item.pass]]\nblock = 'a'\n", "item.0.pass.0.dabs", `[{ colour = "moss" }]`, "[[item]]\n[[item.pass]]\nblock = 'a'\ndabs = [{ colour = \"moss\" }]\n"},
		{"item = 1", "item.0.name", `"x"`, "refused"},
		{"[[item]]\n", "item", `"x"`, "refused"},
		{"[[item]]\n", "item.name", `"x"`, "refused"},
		{"", "item", `"x"`, "refused"},
		{"a = 1", "a.b", `"x"`, "refused"},
		{"a = 1", "a", `1 # x`, "refused"},
		{"a = 1", "a", "1\nb = 2", "refused"},
		{"a = 1", "", "1", "refused"},
		{"a = ", "a", "1", "refused"},
		{"a = 1\na = 2", "a", "1", "refused"},
	} {
		p, err := edit.ParsePath(c.path)
		got := c.text
		if err == nil {
			got, err = edit.Set(c.text, p, c.source)
		}
		switch {
		case c.want == "refused" && (err == nil || got != c.text):
			t.Errorf("%q, %s = %s: %q, %v", c.text, c.path, c.source, got, err)
		case c.want != "refused" && (err != nil || got != c.want):
			t.Errorf("%q, %s = %s: %v\n got %q\nwant %q", c.text, c.path, c.source, err, got, c.want)
		}
	}
}

// TestMarkStays: the mark that some editors put before a text is kept.
func TestMarkStays(t *testing.T) {
	got, err := edit.Set("\ufeffa = 1\r\n", edit.Path{"b"}, "2")
	if err != nil || got != "\ufeffa = 1\r\nb = 2\r\n" {
		t.Errorf("%q, %v", got, err)
	}
}
