package paper

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
)

// The table, with its sources, is testdata/paper.tsv.
func TestStocksAreThePublishedSizes(t *testing.T) {
	table, err := os.ReadFile("../testdata/paper.tsv")
	if err != nil {
		t.Fatal(err)
	}
	var listed []string
	for line := range strings.Lines(string(table)) {
		f := strings.Split(strings.TrimSpace(line), "\t")
		if len(f) != 5 || strings.HasPrefix(line, "#") {
			continue
		}
		listed = append(listed, f[0])
		var want [2]float64
		for i := range want {
			if want[i], err = strconv.ParseFloat(f[1+i], 64); err != nil {
				t.Fatal(err)
			}
			if f[3] == "in" {
				want[i] *= 25.4 // exactly: international inch, 1959 (NIST SP 811)
			}
		}
		for _, name := range []string{f[0], strings.ToUpper(f[0]), "  " + strings.ToLower(f[0]) + " "} {
			got, err := ParseStock(name)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			if got.Name != f[0] || math.Abs(got.Size.W.Millimetres()-want[0]) > 1e-9 ||
				math.Abs(got.Size.H.Millimetres()-want[1]) > 1e-9 {
				t.Errorf("%s: got %v, want %v mm", name, got, want)
			}
		}
	}
	var named []string
	for _, s := range Stocks() {
		named = append(named, s.Name)
	}
	if diff := cmp.Diff(listed, named); diff != "" {
		t.Errorf("papers in the table and in the program (-table +program):\n%s", diff)
	}
}

// Halving a sheet across its longer side gives the next of the series, rounded down to a
// whole millimetre (ISO 216, 3.1 and 3.2, from memory).
func TestSeriesAHalves(t *testing.T) {
	all := Stocks()
	for i := range 6 {
		a, b := all[i].Size, all[i+1].Size
		if want := (geometry.Size{W: geometry.Length(math.Floor(float64(a.H) / 2)), H: a.W}); b != want {
			t.Errorf("half of %s is %v, and %s is %v", all[i].Name, want, all[i+1].Name, b)
		}
	}
}

func TestParseStockForms(t *testing.T) {
	for in, want := range map[string]Stock{
		"610 x 900 mm":  {Name: "610 × 900 mm", Size: geometry.Size{W: 610, H: 900}},
		"900 × 610 mm":  {Name: "610 × 900 mm", Size: geometry.Size{W: 610, H: 900}},
		"roll 610 mm":   {Name: "roll 610 mm", Size: geometry.Size{W: 610}, Roll: true},
		"Roll  610 mm ": {Name: "roll 610 mm", Size: geometry.Size{W: 610}, Roll: true},
		"One Sheet":     {Name: "one sheet", OneSheet: true},
		"50 x 50 mm":    {Name: "50 × 50 mm", Size: geometry.Size{W: 50, H: 50}},
		"roll 10000 mm": {Name: "roll 10000 mm", Size: geometry.Size{W: 10000}, Roll: true},
	} {
		got, err := ParseStock(in)
		if err != nil {
			t.Errorf("%q: %v", in, err)
			continue
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", in, diff)
		}
		if again, err := ParseStock(got.Name); err != nil || again != got {
			t.Errorf("%q, read again by its name %q: %v, %v", in, got.Name, again, err)
		}
	}
}

func TestParseStockErrors(t *testing.T) {
	for _, c := range []struct {
		in   string
		says []string
	}{
		{"A7", []string{`"A7"`, "A0, A1, A2", "one sheet", "roll 610 mm"}},
		{"Leter", []string{`"Leter"`, "Letter"}},
		{"rol 610 mm", []string{`"roll 610 mm"`}},
		{"", []string{"A4", "one sheet"}},
		{"wallpaper", []string{`"wallpaper"`, "A4"}},
		{"roll", []string{"how wide", `"roll 610 mm"`}},
		{"roll 610", []string{"roll"}},
		{"roll -3 mm", []string{"roll"}},
		{"610 x 900", []string{"610 x 900"}},
		{"49 x 900 mm", []string{"49 mm", "50 mm or more"}},
		{"610 x 10001 mm", []string{"10001 mm", "10000 mm or less"}},
		{"roll 20 mm", []string{"20 mm", "50 mm or more"}},
		{"-610 x 900 mm", nil},
	} {
		_, err := ParseStock(c.in)
		if err == nil {
			t.Errorf("%q was taken", c.in)
			continue
		}
		for _, s := range c.says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("%q: the message does not say %s:\n%v", c.in, s, err)
			}
		}
	}
}

func FuzzParseStock(f *testing.F) {
	for _, s := range []string{"A4", "ansi c", "610 x 900 mm", "24 x 36 in", "roll 2 ft", "one sheet", "roll", "×", "1e9 x 1 mm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		s, err := ParseStock(in)
		if err != nil {
			return
		}
		if s.OneSheet {
			return
		}
		low, high := s.Size.W, s.Size.W
		if !s.Roll {
			low, high = min(low, s.Size.H), max(high, s.Size.H)
		}
		if low < 50-geometry.Tolerance || high > 10000+geometry.Tolerance || s.Size.W != low {
			t.Errorf("%q gave %v", in, s)
		}
		again, err := ParseStock(s.Name)
		if err != nil || again.Name != s.Name {
			t.Errorf("%q gave %q, which read again is %v, %v", in, s.Name, again, err)
		}
	})
}
