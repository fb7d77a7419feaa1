package geometry_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	. "underlay/geometry"
)

func TestParseSize(t *testing.T) {
	for s, want := range map[string]Size{
		"50 x 60 cm":          {W: 500, H: 600},
		"50x60cm":             {W: 500, H: 600},
		"50cm x 60cm":         {W: 500, H: 600},
		"50 × 60 cm":          {W: 500, H: 600},
		"50 X 60 CM":          {W: 500, H: 600},
		"2 in x 30 mm":        {W: 50.8, H: 30},
		`17 3/4 x 12 1/2"`:    {W: 450.85, H: 317.5},
		`17 3/4" x 12 1/2 in`: {W: 450.85, H: 317.5},
		" 1/2x+1/4 in":        {W: 12.7, H: 6.35},
		"90 by 90 mm":         {W: 90, H: 90},
		"90mm By 2 inches":    {W: 90, H: 50.8},
		"2by3in":              {W: 50.8, H: 76.2},
	} {
		got, err := ParseSize(s)
		if err != nil || got != want {
			t.Errorf("%q is %v, %v; want %v", s, got, err, want)
		}
		both, one, err := ParseSizeOrDiameter(s)
		if err != nil || one || both != want {
			t.Errorf("%q is %v, one: %v, %v; want %v", s, both, one, err, want)
		}
	}
}

