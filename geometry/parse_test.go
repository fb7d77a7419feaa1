package geometry_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	. "underlay/geometry"
)

// said returns the message of an error, "" for none.
func said(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

func TestParseLength(t *testing.T) {
	for s, want := range map[string]Length{
		"1 mm":                           1,
		"50cm":                           500,
		" 50  cm ":                       500,
		"50\u00a0cm":                     500,
		"50\tMM":                         50,
		"2.5 cm":                         25,
		".5 mm":                          0.5,
		"0 mm":                           0,
		"007 mm":                         7,
		"010.50 mm":                      10.5,
		"010 010/040 mm":                 10.25,
		"1.5 m":                          1500,
		"20 inches":                      508,
		"1 Inch":                         25.4,
		"2 centimetres":                  20,
		"3 millimeters":                  3,
		"1/2 metre":                      500,
		"+3 mm":                          3,
		"-0.5 mm":                        -0.5,
		"- 3 mm":                         -3,
		"−3 mm":                          -3, // the minus sign, U+2212
		"-3 1/2 in":                      -88.9,
		"3 1/2 in":                       88.9,
		"1/16 in":                        1.5875,
		"7/4 In":                         44.45,
		`17 3/4"`:                        450.85,
		"17 3/4″":                        450.85,
		"17 3/4”":                        450.85, // what a word processor makes of the inch mark
		"3 1 / 2 in":                     88.9,
		`12 "`:                           304.8,
		"1/2 cm":                         5,
		"1000000 m":                      1e9,
		"0.30000000000000004 mm":         0.30000000000000004,
		"1.13 cm":                        11.3, // 1.13 * 10 in floating point is a hair less
		"4.35 m":                         4350,
		strings.Repeat("0", 90) + "1 mm": 1,
	} {
		got, err := ParseLength(s)
		if err != nil || got != want {
			t.Errorf("%q is %v, %v; want %v", s, got.Millimetres(), err, want.Millimetres())
		}
	}
}

// The inch is 25.4 mm exactly: international inch, 1959 (NIST SP 811).
func TestInchIsExact(t *testing.T) {
	for s, want := range map[string]Length{"1 in": 25.4, "10 in": 254, `8.5"`: 215.9, "11 in": 279.4, "100 in": 2540} {
		if got, err := ParseLength(s); err != nil || got != want {
			t.Errorf("%q is %v, %v; want %v", s, got.Millimetres(), err, want.Millimetres())
		}
	}
}

func TestParseLengthSaysWhatToWrite(t *testing.T) {
	const notOne = ` is not a length; write one number and one unit, such as "50 mm", "2.5 cm" or "3 1/2 in"`
	got, want := map[string]string{}, map[string]string{
		"":                       `nothing is written; write a number and a unit, such as "50 mm"`,
		"  ":                     `nothing is written; write a number and a unit, such as "50 mm"`,
		"50":                     `"50" has no unit; write "50 mm", "50 cm" or "50 in"`,
		" -3 1/2":                `"-3 1/2" has no unit; write "-3 1/2 mm", "-3 1/2 cm" or "-3 1/2 in"`,
		"2,5 cm":                 `"2,5 cm" has a comma; write decimals with a point, "2.5 cm", and thousands with nothing between`,
		"3 ft":                   `"3 ft": no unit "ft" is known; write mm, cm, m or in`,
		"3'":                     `"3'": no unit "'" is known; write mm, cm, m or in`,
		"3 miles":                `"3 miles": no unit "miles" is known; write mm, cm, m or in`,
		"1 mm mm":                `"1 mm mm": no unit "mm mm" is known; write mm, cm, m or in`,
		"1/0 in":                 `"1/0 in" divides by 0; write a fraction such as 1/2`,
		`1 0/00"`:                `'1 0/00"' divides by 0; write a fraction such as 1/2`,
		"1000001 m":              `"1000001 m" is longer than anything on a bench; write a shorter length`,
		strings.Repeat("9", 101): `the text is too long for a length; write a number and a unit, such as "50 mm"`,
		"3-1/2 in":               `"3-1/2 in"` + notOne,
		"3 5/4 in":               `"3 5/4 in"` + notOne,
		"1.5 1/2 in":             `"1.5 1/2 in"` + notOne,
		"1 1 in":                 `"1 1 in"` + notOne,
		"1/2/3 in":               `"1/2/3 in"` + notOne,
		"1/ in":                  `"1/ in"` + notOne,
		"1/-2 in":                `"1/-2 in"` + notOne,
		"1. mm":                  `"1. mm"` + notOne,
		"1.2.3 mm":               `"1.2.3 mm"` + notOne,
		"--1 mm":                 `"--1 mm"` + notOne,
		". mm":                   `". mm"` + notOne,
		"mm":                     `"mm"` + notOne,
		"-":                      `"-"` + notOne,
		"NaN mm":                 `"NaN mm"` + notOne,
		"inf mm":                 `"inf mm"` + notOne,
		"1e3 mm":                 `"1e3 mm"` + notOne,
		"0x10 mm":                `"0x10 mm"` + notOne,
		"1_000 mm":               `"1_000 mm"` + notOne,
		"5 cm 3 mm":              `"5 cm 3 mm"` + notOne,
		`5' 6"`:                  `'5' 6"'` + notOne,
		"٣ mm":                   `"٣ mm"` + notOne,
		"\xff":                   `"\xff"` + notOne,
	}
	for s := range want {
		l, err := ParseLength(s)
		if got[s] = said(err); l != 0 {
			t.Errorf("%q is refused, but gives %v", s, l)
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestParsePositive(t *testing.T) {
	got, want := map[string]string{}, map[string]string{
		"0.001 mm": "",
		"0 mm":     `"0 mm" is not more than 0; write a length such as "50 mm"`,
		"-0 mm":    `"-0 mm" is not more than 0; write a length such as "50 mm"`,
		"-5 cm":    `"-5 cm" is not more than 0; write a length such as "50 mm"`,
		"5":        `"5" has no unit; write "5 mm", "5 cm" or "5 in"`,
	}
	for s := range want {
		_, err := ParsePositive(s)
		got[s] = said(err)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// step is the rounding of a unit on the papers: half of it is the most by which a length
// written in it may be off.
func step(u Unit) Length {
	return map[Unit]Length{UnitMM: 0.01, UnitCM: 0.01, UnitInch: Inch / 16}[u]
}

// checkRead fails unless l, which a parser accepted, is finite and comes back from every
// unit as it was written, but for rounding.
func checkRead(t *testing.T, text string, l Length) {
	t.Helper()
	if math.IsNaN(float64(l)) || math.Abs(float64(l)) > 1e9 {
		t.Fatalf("%q is %v mm", text, l.Millimetres())
	}
	for _, u := range []Unit{UnitMM, UnitCM, UnitInch} {
		if math.Abs(float64(l))+float64(step(u)) > 1e9 {
			continue // rounded up it may be longer than what is read
		}
		written := u.Format(l)
		back, err := ParseLength(written)
		slack := float64(step(u))/2*(1+1e-9) + math.Abs(float64(l))*1e-15
		if err != nil || math.Abs(float64(back-l)) > slack {
			t.Fatalf("%q is %v mm, written %q, read as %v mm, %v", text, l.Millimetres(), written, back.Millimetres(), err)
		}
		if again := u.Format(back); again != written {
			t.Fatalf("%q is written %q, and then %q", text, written, again)
		}
	}
}

// checkMessage fails unless err is nil or reads as one line for a maker.
func checkMessage(t *testing.T, text string, err error) {
	t.Helper()
	if m := said(err); strings.Contains(m, "\n") || strings.Contains(m, "invalid") && !strings.Contains(text, "invalid") ||
		err != nil && !strings.Contains(m, "; write ") {
		t.Fatalf("%q: %q", text, m)
	}
}

var seeds = []string{
	"", "50", "50 mm", "080/1", "0/08 in", "2,5 cm", "-3 1/2 in", `17 3/4"`, "1/0 in", "1e3 mm", "NaN mm", "− 5 m", "+.5 CM", "5″",
	"50 x 60 cm", "2 in x 30 mm", "50×50cm", "0 x 2 mm", "1 mm to 4 mm", "0.5 to 3 mm", "4 to 1 mm", "1-4 mm", "3-1/2 in", "-1 - -2 mm", "20 inches", "90 by 90 mm", "bybyx", "x", "to", "\xff x \x00",
}

func FuzzParseLength(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := ParseLength(s)
		checkMessage(t, s, err)
		if err == nil {
			checkRead(t, s, l)
		}
		if p, err := ParsePositive(s); err == nil && !(p > 0 && p == l) {
			t.Fatalf("%q is %v, above 0 %v", s, l, p)
		}
	})
}
