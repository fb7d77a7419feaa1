package bench

import (
	"strings"
	"testing"

	"underlay/template/plan"
)

// TestLongColoursOfLooks: the name of a colourway and its swaps, and of a paint, are broken into rows
// before anything of them is left out.
func TestLongColoursOfLooks(t *testing.T) {
	const paint, evening = "the green left over from the runner", "evening with the lamp on and the rain outside"
	p := planOf(t, `
[[paint]]
name = "`+paint+`"
looks = "#5f7a3a"
[[block]]
name = "fern"
print = "90 x 90 mm"
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
quantity = 5
  [[item.colourway]]
  name = "`+evening+`"
  quantity = 3
  swap = { plum = "teal" }
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
  dabs = [{ colour = "plum", middle = "30 mm" }, { colour = "`+paint+`" }]
`)
	said := func(texts []string) string { return strings.ToLower(strings.Join(texts, " ")) }
	look := said(labels(Looks(p, p.Items[0])[0].Pages))
	for _, want := range []string{paint, evening + " (teal for plum): 3 pieces"} {
		if !strings.Contains(look, want) {
			t.Errorf("the look does not say %q: %s", want, look)
		}
	}
	sheet := said(labels(Sheets(p, p.Items[0])[0].Pages))
	if want := "3 pieces, " + evening + " (teal for plum): 48 prints"; !strings.Contains(sheet, want) {
		t.Errorf("the bench sheet does not say %q", want)
	}
	if n := plan.NewTotals(p).Prints; n != 80 {
		t.Errorf("%d prints", n)
	}
}
