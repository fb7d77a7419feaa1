package geometry

import (
	"fmt"
	"strings"
	"unicode"
)

// rangeExample is how a range looks.
const rangeExample = "1 mm to 4 mm"

// inchMarks stand for inches behind a number.
const inchMarks = `"″”`

// ParseRange reads two lengths from the least to the most, "1 mm to 4 mm", "0.5 to 3 mm" or
// "1-4 mm", or one length, which is then both; of either sign. A unit after the last number serves
// both. The error is a plain sentence that says what to write instead.
func ParseRange(s string) (lo, hi Length, err error) {
	if err := readable(s); err != nil {
		return 0, 0, err
	}
	ends, dash := rangeEnds(s)
	switch {
	case len(ends) > 2:
		return 0, 0, fmt.Errorf("%s has more than two ends; write a range such as %q", quote(s), rangeExample)
	case len(ends) == 1:
		if _, err := scan(s); err != nil {
			return 0, 0, fmt.Errorf("%w, or a range such as %q", err, rangeExample)
		}
		lo, err = ParseLength(s)
		return lo, lo, err
	}
	p, err := scanPair(s, ends[0], ends[1], " to ", rangeExample)
	if err != nil {
		return 0, 0, err
	}
	if lo, hi, err = p.lengths(); err != nil {
		return 0, 0, err
	}
	if lo <= hi {
		return lo, hi, nil
	}
	turned := quote(p.second.String() + " to " + p.first.String())
	if one := (quantity{number: p.first.number + " " + p.second.number, unit: p.second.unit}); dash && isMixed(one) {
		return 0, 0, fmt.Errorf("%s can be read in two ways; write %s, or as a range %s", quote(s), quote(one.String()), turned)
	}
	return 0, 0, fmt.Errorf("%s runs from the larger to the smaller; write %s", quote(s), turned)
}

// isMixed tells whether a quantity is a whole number with a fraction, which some write with a dash
// between the two.
func isMixed(q quantity) bool {
	_, err := ParseLength(q.String())
	return err == nil && strings.Contains(q.number, "/")
}

// rangeEnds takes a range apart at the word to, or at a dash that stands behind a number or a
// unit. A dash before a number is its sign.
func rangeEnds(s string) (ends []string, dash bool) {
	ends = []string{""}
	for _, word := range strings.Fields(s) {
		if strings.EqualFold(word, "to") {
			ends = append(ends, "")
			continue
		}
		ends[len(ends)-1] += " " + word
	}
	if len(ends) > 1 {
		return ends, false
	}
	var before rune
	from := 0
	ends = nil
	for i, r := range s {
		behind := unicode.IsLetter(before) || unicode.IsDigit(before) || strings.ContainsRune(inchMarks, before)
		if behind && strings.ContainsRune("-−–—", r) {
			ends = append(ends, s[from:i])
			from = i + len(string(r))
			before = 0
			continue
		}
		if r != ' ' {
			before = r
		}
	}
	return append(ends, s[from:]), len(ends) > 0
}
