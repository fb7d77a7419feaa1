package trace_test

import (
	"flag"
	"math"
	"testing"

	"underlay/template/trace"
)

var (
	photos = flag.Int("photos", 8, "how many photographs to make up")
	first  = flag.Uint64("first", 1, "the first one's seed")
)

// TestMadeUpPhotographs measures prints of known size in photographs made up by a camera that shares
// no code with what measures them: print size within 0.3 mm or 0.3 %, inked share within 2 points,
// none read wrongly, and no more than one in twenty refused. A run of many:
//
//	go test ./template/trace -run MadeUp -photos 240 -timeout 0
func TestMadeUpPhotographs(t *testing.T) {
	refused := 0
	for seed := *first; seed < *first+uint64(*photos); seed++ {
		s := made(t, seed)
		p, err := trace.Photo(s.img)
		if err != nil {
			refused++
			t.Logf("%d: %v", seed, err)
			continue
		}
		size := s.print.size
		across, down, inked := float64(p.Size.W-size.W), float64(p.Size.H-size.H), p.Inked-s.print.inked
		near := func(off, of float64) bool { return math.Abs(off) <= max(0.3, 0.003*of) }
		say := t.Logf
		if !near(across, float64(size.W)) || !near(down, float64(size.H)) || math.Abs(inked) > 0.02 || p.Light != (s.cloth.paint > s.cloth.ground) {
			say = t.Errorf
		}
		say("%d: %s, %.2f x %.2f mm, off %+.2f and %+.2f, inked %.3f off %+.3f, fit %.3f, worst %.3f, blur %.2f, %.1f pixels a mm, %.0f degrees aslant, light %v, %d specks, pale %.1f",
			seed, s.name, size.W, size.H, across, down, s.print.inked, inked, p.Fit, p.Worst, p.Blur, p.Scale, p.Aslant, p.Light, p.Specks, p.Pale)
	}
	if refused*20 > *photos {
		t.Errorf("%d of %d refused", refused, *photos)
	}
}
