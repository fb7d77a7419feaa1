package jobfile

import (
	"math"
	"strings"

	"underlay/geometry"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// longest is the longest length anything in a job may have.
const longest = 50 * geometry.Metre

// parsed reads a length, or what else is a text with a unit.
func parsed[T any](e entry, example string, parse func(string) (T, error)) (T, bool) {
	var none T
	switch v := e.value().(type) {
	case nil:
		return none, false
	case string:
		t, err := parse(v)
		if err != nil {
			e.say("%s", err)
			return none, false
		}
		return t, true
	case int64, float64:
		number := words.Shown(e.node.Source)
		e.wrong(number+" has no unit", words.Quote(e.s.r.withUnit(number, example)))
	default:
		e.wrongKind(words.Quote(example))
	}
	return none, false
}

// withUnit completes a bare number to what the example looks like, in the units of the job.
func (r *reader) withUnit(number, example string) string {
	switch {
	case !toml.StartsFigure.MatchString(number) || strings.ContainsAny(number, "_eExXoObB"):
		// inf, nan, and numbers as programmers write them are no lengths.
		return example
	case strings.Contains(example, "/m2"):
		return number + " ml/m2"
	case strings.Contains(example, " x "):
		number += " x " + number
	}
	return number + " " + r.units.String()
}

// length reads a length, of either sign.
func (e entry) length(example string) (geometry.Length, bool) {
	l, ok := parsed(e, example, geometry.ParseLength)
	return l, ok && e.inRange(l)
}

// inRange refuses what is longer than any cloth.
func (e entry) inRange(l ...geometry.Length) bool {
	for _, x := range l {
		if !(math.Abs(float64(x)) <= float64(longest)) {
			e.say("longer than 50 m; write a shorter length")
			return false
		}
	}
	return true
}

// notNegative reads a length of 0 or more.
func (e entry) notNegative(example string) (geometry.Length, bool) {
	l, ok := e.length(example)
	if ok && l < 0 {
		e.say("%s is less than nothing; write a length of 0 or more, such as %s", words.Quote(e.value().(string)), words.Quote(example))
		return 0, false
	}
	return l, ok
}

// positive reads a length above 0.
func (e entry) positive(example string) (geometry.Length, bool) {
	l, ok := parsed(e, example, geometry.ParsePositive)
	return l, ok && e.inRange(l)
}

// point reads a place or a step, of either sign.
func (e entry) point(example string) (geometry.Point, bool) {
	switch e.value().(type) {
	case int64, float64:
		e.wrongKind(words.Quote(example))
		return geometry.Point{}, false
	}
	p, ok := parsed(e, example, geometry.ParsePoint)
	return p, ok && e.inRange(p.X, p.Y)
}

// size reads a width and a height.
func (e entry) size(example string) (geometry.Size, bool) {
	s, ok := parsed(e, example, geometry.ParseSize)
	return s, ok && e.inRange(s.W, s.H)
}

// number reads a number from least to most.
func (e entry) number(example string, least, most float64) (float64, bool) {
	var n float64
	switch v := e.value().(type) {
	case nil:
		return 0, false
	case int64:
		n = float64(v)
	case float64:
		n = v
	case string:
		e.wrong(words.Quote(v)+" is in quotes", example+" without them")
		return 0, false
	default:
		e.wrongKind(example)
		return 0, false
	}
	if !(n >= least && n <= most) {
		e.say("%s is not from %v to %s; write a number such as %s", words.Shown(e.node.Source), least, words.PlainNumber(most), example)
		return 0, false
	}
	return n, true
}

// count reads a whole number from 1 to most.
func (e entry) count(example string, most int) (int, bool) {
	n, ok := e.number(example, 1, float64(most))
	if ok && n != math.Trunc(n) {
		e.say("%s is not a whole number; write one such as %s", words.Shown(e.node.Source), example)
		return 0, false
	}
	return int(n), ok
}

// sizeOrSingle reads "90 x 80 mm", or "60 mm" for both sides.
func (e entry) sizeOrSingle(example string) (size geometry.Size, single, ok bool) {
	size, ok = parsed(e, example, func(s string) (geometry.Size, error) {
		size, one, err := geometry.ParseSizeOrDiameter(s)
		single = one
		return size, err
	})
	return size, single, ok && e.inRange(size.W, size.H)
}

// twice makes a size of a length, as text: "60 mm" to "60 x 60 mm".
func twice(raw any) string {
	text, _ := raw.(string)
	for i, c := range text {
		if c != ' ' && (c < '0' || c > '9') && c != '.' && c != '/' {
			return strings.TrimSpace(text[:i]) + " x " + strings.TrimSpace(text)
		}
	}
	return text
}

// isDiameter refuses two sides that differ.
func (e entry) isDiameter(size geometry.Size) bool {
	if math.Abs(float64(size.W-size.H)) <= float64(geometry.Tolerance) {
		return true
	}
	e.say("a round thing is as wide as it is high; write its diameter alone, such as %s", words.Quote(e.s.r.show(size.W)))
	return false
}

// outlineSlack is how far a written size may be off the bounds of an outline.
const outlineSlack = 0.05 * geometry.Millimetre

// matches refuses a size that is not that of an outline's bounds.
func (e entry) matches(size, bounds geometry.Size) bool {
	off := max(math.Abs(float64(size.W-bounds.W)), math.Abs(float64(size.H-bounds.H)))
	if off <= float64(outlineSlack+geometry.Tolerance) {
		return true
	}
	e.say("the outline is %s wide and %s high, not %s by %s; leave %s out, or correct the outline",
		e.s.r.show(bounds.W), e.s.r.show(bounds.H), e.s.r.show(size.W), e.s.r.show(size.H), e.key)
	return false
}
