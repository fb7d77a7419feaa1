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

// TestRounded holds lengths that must be enough, or not too much, to what their unit can show.
func TestRounded(t *testing.T) {
	for u, step := range map[Unit]Length{UnitMM: 0.01, UnitCM: 0.01, UnitInch: 25.4 / 16} {
		for i := range 1000 {
			l := Length(i) / 7 * Length(math.Pi)
			up, down := u.Up(l), u.Down(l)
			if up < l-Tolerance || up > l+step || down > l+Tolerance || down < l-step {
				t.Fatalf("%v: up %v, down %v in %s", l, up, down, u)
			}
			if got, err := ParseLength(u.Format(up)); err != nil || got < l-Tolerance {
				t.Fatalf("%v is shown as %s: %v, %v", l, u.Format(up), got, err)
			}
			if again := u.Up(up); (again - up).Abs() > 1e-9 {
				t.Fatalf("%v rounded twice: %v", up, again)
			}
		}
	}
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		v      float64
		places int
		want   string
	}{
		{0, 2, "0"}, {-0.001, 2, "0"}, {3, 4, "3"}, {0.25, 3, "0.25"}, {-1.5, 0, "-2"}, {75.125, 2, "75.13"}, {1e9, 6, "1000000000"}, {0.1 + 0.2, 6, "0.3"},
	} {
		if got := Decimals(c.v, c.places); got != c.want {
			t.Errorf("Decimals(%v, %d) = %s, want %s", c.v, c.places, got, c.want)
		}
	}
}

func TestParseNumber(t *testing.T) {
	for text, want := range map[string]float64{"0.25": 0.25, "1/3": 1.0 / 3, " 1 / 2 ": 0.5, "1 1/2": 1.5, "08": 8} {
		if got, err := ParseNumber(text); err != nil || got != want {
			t.Errorf("ParseNumber(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "half", "1/0", "-1", "1e3", "0,5", "1/3 mm", "NaN"} {
		if got, err := ParseNumber(text); err == nil {
			t.Errorf("ParseNumber(%q) = %v", text, got)
		}
	}
}

// Half millimetres and thirty-seconds of an inch are what rulers are divided into: common practice.
func TestRuled(t *testing.T) {
	for _, c := range []struct {
		unit  Unit
		l     Length
		want  string
		exact bool
	}{
		{UnitMM, 64.34, "64.5", false},
		{UnitMM, 64.2, "64", false},
		{UnitMM, 64.25, "64.5", false},
		{UnitMM, 68.5, "68.5", true},
		{UnitMM, 68.504, "68.5", true},
		{UnitMM, 68.506, "68.5", false},
		{UnitMM, 250, "250", true},
		{UnitMM, -0.1, "0", false},
		{UnitMM, 0.3, "0.5", false},
		{UnitCM, 64.34, "6.45", false},
		{UnitCM, 250, "25", true},
		{UnitInch, 25.4 * 3 / 32, "3/32", true},
		{UnitInch, 25.4 * 17.5, "17 1/2", true},
		{UnitInch, 100, "3 15/16", false}, // 3.937 in, and 30/32 is 0.9375
	} {
		if got := c.unit.Ruled(c.l); got != c.want {
			t.Errorf("%v mm is ruled %q, want %q", c.l.Millimetres(), got, c.want)
		}
		if got := c.unit.Number(c.unit.OnRuler(c.l)); got != c.want && c.unit != UnitInch {
			t.Errorf("%v mm is %s on a ruler, want %s", c.l.Millimetres(), got, c.want)
		}
		if got := c.unit.Exact(c.l); got != c.exact {
			t.Errorf("%v mm is exact in %s: %v", c.l.Millimetres(), c.unit, got)
		}
	}
}
