package job

import (
	"underlay/geometry"
)

// AnyQuarterTurned tells whether some print lies on its side.
func AnyQuarterTurned(turns [][]int) bool {
	for _, row := range turns {
		for _, t := range row {
			if t%180 != 0 {
				return true
			}
		}
	}
	return false
}

// PlaceOf returns how large a place of a pass is: the bounds of the face as it is turned, and
// where prints lie both ways round, of the largest turned face both ways, so that no two come
// nearer than the gap.
func PlaceOf(pass *Pass) geometry.Size {
	size := pass.Block.Size
	switch {
	case AllQuarterTurned(pass.Turns):
		return size.Swap()
	case AnyQuarterTurned(pass.Turns):
		most := max(size.W, size.H)
		return geometry.Size{W: most, H: most}
	}
	return size
}

// AllQuarterTurned tells whether every print lies on its side.
func AllQuarterTurned(turns [][]int) bool {
	for _, row := range turns {
		for _, t := range row {
			if t%180 == 0 {
				return false
			}
		}
	}
	return true
}
