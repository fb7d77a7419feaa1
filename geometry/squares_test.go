package geometry_test

import (
	"testing"

	"github.com/paulmach/orb/planar"

	. "underlay/geometry"
)

// Figures of whole squares can be counted square by square, also where edges lie on edges.
func TestHoldsClearOfSquares(t *testing.T) {
	rnd := seeded(33)
	squares := func() (Polygon, map[[2]int]bool) {
		p := stairs(rnd, 1+rnd.IntN(4), 1)
		cells := map[[2]int]bool{}
		for x := range 4 {
			for y := -4; y < 4; y++ {
				if planar.RingContains(ring(p), orbPoint(Pt(Length(x)+0.5, Length(y)+0.5))) {
					cells[[2]int{x, y}] = true
				}
			}
		}
		return p, cells
	}
	held, refused := 0, 0
	for range 3000 {
		outer, outerCells := squares()
		inner, innerCells := squares()
		dx, dy, turn := rnd.IntN(3)-1, rnd.IntN(3)-1, Angle(15*rnd.IntN(24))
		want, overlap := true, false
		for c := range innerCells {
			if outerCells[[2]int{c[0] + dx, c[1] + dy}] {
				overlap = true
			} else {
				want = false
			}
		}
		inner = inner.Move(Pt(Length(dx), Length(dy)))
		o, i := PolygonOutline(outer).Turn(turn), PolygonOutline(inner).Turn(turn)
		if got := o.HoldsClear(i, 0); got != want {
			t.Fatalf("%v holds %v, both turned by %v: %v, want %v", outer, inner, float64(turn), got, want)
		}
		if overlap && o.Distance(i) != 0 {
			t.Fatalf("%v and %v overlap at a distance of %v", outer, inner, o.Distance(i))
		}
		if want {
			held++
		} else {
			refused++
		}
	}
	if held < 50 || refused < 50 {
		t.Errorf("%d held and %d refused: too few of one kind to tell", held, refused)
	}
}