func TestParseSizeSaysWhatToWrite(t *testing.T) {
	got, want := map[string]string{}, map[string]string{
		"":                 `nothing is written; write a number and a unit, such as "50 mm"`,
		"50 cm":            `"50 cm" is one length; write both, such as "50 x 50 cm"`,
		"50":               `"50" is one length; write both, such as "50 x 50 cm"`,
		"large":            `"large" is not two lengths; write two, such as "50 x 50 cm"`,
		"50 x 60":          `"50 x 60" has no unit; write "50 x 60 mm", "50 x 60 cm" or "50 x 60 in"`,
		"50 cm x 60":       `"50 cm x 60" has no unit after the last number; write "50 x 60 cm"`,
		`3" x 1/2`:         `'3" x 1/2' has no unit after the last number; write '3 x 1/2"'`,
		"50 x 60 x 70 cm":  `"50 x 60 x 70 cm" has more than two lengths; write two, such as "50 x 50 cm"`,
		"50 cm x":          `"50 cm x" lacks one of its two lengths; write both, such as "50 x 50 cm"`,
		"× 50 cm":          `"× 50 cm" lacks one of its two lengths; write both, such as "50 x 50 cm"`,
		"0 x 50 cm":        `"0 x 50 cm" has a side that is not more than 0; write a size such as "50 x 60 cm"`,
		"50 x -50 cm":      `"50 x -50 cm" has a side that is not more than 0; write a size such as "50 x 60 cm"`,
		"2,5 x 3,5 cm":     `"2,5 x 3,5 cm" has a comma; write decimals with a point, "2.5 x 3.5 cm", and thousands with nothing between`,
		"50 x 60 furlong":  `"50 furlong": no unit "furlong" is known; write mm, cm, m or in`,
		"50 ft x 60 cm":    `"50 ft": no unit "ft" is known; write mm, cm, m or in`,
		"50 x 2000000 m":   `"2000000 m" is longer than anything on a bench; write a shorter length`,
		"50 x 60 to 70 mm": `"60 to 70 mm" is not a length; write one number and one unit, such as "50 mm", "2.5 cm" or "3 1/2 in"`,
		"1/0 x 5 mm":       `"1/0" divides by 0; write a fraction such as 1/2`,
	}
	for s := range want {
		size, err := ParseSize(s)
		if got[s] = said(err); size != (Size{}) {
			t.Errorf("%q is refused, but gives %v", s, size)
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestParseSizeOrDiameterAsksForAnX(t *testing.T) {
	for _, s := range []string{"50 * 60 cm", "50*60cm"} {
		_, _, err := ParseSizeOrDiameter(s)
		if want := `"` + s + `" has no x between its two lengths; write a size such as "50 x 60 cm"`; said(err) != want {
			t.Errorf("%q: %v, want %s", s, err, want)
		}
	}
}

func TestParseSizeOrDiameterTakesOneLength(t *testing.T) {
	size, one, err := ParseSizeOrDiameter("40 cm")
	if err != nil || !one || size != (Size{W: 400, H: 400}) {
		t.Errorf("%v %v %v", size, one, err)
	}
	got, want := map[string]string{}, map[string]string{
		"40":      `"40" has no unit; write "40 mm", "40 cm" or "40 in"`,
		"0 cm":    `"0 cm" is not more than 0; write a length such as "50 mm"`,
		"40 cm x": `"40 cm x" lacks one of its two lengths; write both, such as "50 x 50 cm"`,
	}
	for s := range want {
		size, one, err := ParseSizeOrDiameter(s)
		if got[s] = said(err); one || size != (Size{}) {
			t.Errorf("%q is refused, but gives %v, one: %v", s, size, one)
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestParsePoint(t *testing.T) {
	for s, want := range map[string]Point{
		"0 x 2 mm":       {X: 0, Y: 2},
		"-3 x 4.5 mm":    {X: -3, Y: 4.5},
		"−1cm × -1 in":   {X: -10, Y: -25.4},
		"0x0 in":         {},
		"- 1/2 x + 3 in": {X: -12.7, Y: 76.2},
	} {
		if got, err := ParsePoint(s); err != nil || got != want {
			t.Errorf("%q is %v, %v; want %v", s, got, err, want)
		}
	}
	got, want := map[string]string{}, map[string]string{
		"2 mm":   `"2 mm" is one length; write both, such as "0 x 2 mm"`,
		"0 x 2":  `"0 x 2" has no unit; write "0 x 2 mm", "0 x 2 cm" or "0 x 2 in"`,
		"x":      `"x" lacks one of its two lengths; write both, such as "0 x 2 mm"`,
		"1, 2mm": `"1, 2mm" is not two lengths; write two, such as "0 x 2 mm"`,
	}
	for s := range want {
		_, err := ParsePoint(s)
		got[s] = said(err)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestParseRange(t *testing.T) {
	for s, want := range map[string][2]Length{
		"1 mm to 4 mm":     {1, 4},
		"0.5 to 3 mm":      {0.5, 3},
		"1mm TO 1 cm":      {1, 10},
		"-1 to 2 mm":       {-1, 2},
		"1/16 to 1/8 in":   {1.5875, 3.175},
		`1/16" to 1 1/8 "`: {1.5875, 28.575},
		"2 mm":             {2, 2},
		"1 to 4 mm":        {1, 4},
		"1-4 mm":           {1, 4},
		"1 - 4 mm":         {1, 4},
		"1 mm – 4 mm":      {1, 4},
		"0.5—1.5 cm":       {5, 15},
		"-0.5-1 mm":        {-0.5, 1},
		"-2 - -1 mm":       {-2, -1},
		"−2−1 mm":          {-2, 1},
		`1/2"-1"`:          {12.7, 25.4},
		"2 to 3 inches":    {50.8, 76.2},
		"-0.5 mm":          {-0.5, -0.5},
		"2 to 2 mm":        {2, 2},
	} {
		lo, hi, err := ParseRange(s)
		if got := [2]Length{lo, hi}; err != nil || got != want {
			t.Errorf("%q is %v, %v; want %v", s, got, err, want)
		}
	}
	got, want := map[string]string{}, map[string]string{
		"":                    `nothing is written; write a number and a unit, such as "50 mm"`,
		"1":                   `"1" has no unit; write "1 mm", "1 cm" or "1 in"`,
		"1 to 4":              `"1 to 4" has no unit; write "1 to 4 mm", "1 to 4 cm" or "1 to 4 in"`,
		"1 mm to 4":           `"1 mm to 4" has no unit after the last number; write "1 to 4 mm"`,
		"4 mm to 1 mm":        `"4 mm to 1 mm" runs from the larger to the smaller; write "1 mm to 4 mm"`,
		"4 to 1 mm":           `"4 to 1 mm" runs from the larger to the smaller; write "1 mm to 4 mm"`,
		"1 cm to 4 mm":        `"1 cm to 4 mm" runs from the larger to the smaller; write "4 mm to 1 cm"`,
		"to 4 mm":             `"to 4 mm" lacks one of its two lengths; write both, such as "1 mm to 4 mm"`,
		"1 mm to":             `"1 mm to" lacks one of its two lengths; write both, such as "1 mm to 4 mm"`,
		"1 to 2 to 3 mm":      `"1 to 2 to 3 mm" has more than two ends; write a range such as "1 mm to 4 mm"`,
		"0,5 to 3 mm":         `"0,5 to 3 mm" has a comma; write decimals with a point, "0.5 to 3 mm", and thousands with nothing between`,
		"1 to 4 ft":           `"1 ft": no unit "ft" is known; write mm, cm, m or in`,
		"1 mm to 1000001.5 m": `"1000001.5 m" is longer than anything on a bench; write a shorter length`,
		"3-1/2 in":            `"3-1/2 in" can be read in two ways; write "3 1/2 in", or as a range "1/2 in to 3 in"`,
		"4-1 mm":              `"4-1 mm" runs from the larger to the smaller; write "1 mm to 4 mm"`,
		"1-2-3 mm":            `"1-2-3 mm" has more than two ends; write a range such as "1 mm to 4 mm"`,
		"1 mm-":               `"1 mm-" lacks one of its two lengths; write both, such as "1 mm to 4 mm"`,
	}
	for s := range want {
		lo, hi, err := ParseRange(s)
		if got[s] = said(err); lo != 0 || hi != 0 {
			t.Errorf("%q is refused, but gives %v to %v", s, lo, hi)
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func FuzzParseSize(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		size, err := ParseSize(s)
		checkMessage(t, s, err)
		if err == nil {
			if !(size.W > 0 && size.H > 0) {
				t.Fatalf("%q is %v", s, size)
			}
			checkRead(t, s, size.W)
			checkRead(t, s, size.H)
		}
		if either, one, err := ParseSizeOrDiameter(s); err == nil {
			if d, err := ParsePositive(s); one != (err == nil) || one && either != (Size{W: d, H: d}) || !one && either != size {
				t.Fatalf("%q is %v, one: %v, and %v", s, either, one, size)
			}
		}
	})
}

func FuzzParsePoint(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := ParsePoint(s)
		checkMessage(t, s, err)
		checkRead(t, s, p.X)
		checkRead(t, s, p.Y)
	})
}

func FuzzParseRange(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		lo, hi, err := ParseRange(s)
		checkMessage(t, s, err)
		checkRead(t, s, lo)
		checkRead(t, s, hi)
		if lo > hi {
			t.Fatalf("%q runs from %v to %v", s, lo, hi)
		}
		if l, e := ParseLength(s); e == nil && (err != nil || lo != l || hi != l) {
			t.Fatalf("%q is %v, but from %v to %v, %v", s, l, lo, hi, err)
		}
	})
}
