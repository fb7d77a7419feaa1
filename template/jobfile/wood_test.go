package jobfile

import (
	"fmt"
	"strings"
	"testing"

	"underlay/geometry"
)

// TestWoodShapes reads the wood of each face, with a shape and without: it has the face's own
// shape, however its size is rounded, unless the job says another.
func TestWoodShapes(t *testing.T) {
	round := geometry.CircleOutline(geometry.Pt(0.1, 0.3), 32)
	square := geometry.RectOutline(geometry.RectAround(geometry.Pt(0.1, 0.3), geometry.Size{W: 64, H: 64}))
	hexagon := geometry.HexagonOutline(geometry.RectAround(geometry.Pt(0.1, 0.3), geometry.Size{W: 64, H: 64 * hexagonHeight}))
	leaf := `shape = "outline"` + "\noutline = [\"0 x 0 mm\", \"40 x 0 mm\", \"20 x 40 mm\"]\n"
	for _, c := range []struct {
		face, wood, shape string
		want              geometry.Outline // none: refused
	}{
		{"print = \"40 x 40 mm\"\n", "64 x 64 mm", "", square},
		{"print = \"40 x 40 mm\"\n", "64 mm", "", geometry.Outline{}},
		{"print = \"40 x 40 mm\"\n", "64 mm", "round", round},
		{"print = \"40 x 40 mm\"\n", "64 mm", "hexagon", hexagon},
		{"shape = \"round\"\nprint = \"40 mm\"\n", "64 mm", "", round},
		{"shape = \"round\"\nprint = \"40 mm\"\n", "64 x 64 mm", "", round},
		{"shape = \"round\"\nprint = \"40 mm\"\n", "6.4 x 6.4 cm", "", round},
		{"shape = \"round\"\nprint = \"40 mm\"\n", "64 x 70 mm", "", geometry.Outline{}},
		{"shape = \"round\"\nprint = \"40 mm\"\n", "64 x 64 mm", "rectangle", square},
		{"shape = \"round\"\nprint = \"40 mm\"\n", "64 mm", "hexagon", hexagon},
		{"shape = \"hexagon\"\nprint = \"40 mm\"\n", "64 mm", "", hexagon},
		{"shape = \"hexagon\"\nprint = \"40 mm\"\n", "64 x 73.9 mm", "", hexagon},
		{"shape = \"hexagon\"\nprint = \"40 mm\"\n", "64 x 64 mm", "", geometry.Outline{}},
		{"shape = \"hexagon\"\nprint = \"40 mm\"\n", "64 x 64 mm", "rectangle", square},
		{"shape = \"hexagon\"\nprint = \"40 mm\"\n", "64 mm", "round", round},
		{leaf, "64 x 64 mm", "", square},
		{leaf, "64 mm", "round", round},
		{leaf, "64 mm", "hexagon", hexagon},
	} {
		text := "[[block]]\nname = 'pebble'\n" + c.face + fmt.Sprintf("wood = %q\nwood-offset = '0.1 x 0.3 mm'\n", c.wood)
		if c.shape != "" {
			text += fmt.Sprintf("wood-shape = %q\n", c.shape)
		}
		text += "[[item]]\nname = 'mat'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
		j, err := Read("nook.toml", []byte(text))
		if err != nil {
			if !c.want.None() {
				t.Errorf("%v\n%s", err, text)
			}
			continue
		}
		got, _, isRound := j.Blocks[0].Wood.Round()
		_, _, wantRound := c.want.Round()
		a, b := j.Blocks[0].Wood.Bounds(), c.want.Bounds()
		if c.want.None() || isRound != wantRound || len(j.Blocks[0].Wood.Corners()) != len(c.want.Corners()) ||
			a.Min.Distance(b.Min)+a.Max.Distance(b.Max) > geometry.Tolerance {
			t.Errorf("%s wood %q, shape %q: %v round at %v, in %v", c.face, c.wood, c.shape, isRound, got, a)
		}
	}
}

// TestAdviceForWood does what the messages for round and six-sided wood say.
func TestAdviceForWood(t *testing.T) {
	for _, c := range []struct{ shape, wood, advice string }{
		{"round", `"64 x 70 mm"`, `"64 mm"`},
		{"round", `"64 x 70 mm"`, "\"64 x 70 mm\"\nwood-shape = \"rectangle\""},
		{"hexagon", `"64 x 70 mm"`, `"64 mm"`},
		{"hexagon", `"64 x 70 mm"`, "\"64 x 70 mm\"\nwood-shape = \"rectangle\""},
	} {
		text := "[[block]]\nname = 'pebble'\nprint = '40 mm'\nshape = '" + c.shape + "'\nwood = " + c.wood +
			"\n[[item]]\nname = 'mat'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
		_, err := Read("nook.toml", []byte(text))
		wood, shape, both := strings.Cut(c.advice, "\n")
		if err == nil || !both && !strings.Contains(err.Error(), wood) || !strings.Contains(err.Error(), shape) {
			t.Fatalf("%v: %v", c, err)
		}
		if _, err := Read("nook.toml", []byte(strings.Replace(text, c.wood, c.advice, 1))); err != nil {
			t.Errorf("%v: what was advised is refused: %v", c, err)
		}
	}
}
