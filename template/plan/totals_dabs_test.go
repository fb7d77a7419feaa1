package plan

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// TestTotalsByDabs, by hand: 16 ferns of 90 x 90 mm on each of 6 cushions, half of the face carved, 100
// ml a square metre: 0.0081 m2 x 0.5 x 100 ml = 0.405 ml a print for the whole face. Ochre has a disc 30
// mm across and four quarter discs of 10 mm, moss the rest. Evening, 2 pieces, has moss for
// ochre, so one colour; night, 1 piece, plum for ochre. The pebble is round, 40 mm, all of it carved:
// clay has a ring 5 mm wide at its edge, and nothing else is dabbed.
func TestTotalsByDabs(t *testing.T) {
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
name = "pebble"
shape = "round"
print = "40 mm"
inked = 1
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
quantity = 6
[[item.colourway]]
name = "evening"
quantity = 2
swap = { ochre = "moss" }
[[item.colourway]]
name = "night"
swap = { ochre = "plum" }
[[item.pass]]
block = "fern"
gap = "1 mm"
dabs = [{ colour = "ochre", middle = "30 mm" }, { colour = "ochre", corners = "10 mm" }, { colour = "moss" }]
[[item.pass]]
block = "pebble"
repeat = "one"
over = true
dabs = [{ colour = "clay", edge = "5 mm" }]
`)
	total := NewTotals(p)
	type row struct {
		Block, Colour string
		Prints        int
		Paint         string
	}
	const whole = 0.0081 * 0.5 * 100
	ochre := (math.Pi*15*15 + math.Pi*10*10) * 1e-6 * 0.5 * 100
	moss := whole - ochre
	clay := math.Pi * (20*20 - 15*15) * 1e-6 * 100
	ml := func(v float64) string { return fmt.Sprintf("%.2f", v) }
	want := []row{
		{"fern", "ochre", 3 * 16, ml(3 * 16 * ochre)},
		{"fern", "moss", 6 * 16, ml(4*16*moss + 2*16*whole)},
		{"pebble", "clay", 6, ml(6 * clay)},
		{"fern", "plum", 16, ml(16 * ochre)},
	}
	var got []row
	for _, r := range total.Rows {
		got = append(got, row{r.Block, r.Colour, r.Prints, ml(r.Paint)})
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	// Each print 60 s, and a second colour 30 s on the ferns of the four pieces that have one.
	if want := time.Duration(6*17*60+4*16*30) * time.Second; (total.Bench - want).Abs() > time.Millisecond {
		t.Errorf("%v at the bench, want %v", total.Bench, want)
	}
}

// TestTotalsOfDabsWithoutInked: without the share that is inked there is no amount of paint, for dabs as for
// colours.
func TestTotalsOfDabsWithoutInked(t *testing.T) {
	p := planOf(t, `
[printing]
paint-cover = "100 ml/m2"
[[block]]
name = "fern"
print = "90 x 90 mm"
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
[[item.pass]]
block = "fern"
repeat = "one"
dabs = [{ colour = "ochre", middle = "30 mm" }, { colour = "moss" }]
`)
	want := []Total{{"fern", "ochre", 1, 0}, {"fern", "moss", 1, 0}}
	if d := cmp.Diff(want, NewTotals(p).Rows); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
