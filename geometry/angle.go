package geometry

import "math"

// Angle is a turn in degrees, clockwise as seen (x to the right, y down).
type Angle float64

// Radians returns the angle in radians.
func (a Angle) Radians() float64 { return float64(a) * math.Pi / 180 }

// Degrees makes an Angle from radians.
func Degrees(radians float64) Angle { return Angle(radians * 180 / math.Pi) }

// Normal returns the same direction in [0, 360). A turn within a millionth of a degree of
// a whole circle is no turn at all.
func (a Angle) Normal() Angle {
	n := math.Mod(float64(a), 360)
	if n < 0 {
		n += 360
	}
	if n < 1e-6 || 360-n < 1e-6 {
		return 0
	}
	return Angle(n)
}

// SinCos returns the sine and cosine, exact for quarter turns.
func (a Angle) SinCos() (sin, cos float64) {
	switch a.Normal() {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(a.Radians())
}
