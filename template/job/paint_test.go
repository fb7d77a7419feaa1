package job

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/paper"
)

func TestLooks(t *testing.T) {
	j := &Job{Paints: []Paint{{Name: "moss", Looks: paper.Ink{R: 95, G: 122, B: 58}}, {Name: "teal", Looks: paper.Ink{R: 1, G: 2, B: 3}}}}
	type looks struct {
		Ink   paper.Ink
		Known bool
	}
	for colour, want := range map[string]looks{
		"moss":       {paper.Ink{R: 95, G: 122, B: 58}, true},
		"teal":       {paper.Ink{R: 1, G: 2, B: 3}, true},     // the maker's own, not that of CSS
		"Teal":       {paper.Ink{R: 0, G: 128, B: 128}, true}, // another name than the maker's
		"Light blue": {paper.Ink{R: 173, G: 216, B: 230}, true},
		"pond blue":  {paper.Grey(128), false},
		"":           {paper.Grey(40), false},
	} {
		ink, known := j.Looks(colour)
		if d := cmp.Diff(want, looks{ink, known}); d != "" {
			t.Errorf("%q (-want +got):\n%s", colour, d)
		}
	}
}

func TestColours(t *testing.T) {
	j := &Job{Items: []*Item{
		{Passes: []*Pass{{Colours: []string{"moss", "ochre"}}, {Mix: Mix{Rows: [][]int{{0, 1}}, Parts: []Part{{Colours: []string{"ochre"}}, {Colours: []string{"sand"}}}}}}},
		{Passes: []*Pass{{Colours: []string{"moss"}}, {}}, Colourways: []Colourway{{Swap: map[string]string{"moss": "teal", "moonlight": "night"}}}},
	}}
	if d := cmp.Diff([]string{"moss", "ochre", "sand", "moonlight", "night", "teal"}, j.Colours()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
