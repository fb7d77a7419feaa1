package geometry

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Unit is what lengths are written in on the papers. The zero Unit is the millimetre.
type Unit int

// The units a maker can choose from.
const (
	UnitMM Unit = iota
	UnitCM
	UnitInch
)

// String returns the unit as it is written: "mm", "cm" or "in".
func (u Unit) String() string {
	switch u {
	case UnitInch:
		return "in"
	case UnitCM:
		return "cm"
	}
	return "mm"
}

// Format writes a length with its unit, to the nearest 0.01 mm, 0.001 cm or sixteenth of an
// inch, in the fewest figures: "90 mm", "5.25 cm", "3 1/2 in".
func (u Unit) Format(l Length) string { return u.Number(l) + " " + u.String() }

// FormatSize writes width and height with the unit once: "90 × 90 mm".
func (u Unit) FormatSize(s Size) string { return u.Number(s.W) + " × " + u.Format(s.H) }

// Number writes a length as Format does, without the unit.
func (u Unit) Number(l Length) string {
	switch u {
	case UnitInch:
		return fraction(float64(l/Inch), 16)
	case UnitCM:
		return Decimals(float64(l/Centimetre), 3)
	}
	return Decimals(float64(l), 2)
}

// step is the finest length that Format tells from the next.
func (u Unit) step() Length {
	if u == UnitInch {
		return Inch / 16
	}
	return Millimetre / 100
}

// Up returns the least length not below l that the unit can write.
func (u Unit) Up(l Length) Length {
	return u.step() * Length(math.Ceil(float64((l-Tolerance)/u.step())))
}

// Down returns the greatest length not above l that the unit can write.
func (u Unit) Down(l Length) Length { return -u.Up(-l) }

// Ruled writes a length as it is read off a ruler or a tape, without the unit: to the nearest half
// millimetre or thirty-second of an inch.
func (u Unit) Ruled(l Length) string {
	switch u {
	case UnitInch:
		return fraction(float64(l/Inch), 32)
	case UnitCM:
		return Decimals(halves(l)/10, 2)
	}
	return Decimals(halves(l), 1)
}

// halves rounds to half millimetres.
func halves(l Length) float64 {
	return math.Copysign(math.Floor(math.Abs(float64(l))*2+0.5+hair)/2, float64(l))
}

// OnRuler returns the nearest length that can be read off a ruler, to be written: a whole number of
// half millimetres. Inches are written in sixteenths anyway, and left as they are.
func (u Unit) OnRuler(l Length) Length {
	if u == UnitInch {
		return l
	}
	return Length(halves(l))
}

// Exact tells whether a length is, to a hundredth of a millimetre, what Ruled writes.
func (u Unit) Exact(l Length) bool {
	step := 0.5 * Millimetre
	if u == UnitInch {
		step = Inch / 32
	}
	return math.Abs(math.Remainder(float64(l), float64(step))) < 0.005
}

// hair settles ties: a half that sums have moved by less than this is a half, so that borders
// that are even are written so.
const hair = 1e-6

// Decimals writes a number to so many places at the most, in the fewest figures: "0.25", "3".
func Decimals(v float64, places int) string {
	scale := math.Pow10(places)
	v = math.Copysign(math.Floor(math.Abs(v)*scale+0.5+hair)/scale, v)
	s := strconv.FormatFloat(v, 'f', places, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// fraction writes inches to the nearest of so many parts, a power of two.
func fraction(inches float64, parts int64) string {
	n := int64(math.Floor(math.Abs(inches)*float64(parts) + 0.5 + hair))
	sign := ""
	if inches < 0 && n > 0 {
		sign = "-"
	}
	whole, part, of := n/parts, n%parts, parts
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return sign + strconv.FormatInt(whole, 10)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, part, of)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, part, of)
}
