package sheets

import (
	"testing"
)

// All marks of four signs, letter, figure, letter, figure, have squares of their own: as many in
// each as in any other, so that loose sheets lie edge to edge.
func TestEverySelvedgeIsItsOwn(t *testing.T) {
	seen := map[string]string{}
	for a := 'A'; a <= 'Z'; a++ {
		for b := '0'; b <= '9'; b++ {
			for c := 'A'; c <= 'Z'; c++ {
				for d := '0'; d <= '9'; d++ {
					mark := string([]rune{a, b, c, d})
					key := ""
					for _, group := range selvedgeBits(mark) {
						for _, filled := range group {
							key += map[bool]string{true: "x", false: "o"}[filled]
						}
					}
					if other, ok := seen[key]; ok || len(key) != 18 {
						t.Fatalf("%s: %s, like %q", mark, key, other)
					}
					seen[key] = mark
				}
			}
		}
	}
}

// What is drawn is what the mark says, in the same order along as down.
func TestSelvedgeIsDrawnAsItSays(t *testing.T) {
	for _, mark := range []string{"K7R4", "A0Z9"} {
		for _, down := range []bool{false, true} {
			d := selvedge(mark, down, 1)
			want := 0
			for _, group := range selvedgeBits(mark) {
				for _, filled := range group {
					if filled {
						want++
					}
				}
			}
			// Two bars more: where it begins and where it ends.
			if len(d.Fills) != want+2 || len(d.Strokes) != 18-want || (d.Bounds.H() > d.Bounds.W()) != down {
				t.Errorf("%s, down %v: %d filled and %d open squares, %v", mark, down, len(d.Fills)-2, len(d.Strokes), d.Bounds)
			}
			first, last := d.Fills[0].Bounds(), d.Fills[len(d.Fills)-1].Bounds()
			if max(first.W(), first.H()) <= max(last.W(), last.H()) {
				t.Errorf("%s: begins like it ends", mark)
			}
		}
	}
}
