package geometry_test

import (
	"math"
	"testing"

	. "underlay/geometry"
)

func TestAngleNormal(t *testing.T) {
	for a, want := range map[Angle]Angle{
		0: 0, 90: 90, 360: 0, -90: 270, 450: 90, -360: 0, -720: 0, 1170: 90,
		359.9: 359.9, 359.9999999: 0, 360.0000001: 0, -1e-7: 0, 1e-7: 0, 0.001: 0.001,
	} {
		if got := a.Normal(); math.Abs(float64(got-want)) > 1e-9 || math.Signbit(float64(got)) {
			t.Errorf("%v is %v, want %v", float64(a), float64(got), want)
		}
	}
}

func TestAngleSinCos(t *testing.T) {
	for k, want := range [][2]float64{{0, 1}, {1, 0}, {0, -1}, {-1, 0}} {
		for _, turns := range []float64{-2, 0, 5} {
			if sin, cos := Angle(90*float64(k) + 360*turns).SinCos(); sin != want[0] || cos != want[1] {
				t.Errorf("%d quarter turns: %v %v", k, sin, cos)
			}
		}
	}
	// Sine and cosine of 30 and 45 degrees: elementary geometry.
	for a, want := range map[Angle][2]float64{30: {0.5, math.Sqrt(3) / 2}, -45: {-math.Sqrt2 / 2, math.Sqrt2 / 2}} {
		if sin, cos := a.SinCos(); math.Abs(sin-want[0]) > 1e-15 || math.Abs(cos-want[1]) > 1e-15 {
			t.Errorf("%v: %v %v", a, sin, cos)
		}
	}
	if got := Degrees(math.Pi / 3); math.Abs(float64(got-60)) > 1e-12 {
		t.Errorf("a third of pi is %v", got)
	}
}
