package plan

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// TestTotalsByColourway, by hand: 9 ferns of 90 mm on each of two faces of 6 cushions, 4 acorns of
// 30 mm on the front. A fern takes 0.0081 m2 x 0.5 x 100 ml = 0.405 ml, shared by moss and ochre, an
// acorn 0.0009 x 0.5 x 100 = 0.045 ml of slate. Evening takes 3 pieces: teal for moss and slate.
// Night takes the backs of 2: moss for ochre, so that a print has one colour.
func TestTotalsByColourway(t *testing.T) {
	p := planOf(t, `
[printing]
seconds-a-print = 60
seconds-a-colour = 30
paint-cover = "100 ml/m2"
[[block]]
name = "fern"
print = "90 x 90 mm"
inked = 0.5
[[block]]
name = "acorn"
print = "30 x 30 mm"
inked = 0.5
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
faces = ["front", "back"]
quantity = 6
[[item.colourway]]
name = "evening"
quantity = 3
swap = { moss = "teal", slate = "teal" }
[[item.colourway]]
name = "night"
face = "back"
quantity = 2
swap = { ochre = "moss" }
[[item.pass]]
block = "fern"
gap = "31 mm"
colours = ["moss", "ochre"]
[[item.pass]]
block = "acorn"
between = "fern"
face = "front"
colours = ["slate"]
`)
	// With a gap of 31 mm there are 3 x 3 ferns, 4 x 4 need 453 mm of 450; and 2 x 2 openings.
	const ferns, acorns = 9, 4
	total := NewTotals(p)
	type row struct {
		Block, Colour string
		Prints        int
		Paint         string
	}
	rows := func(all []Total) (got []row) {
		for _, r := range all {
			got = append(got, row{r.Block, r.Colour, r.Prints, fmt.Sprintf("%.4f", r.Paint)})
		}
		return got
	}
	ml := func(v float64) string { return fmt.Sprintf("%.4f", v) }
	const fern, acorn = 0.405, 0.045
	want := map[string][]row{
		"6: all": {
			{"fern", "moss", ferns*(3+1) + ferns*2, ml(ferns*4*fern/2 + ferns*2*fern)}, {"fern", "ochre", ferns * (4 + 6), ml(ferns * 10 * fern / 2)},
			{"acorn", "slate", acorns * 3, ml(acorns * 3 * acorn)}, {"fern", "teal", ferns * 6, ml(ferns * 6 * fern / 2)}, {"acorn", "teal", acorns * 3, ml(acorns * 3 * acorn)},
		},
		"3: own front":  {{"fern", "moss", ferns * 3, ml(ferns * 3 * fern / 2)}, {"fern", "ochre", ferns * 3, ml(ferns * 3 * fern / 2)}, {"acorn", "slate", acorns * 3, ml(acorns * 3 * acorn)}},
		"1: own back":   {{"fern", "moss", ferns, ml(ferns * fern / 2)}, {"fern", "ochre", ferns, ml(ferns * fern / 2)}},
		"3: evening ":   {{"fern", "teal", ferns * 6, ml(ferns * 6 * fern / 2)}, {"fern", "ochre", ferns * 6, ml(ferns * 6 * fern / 2)}, {"acorn", "teal", acorns * 3, ml(acorns * 3 * acorn)}},
		"2: night back": {{"fern", "moss", ferns * 2, ml(ferns * 2 * fern)}},
	}
	got := map[string][]row{"6: all": rows(total.Rows)}
	prints := 0
	for _, c := range total.Colourings {
		name := "own"
		if c.Colourway != nil {
			name = c.Colourway.Name
		}
		got[fmt.Sprintf("%d: %s %s", c.Pieces, name, c.Face)] = rows(c.Rows)
		prints += c.Prints
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if n := 6 * (2*ferns + acorns); total.Prints != n || prints != n {
		t.Errorf("%d prints, by colouring %d, want %d", total.Prints, prints, n)
	}
	// Every print 60 s; a second colour 30 s on ferns but those of the backs in night.
	seconds := 60*6*(2*ferns+acorns) + 30*(12-2)*ferns
	if math.Abs(total.Bench.Seconds()-float64(seconds)) > 1e-6 {
		t.Errorf("%v at the bench, want %v", total.Bench, time.Duration(seconds)*time.Second)
	}
}
