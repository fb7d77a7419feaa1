package plan

import (
	"math"
	"testing"

	"underlay/geometry"
)

// TestRounded holds lengths that must be enough, or not too much, to what their unit can show.
func TestRounded(t *testing.T) {
	for _, u := range []geometry.Unit{geometry.UnitMM, geometry.UnitCM, geometry.UnitInch} {
		for i := range 1000 {
			l := geometry.Length(i) / 7 * geometry.Length(math.Pi)
			up, down := RoundedUp(l, u), RoundedDown(l, u)
			if up < l-geometry.Tolerance || up > l+step(u) || down > l+geometry.Tolerance || down < l-step(u) {
				t.Fatalf("%v: up %v, down %v in %s", l, up, down, u)
			}
			if got, err := geometry.ParseLength(u.Format(up)); err != nil || got < l-geometry.Tolerance {
				t.Fatalf("%v is shown as %s: %v, %v", l, u.Format(up), got, err)
			}
			if again := RoundedUp(up, u); math.Abs(float64(again-up)) > 1e-9 {
				t.Fatalf("%v rounded twice: %v", up, again)
			}
		}
	}
}
