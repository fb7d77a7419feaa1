package geometry

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"unicode"
)

const (
	// longestText is more bytes than any length or size needs to be written.
	longestText = 100
	// longestLength is longer than any cloth, and keeps every sum done with lengths finite.
	longestLength = 1e6 * Metre
)

// ParseLength reads a length with its unit: "1 mm", "2.5cm", "3 1/2 in", `17 3/4"`, "-0.5 mm".
// The units are mm, cm, m, in, the inch mark, and their words, "20 inches"; in capitals too. The result is the nearest
// there is to the length as written: "1.13 cm" is the same as "11.3 mm". The error is a plain
// sentence that says what to write instead.
func ParseLength(s string) (Length, error) {
	q, err := scan(s)
	if err != nil {
		return 0, err
	}
	if q.unit == "" {
		return 0, noUnit(s, q.number)
	}
	return q.length()
}

// ParsePositive reads a length above 0; its errors are those of ParseLength.
func ParsePositive(s string) (Length, error) {
	l, err := ParseLength(s)
	if err == nil && l <= 0 {
		return 0, fmt.Errorf(`%s is not more than 0; write a length such as "50 mm"`, quote(s))
	}
	return l, err
}

// quantity is a number and a unit as written; unit is "" where none was.
type quantity struct {
	number, unit string
	value        *big.Rat
}

// String writes q as it would be written in a job: a space before a word, none before a mark.
func (q quantity) String() string {
	if q.unit != "" && unicode.IsLetter([]rune(q.unit)[0]) {
		return q.number + " " + q.unit
	}
	return q.number + q.unit
}

// length returns what q says. The sum is done in fractions, so that no unit costs accuracy.
func (q quantity) length() (Length, error) {
	var unit *big.Rat
	switch strings.ToLower(q.unit) {
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		unit = big.NewRat(1, 1)
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		unit = big.NewRat(10, 1)
	case "m", "metre", "metres", "meter", "meters":
		unit = big.NewRat(1000, 1)
	case "in", "inch", "inches", `"`, "″", "”":
		unit = big.NewRat(254, 10)
	default:
		return 0, fmt.Errorf("%s: no unit %s is known; write mm, cm, m or in", quote(q.String()), quote(q.unit))
	}
	mm, _ := new(big.Rat).Mul(q.value, unit).Float64()
	if Length(mm).Abs() > longestLength {
		return 0, fmt.Errorf("%s is longer than anything on a bench; write a shorter length", quote(q.String()))
	}
	return Length(mm), nil
}

// scan takes s apart into a number and a unit, which it does not judge.
func scan(s string) (quantity, error) {
	if err := readable(s); err != nil {
		return quantity{}, err
	}
	text := closeUp(s)
	number, unit := text, ""
	if i := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789./+- ", r) }); i >= 0 {
		number, unit = strings.TrimSpace(text[:i]), text[i:]
	}
	digits, negative := number, false
	if number != "" && strings.ContainsRune("+-", rune(number[0])) {
		digits, negative = strings.TrimSpace(number[1:]), number[0] == '-'
	}
	value, err := readNumber(digits)
	if err != nil {
		return quantity{}, fmt.Errorf("%s %w", quote(s), err)
	}
	if strings.ContainsAny(unit, "0123456789") {
		return quantity{}, fmt.Errorf("%s %s", quote(s), notOne)
	}
	if negative {
		value.Neg(value)
	}
	return quantity{number, unit, value}, nil
}

// Problems of a text that go after it in a message.
const (
	notOne     = `is not a length; write one number and one unit, such as "50 mm", "2.5 cm" or "3 1/2 in"`
	dividesBy0 = `divides by 0; write a fraction such as 1/2`
)

// ParseNumber reads a number without a unit, 0 or more, written as in a length: "0.25", "1/3",
// "1 1/2". The error is a plain sentence.
func ParseNumber(s string) (float64, error) {
	v, err := readNumber(closeUp(s))
	if err != nil {
		return 0, fmt.Errorf(`%s is not a number; write one such as "0.25" or "1/3"`, quote(s))
	}
	f, _ := v.Float64()
	return f, nil
}

// closeUp brings a text to single spaces, with none round a stroke, and its minus to a hyphen.
func closeUp(s string) string {
	return strings.NewReplacer("−", "-", " / ", "/", " /", "/", "/ ", "/").Replace(tidy(s))
}

// readNumber reads a decimal, a fraction, or a whole number and a fraction below 1.
func readNumber(s string) (*big.Rat, error) {
	whole, part, mixed := strings.Cut(s, " ")
	if !mixed {
		whole, part = "0", s
	}
	top, under, fraction := strings.Cut(part, "/")
	if !fraction {
		before, after, point := strings.Cut(s, ".")
		if !allDigits(before+after) || point && after == "" {
			return nil, errors.New(notOne)
		}
		scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(len(after))), nil)
		return new(big.Rat).SetFrac(integer(before+after), scale), nil
	}
	if !allDigits(whole) || !allDigits(top) || !allDigits(under) {
		return nil, errors.New(notOne)
	}
	if strings.Trim(under, "0") == "" {
		return nil, errors.New(dividesBy0)
	}
	v := new(big.Rat).SetFrac(integer(top), integer(under))
	if mixed && v.Cmp(big.NewRat(1, 1)) >= 0 {
		return nil, errors.New(notOne)
	}
	return v.Add(v, new(big.Rat).SetInt(integer(whole))), nil
}

// integer reads digits in tens: in package big's other readers a 0 in front means eights.
func integer(digits string) *big.Int {
	n, _ := new(big.Int).SetString(digits, 10)
	return n
}

// allDigits tells whether s is one or more of 0 to 9.
func allDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// readable refuses what is empty, too long, or written with a decimal comma.
func readable(s string) error {
	if len(s) > longestText {
		return errors.New(`the text is too long for a length; write a number and a unit, such as "50 mm"`)
	}
	text := tidy(s)
	if text == "" {
		return errors.New(`nothing is written; write a number and a unit, such as "50 mm"`)
	}
	pointed := []byte(text)
	for i := 1; i+1 < len(text); i++ {
		if text[i] == ',' && allDigits(text[i-1:i]) && allDigits(text[i+1:i+2]) {
			pointed[i] = '.'
		}
	}
	if p := string(pointed); p != text {
		return fmt.Errorf("%s has a comma; write decimals with a point, %s, and thousands with nothing between",
			quote(text), quote(p))
	}
	return nil
}

func noUnit(s, numbers string) error {
	return fmt.Errorf(`%s has no unit; write "%s mm", "%s cm" or "%s in"`, quote(s), numbers, numbers, numbers)
}

// tidy brings a text to single spaces.
func tidy(s string) string { return strings.Join(strings.Fields(s), " ") }

// quote puts a text in quotation marks for a message: in single ones where it has an inch
// mark, as a job file takes it.
func quote(s string) string {
	q := strconv.Quote(tidy(s))
	if strings.Contains(q, `\"`) {
		return "'" + strings.ReplaceAll(q[1:len(q)-1], `\"`, `"`) + "'"
	}
	return q
}
