package geometry_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	. "underlay/geometry"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		unit Unit
		l    Length
		want string
	}{
		{UnitMM, 90, "90 mm"},
		{UnitMM, 12.5, "12.5 mm"},
		{UnitMM, 100, "100 mm"},
		{UnitMM, 1.239, "1.24 mm"},
		{UnitMM, 22.9999999999, "23 mm"},
		{UnitMM, -0.5, "-0.5 mm"},
		{UnitMM, -0.004, "0 mm"},
		{UnitMM, Length(math.Copysign(0, -1)), "0 mm"},
		{UnitMM, 1e9, "1000000000 mm"},
		{UnitCM, 52.5, "5.25 cm"},
		{UnitCM, 500, "50 cm"},
		{UnitCM, 0.05, "0.005 cm"},
		{UnitCM, 1.2345, "0.123 cm"},
		{UnitCM, -0.004, "0 cm"},
		// Halves that sums have moved by a hair are written alike: common practice, no source.
		{UnitMM, 12.345 - 1e-10, "12.35 mm"},
		{UnitMM, 12.345 + 1e-10, "12.35 mm"},
		{UnitInch, 93.0/32*25.4 - 1e-10, "2 15/16 in"},
		{UnitInch, 93.0/32*25.4 + 1e-10, "2 15/16 in"},
		{UnitInch, 92.0/32*25.4 - 1e-10, "2 7/8 in"},
		{UnitInch, 0, "0 in"},
		{UnitInch, 88.9, "3 1/2 in"},
		{UnitInch, 450.85, "17 3/4 in"},
		{UnitInch, 25.4, "1 in"},
		{UnitInch, 25.3, "1 in"},
		{UnitInch, -1.5875, "-1/16 in"},
		{UnitInch, -0.7, "0 in"},
		{UnitInch, -88.9, "-3 1/2 in"},
		{UnitInch, 3.175, "1/8 in"},
		{UnitInch, 25.4 * 15 / 16, "15/16 in"},
	} {
		if got := c.unit.Format(c.l); got != c.want {
			t.Errorf("%v mm is written %q, want %q", c.l.Millimetres(), got, c.want)
		}
		if got := c.unit.Number(c.l) + " " + c.unit.String(); got != c.want {
			t.Errorf("%v mm is written %q, want %q", c.l.Millimetres(), got, c.want)
		}
	}
}

func TestFormatSize(t *testing.T) {
	got := []string{
		UnitMM.FormatSize(Size{W: 90, H: 90}),
		UnitCM.FormatSize(Size{W: 500, H: 605}),
		UnitInch.FormatSize(Size{W: 88.9, H: 25.4}),
	}
	if d := cmp.Diff([]string{"90 × 90 mm", "50 × 60.5 cm", "3 1/2 × 1 in"}, got); d != "" {
		t.Error(d)
	}
	for i, s := range got {
		want := []Size{{W: 90, H: 90}, {W: 500, H: 605}, {W: 88.9, H: 25.4}}[i]
		if size, err := ParseSize(s); err != nil || size != want {
			t.Errorf("%q is read as %v, %v", s, size, err)
		}
	}
}

func TestZeroUnit(t *testing.T) {
	var zero Unit
	if zero != UnitMM {
		t.Error("the zero unit is not the millimetre")
	}
}
