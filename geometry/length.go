package geometry

import (
	"math"
)

// Length is a distance in millimetres.
type Length float64

// Units. The inch is exactly 25.4 mm (international inch, 1959; NIST SP 811).
const (
	Millimetre Length = 1
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25.4 * Millimetre
)

// Tolerance is the one slack used wherever a comparison decides whether something fits:
// 4 x 100 + 3 x 1 fits in 403.
const Tolerance Length = 1e-6

// Abs returns the length without its sign.
func (l Length) Abs() Length { return Length(math.Abs(float64(l))) }

// Millimetres returns the length as a bare number of millimetres.
func (l Length) Millimetres() float64 { return float64(l) }
