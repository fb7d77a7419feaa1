package template

import (
	"math"

	"underlay/geometry"
)

// absLength is a length without its sign.
func absLength(l geometry.Length) geometry.Length { return max(l, -l) }

// step is the finest length that a unit's Format tells from the next.
func step(u geometry.Unit) geometry.Length {
	if u == geometry.UnitInch {
		return geometry.Inch / 16
	}
	return geometry.Millimetre / 100
}

// roundedUp is the least length not below l that the unit can write.
func roundedUp(l geometry.Length, u geometry.Unit) geometry.Length {
	s := step(u)
	return s * geometry.Length(math.Ceil(float64((l-geometry.Tolerance)/s)))
}

// roundedDown is the greatest length not above l that the unit can write.
func roundedDown(l geometry.Length, u geometry.Unit) geometry.Length { return -roundedUp(-l, u) }
