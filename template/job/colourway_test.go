package job

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestColourings: the pieces that no colourway takes keep the colours of the passes, on each face.
func TestColourings(t *testing.T) {
	way := func(name string, n int, face string) Colourway {
		return Colourway{Name: name, Quantity: n, Face: face, Swap: map[string]string{"moss": "teal"}}
	}
	both := []string{"front", "back"}
	for name, c := range map[string]struct {
		faces []string
		ways  []Colourway
		want  []string
	}{
		"none":              {both, nil, []string{"6 own"}},
		"some":              {both, []Colourway{way("evening", 2, "")}, []string{"4 own", "2 evening"}},
		"all":               {both, []Colourway{way("evening", 2, ""), way("dawn", 4, "")}, []string{"2 evening", "4 dawn"}},
		"of one face":       {both, []Colourway{way("evening", 6, "back")}, []string{"6 own front", "6 evening back"}},
		"one for each face": {both, []Colourway{way("dawn", 6, "front"), way("evening", 6, "back")}, []string{"6 dawn front", "6 evening back"}},
		"mixed":             {both, []Colourway{way("dawn", 3, ""), way("evening", 2, "back")}, []string{"3 own front", "1 own back", "3 dawn", "2 evening back"}},
		"without faces":     {nil, []Colourway{way("dawn", 5, "")}, []string{"1 own", "5 dawn"}},
	} {
		it := &Item{Quantity: 6, Faces: c.faces, Colourways: c.ways}
		var got []string
		on := map[string]int{}
		for _, k := range it.Colourings() {
			text, moss := "own", "moss"
			if k.Colourway != nil {
				text, moss = k.Colourway.Name, "teal"
			}
			text = fmt.Sprintf("%d %s", k.Pieces, text)
			if k.Face != "" {
				text += " " + k.Face
			}
			got = append(got, text)
			if k.Colour("moss") != moss || k.Colour("ochre") != "ochre" {
				t.Errorf("%s: %s prints %s for moss, %s for ochre", name, text, k.Colour("moss"), k.Colour("ochre"))
			}
			for _, f := range both {
				if k.On(f) {
					on[f] += k.Pieces
				}
			}
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", name, d)
		}
		if on["front"] != 6 || on["back"] != 6 {
			t.Errorf("%s: %v pieces on the faces, want 6 each", name, on)
		}
	}
}
