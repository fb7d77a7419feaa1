package say

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/plan"
)

// TestEvenWayIsMarked: in a brick that steps by a third, a lopsided way that wins by one
// print is told beside the even one, and what is advised has that way.
func TestEvenWayIsMarked(t *testing.T) {
	found := 0
	for w := 100; w < 200; w += 3 {
		for _, h := range []int{137, 285, 359} {
			text := fmt.Sprintf("[[block]]\nname = 'fern'\nprint = '60 x 40 mm'\n[[item]]\nname = 'cover'\nsize = '%d x %d mm'\nborder = '10 mm'\n"+
				"[[item.pass]]\nblock = 'fern'\ngap = '2 mm'\nrepeat = 'brick'\nstep = '1/3'\n", w, h)
			p := planOf(t, text).Items[0].Passes[0]
			even := evener(p)
			if even < 0 {
				continue
			}
			found++
			said := Fit(planOf(t, text))
			if !strings.Contains(said, "\n    =  ") {
				t.Errorf("no way is marked:\n%s", said)
			}
			advice := evenerWords(p, even)
			keys := strings.TrimSuffix(advice[strings.Index(advice, "write ")+len("write "):], ".")
			again := planOf(t, text+strings.ReplaceAll(keys, " and ", "\n")+"\n").Items[0].Passes[0]
			b := again.Choice().Border
			if len(again.Prints) != len(p.Prints)-1 || math.Abs(float64(b.Left-b.Right)) > 1e-6 || math.Abs(float64(b.Top-b.Bottom)) > 1e-6 {
				t.Errorf("%q gives %d prints for %d, border %v", advice, len(again.Prints), len(p.Prints), b)
			}
		}
	}
	if found == 0 {
		t.Error("no cover has such a way")
	}
}

// TestServedByAll: of two passes the narrower range counts, from either; at its ends both passes
// have as many prints as on the cover itself, and just beyond one has not.
func TestServedByAll(t *testing.T) {
	job := func(side string) string {
		return "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\n" +
			"[[item]]\nname = 'floor cushion'\nsize = '" + side + " x 500 mm'\nborder = '25 mm'\n" +
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '3 mm'\n"
	}
	counts := func(p *plan.Plan) [2]int {
		return [2]int{len(p.Items[0].Passes[0].Prints), len(p.Items[0].Passes[1].Prints)}
	}
	home := planOf(t, job("500"))
	across, _, ok := ServedByAll(home.Items[0])
	if !ok {
		t.Fatal("no range")
	}
	for _, c := range []struct {
		side geometry.Length
		same bool
	}{{across.Least, true}, {across.Below - 0.01, true}, {across.Least - 0.01, false}, {across.Below + 0.01, false}} {
		got := counts(planOf(t, job(fmt.Sprintf("%.4f", float64(c.side)))))
		if same := got == counts(home); same != c.same {
			t.Errorf("%v mm wide: %v prints, for %v at home", c.side, got, counts(home))
		}
	}
	if n := strings.Count(Fit(home), "serves cloth"); n != 1 {
		t.Errorf("what the guide serves is said %d times", n)
	}
}

func TestOrdinal(t *testing.T) {
	for n, want := range map[int]string{1: "1st", 2: "2nd", 3: "3rd", 4: "4th", 11: "11th", 12: "12th", 13: "13th", 21: "21st", 112: "112th", 122: "122nd"} {
		if got := ordinal(n); got != want {
			t.Errorf("%d is %q, want %q", n, got, want)
		}
	}
}

// TestSetIsToldOnce is a worked case by hand (invented figures): 3 pieces, both faces, 16 prints
// of 90 x 90 mm, inked 0.5, 100 ml a square metre: 96 x 0.0081 x 0.5 x 100 = 38.88 ml; 96 prints
// of 75 seconds are two hours.
func TestSetIsToldOnce(t *testing.T) {
	text := Fit(planOf(t, "[printing]\nseconds-a-print = 75\npaint-cover = '100 ml/m2'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\ninked = 0.5\n"+
		"[[item]]\nname = 'floor cushion'\nsize = '500 x 500 mm'\nborder = '25 mm'\nquantity = 3\nfaces = ['front', 'back']\n"+
		"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss']\n"))
	const want = "\nThe whole set: 96 prints on 3 pieces; paint: 38.9 ml of moss for fern; 2 hours\nat the bench.\n"
	if !strings.HasSuffix(text, want) {
		t.Errorf("ends\n%s\nwant%s", text[max(0, len(text)-200):], want)
	}
}
