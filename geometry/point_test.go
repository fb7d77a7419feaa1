package geometry_test

import (
	"math"
	"testing"

	. "underlay/geometry"
)

// Clockwise as seen: with x to the right and y down, right turns to down, down to left.
func TestPointTurnsClockwiseAsSeen(t *testing.T) {
	p := Pt(3, 1)
	for a, want := range map[Angle]Point{0: {3, 1}, 90: {-1, 3}, 180: {-3, -1}, 270: {1, -3}, -90: {1, -3}} {
		if got := p.Turn(a); got != want {
			t.Errorf("turned by %v: %v, want exactly %v", float64(a), got, want)
		}
	}
	if got := Pt(1, 0).Turn(45); !got.Near(Pt(Length(math.Sqrt2)/2, Length(math.Sqrt2)/2)) {
		t.Errorf("turned by 45: %v", got)
	}
}

func TestPointDistance(t *testing.T) {
	if d := Pt(1, 2).Distance(Pt(4, 6)); d != 5 {
		t.Errorf("sides 3 and 4: %v, want 5", d)
	}
	if p := Pt(1, 2); !p.Near(Pt(1+9e-7, 2-9e-7)) || p.Near(Pt(1+1.1e-6, 2)) || p.Near(Pt(1, 2-1.1e-6)) {
		t.Error("Near is not within a millionth of a millimetre on both axes")
	}
}
