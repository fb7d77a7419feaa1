package geometry

import (
	"fmt"
	"strings"
)

// timesSigns are what may stand between the two numbers of a size.
const timesSigns = "xX×"

// ParseSize reads a width and a height, "50 x 60 cm", "50cm × 600mm" or "50 by 60 cm"; both are above 0.
// A unit after the last number serves both. The error is a plain sentence that says what to
// write instead.
func ParseSize(s string) (Size, error) {
	w, h, err := parseAcrossDown(s, "50 x 50 cm")
	if err != nil {
		return Size{}, err
	}
	if w <= 0 || h <= 0 {
		return Size{}, fmt.Errorf(`%s has a side that is not more than 0; write a size such as "50 x 60 cm"`, quote(s))
	}
	return Size{w, h}, nil
}

// ParseSizeOrDiameter reads a size as ParseSize does, or one length above 0, which is then
// both width and height; one tells that it was one.
func ParseSizeOrDiameter(s string) (size Size, one bool, err error) {
	if strings.ContainsAny(withTimesSign(s), timesSigns) {
		size, err = ParseSize(s)
		return size, false, err
	}
	d, err := ParsePositive(s)
	if err != nil && readable(s) == nil && strings.Contains(s, "*") {
		err = fmt.Errorf("%s has no x between its two lengths; write a size such as %q", quote(s), "50 x 60 cm")
	}
	return Size{d, d}, err == nil, err
}

// ParsePoint reads a place or a step across and down, "0 x 2 mm" or "-3 x 4.5 mm", of
// either sign; otherwise written as a size.
func ParsePoint(s string) (Point, error) {
	x, y, err := parseAcrossDown(s, "0 x 2 mm")
	return Point{x, y}, err
}

// parseAcrossDown reads two lengths with one of timesSigns between them.
func parseAcrossDown(s, example string) (across, down Length, err error) {
	if err := readable(s); err != nil {
		return 0, 0, err
	}
	parts := strings.Split(withTimesSign(s), "x")
	switch {
	case len(parts) > 2:
		return 0, 0, fmt.Errorf("%s has more than two lengths; write two, such as %q", quote(s), example)
	case len(parts) == 1:
		if _, err := scan(s); err != nil {
			return 0, 0, fmt.Errorf("%s is not two lengths; write two, such as %q", quote(s), example)
		}
		return 0, 0, fmt.Errorf("%s is one length; write both, such as %q", quote(s), example)
	}
	p, err := scanPair(s, parts[0], parts[1], " x ", example)
	if err != nil {
		return 0, 0, err
	}
	return p.lengths()
}

// withTimesSign writes an x for whatever stands between the two numbers of a size.
func withTimesSign(s string) string {
	return strings.NewReplacer("X", "x", "×", "x", "by", "x", "By", "x", "BY", "x").Replace(s)
}

// pair is two quantities, each with its unit.
type pair struct{ first, second quantity }

// scanPair takes the two parts of s apart and gives the first the unit of the second where
// it has none. The word that joins them, and an example, are for messages.
func scanPair(s, first, second, joint, example string) (pair, error) {
	if tidy(first) == "" || tidy(second) == "" {
		return pair{}, fmt.Errorf("%s lacks one of its two lengths; write both, such as %q", quote(s), example)
	}
	a, err := scan(first)
	if err != nil {
		return pair{}, err
	}
	b, err := scan(second)
	if err != nil {
		return pair{}, err
	}
	numbers := a.number + joint + b.number
	switch {
	case b.unit == "" && a.unit == "":
		return pair{}, noUnit(s, numbers)
	case b.unit == "":
		return pair{}, fmt.Errorf("%s has no unit after the last number; write %s", quote(s), quote(quantity{number: numbers, unit: a.unit}.String()))
	case a.unit == "":
		a.unit = b.unit
	}
	return pair{a, b}, nil
}

func (p pair) lengths() (a, b Length, err error) {
	if a, err = p.first.length(); err != nil {
		return 0, 0, err
	}
	b, err = p.second.length()
	return a, b, err
}
