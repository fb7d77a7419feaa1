package plan

import (
	"math"

	"underlay/geometry"
)

// AbsLength is a length without its sign.
func AbsLength(l geometry.Length) geometry.Length { return max(l, -l) }

// step is the finest length that a unit's Format tells from the next.
func step(u geometry.Unit) geometry.Length {
	if u == geometry.UnitInch {
		return geometry.Inch / 16
	}
	return geometry.Millimetre / 100
}

// RoundedUp is the least length not below l that the unit can write.
func RoundedUp(l geometry.Length, u geometry.Unit) geometry.Length {
	s := step(u)
	return s * geometry.Length(math.Ceil(float64((l-geometry.Tolerance)/s)))
}

// RoundedDown is the greatest length not above l that the unit can write.
func RoundedDown(l geometry.Length, u geometry.Unit) geometry.Length { return -RoundedUp(-l, u) }
