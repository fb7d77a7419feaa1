package geometry

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// longestText is more than any length needs to be written.
const longestText = 100

// number matches a decimal, a fraction, or a whole number and a fraction.
const number = `[+-]?\s*(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+\.?\d*|\.\d+)`

var (
	lengthText   = regexp.MustCompile(`^(` + number + `)\s*([^\s\d].*)?$`)
	decimalComma = regexp.MustCompile(`\d,\d`)
	times        = regexp.MustCompile(`[xX×]`)
	bareNumber   = regexp.MustCompile(`^` + number + `$`)
)

// unitOf reads a unit as written after a number; the inch mark is one.
func unitOf(s string) (Length, bool) {
	switch strings.ToLower(s) {
	case "mm":
		return Millimetre, true
	case "cm":
		return Centimetre, true
	case "m":
		return Metre, true
	case "in", `"`, "″", "”":
		return Inch, true
	}
	return 0, false
}

// ParseLength reads a length with its unit: "1 mm", "2.5 cm", "3 1/2 in", `17 3/4"`, "-0.5 mm".
// Units are mm, cm, m, in and the inch mark. The error is a plain sentence that says what to
// write instead.
func ParseLength(s string) (Length, error) {
	text := plain(s)
	if err := readable(s, text); err != nil {
		return 0, err
	}
	m := lengthText.FindStringSubmatch(text)
	if m == nil {
		return 0, fmt.Errorf(`%q is not a length; write a number and a unit, such as "50 mm", "2.5 cm" or "3 1/2 in"`, s)
	}
	if m[2] == "" {
		n := strings.Join(strings.Fields(m[1]), " ")
		return 0, fmt.Errorf(`%q has no unit; write "%s mm", "%s cm" or "%s in"`, s, n, n, n)
	}
	unit, ok := unitOf(m[2])
	if !ok {
		return 0, fmt.Errorf(`%q: no unit %q is known; write mm, cm, m or in`, s, m[2])
	}
	v, err := value(m[1])
	if err != nil {
		return 0, fmt.Errorf("%q %w", s, err)
	}
	l := Length(v) * unit
	if math.Abs(float64(l)) > float64(1e6*Metre) {
		return 0, fmt.Errorf("%q is longer than anything on a bench; write a shorter length", s)
	}
	return l, nil
}

// plain brings a text to single spaces and the plain minus sign.
func plain(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "−", "-")), " ")
}

// readable refuses what no length looks like.
func readable(s, text string) error {
	switch {
	case text == "":
		return errors.New(`nothing is written; write a number and a unit, such as "50 mm"`)
	case len(s) > longestText:
		return fmt.Errorf(`a text of %d letters is not a length; write a number and a unit, such as "50 mm"`, len(s))
	case decimalComma.MatchString(text):
		at := decimalComma.FindString(text)
		return fmt.Errorf("%q has a comma; write a point: %q", s,
			strings.Replace(text, at, strings.Replace(at, ",", ".", 1), 1))
	}
	return nil
}

// value reads the number matched by number.
func value(s string) (float64, error) {
	sign := 1.0
	switch s[0] {
	case '-':
		sign, s = -1, s[1:]
	case '+':
		s = s[1:]
	}
	s = strings.TrimSpace(s)
	top, under, fraction := strings.Cut(s, "/")
	if !fraction {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil || math.IsInf(v, 0) {
			return 0, errors.New("is too long a number; write a shorter one")
		}
		return sign * v, nil
	}
	whole := 0.0
	parts := strings.Fields(top)
	if len(parts) == 2 {
		whole, _ = strconv.ParseFloat(parts[0], 64)
	}
	a, _ := strconv.ParseFloat(parts[len(parts)-1], 64)
	b, _ := strconv.ParseFloat(strings.TrimSpace(under), 64)
	if b == 0 {
		return 0, errors.New("divides by 0; write a fraction such as 1/2")
	}
	return sign * (whole + a/b), nil
}

// ParsePositive reads a length above 0.
func ParsePositive(s string) (Length, error) {
	l, err := ParseLength(s)
	if err == nil && l <= 0 {
		return 0, fmt.Errorf(`%q is not more than 0; write a length such as "50 mm"`, s)
	}
	return l, err
}

// pair reads two lengths with an x between; a unit after the last number serves both.
func pair(s, example string) (a, b Length, err error) {
	text := plain(s)
	if err := readable(s, text); err != nil {
		return 0, 0, err
	}
	parts := times.Split(text, -1)
	switch {
	case len(parts) == 1:
		return 0, 0, fmt.Errorf("%q is one length; write both, such as %q", s, example)
	case len(parts) > 2:
		return 0, 0, fmt.Errorf("%q has more than two lengths; write two, such as %q", s, example)
	}
	first, second := strings.TrimSpace(parts[0]), strings.TrimSpace(parts[1])
	if first == "" || second == "" {
		return 0, 0, fmt.Errorf("%q lacks one of its two lengths; write both, such as %q", s, example)
	}
	if b, err = ParseLength(second); err != nil {
		if bareNumber.MatchString(second) {
			return 0, 0, fmt.Errorf(`%q has no unit; write "%s mm", "%s cm" or "%s in"`, s, text, text, text)
		}
		return 0, 0, err
	}
	if bareNumber.MatchString(first) {
		first += " " + lengthText.FindStringSubmatch(second)[2]
	}
	a, err = ParseLength(first)
	return a, b, err
}

// ParseSize reads a width and a height, "50 x 60 cm"; both must be above 0. The
// multiplication sign does as well as an x.
func ParseSize(s string) (Size, error) {
	w, h, err := pair(s, "50 x 50 cm")
	if err != nil {
		return Size{}, err
	}
	if w <= 0 || h <= 0 {
		return Size{}, fmt.Errorf(`%q has a side that is not more than 0; write a size such as "50 x 60 cm"`, s)
	}
	return Size{w, h}, nil
}

// ParseSizeOrDiameter reads a size as ParseSize does, or one length that serves for both
// sides; one tells which.
func ParseSizeOrDiameter(s string) (size Size, one bool, err error) {
	if times.MatchString(s) {
		size, err = ParseSize(s)
		return size, false, err
	}
	d, err := ParsePositive(s)
	return Size{d, d}, true, err
}

// ParsePoint reads a step across and down, "0 x 2 mm", of either sign.
func ParsePoint(s string) (Point, error) {
	x, y, err := pair(s, "0 x 2 mm")
	return Point{x, y}, err
}

// ParseRange reads "1 mm to 4 mm", or one length, which is then both ends. A unit after the
// last number serves both.
func ParseRange(s string) (lo, hi Length, err error) {
	from, to, isRange := strings.Cut(plain(s), " to ")
	if !isRange {
		lo, err = ParseLength(s)
		return lo, lo, err
	}
	if hi, err = ParseLength(to); err != nil {
		return 0, 0, err
	}
	if bareNumber.MatchString(from) {
		from += " " + lengthText.FindStringSubmatch(to)[2]
	}
	if lo, err = ParseLength(from); err != nil {
		return 0, 0, err
	}
	if lo > hi {
		return 0, 0, fmt.Errorf("%q runs from the larger to the smaller; write %q", s, to+" to "+from)
	}
	return lo, hi, nil
}
