package job

import (
	"slices"

	"underlay/geometry"
)

// Turns is a matrix of quarter turns in degrees, 0 to 270 clockwise, row by row. It is laid over
// the columns and rows of a repeat again and again, and is never empty.
type Turns [][]int

// Columns returns after how many columns the turns come again.
func (t Turns) Columns() int { return len(t[0]) }

// Rows returns after how many rows the turns come again.
func (t Turns) Rows() int { return len(t) }

// At returns the turn of the print in a column and row; counted from 1, but any may be asked.
func (t Turns) At(column, row int) geometry.Angle {
	return geometry.Angle(t[mod(row-1, t.Rows())][mod(column-1, t.Columns())])
}

// Each returns every turn there is, once.
func (t Turns) Each() []geometry.Angle {
	var all []geometry.Angle
	for _, row := range t {
		for _, turn := range row {
			if a := geometry.Angle(turn); !slices.Contains(all, a) {
				all = append(all, a)
			}
		}
	}
	return all
}

// AnyAside tells whether some print lies on its side.
func (t Turns) AnyAside() bool { return t.any(func(turn int) bool { return turn%180 != 0 }) }

// AllAside tells whether every print lies on its side.
func (t Turns) AllAside() bool { return !t.any(func(turn int) bool { return turn%180 == 0 }) }

// Mixed tells whether some prints lie on their side and others do not.
func (t Turns) Mixed() bool { return t.AnyAside() && !t.AllAside() }

func (t Turns) any(is func(turn int) bool) bool {
	return slices.ContainsFunc(t, func(row []int) bool { return slices.ContainsFunc(row, is) })
}

// Whole returns the most columns and rows, of those given, that are whole matrices.
func (t Turns) Whole(columns, rows int) (int, int) {
	return columns - mod(columns, t.Columns()), rows - mod(rows, t.Rows())
}

// mod is the remainder of i by n, from 0 to n-1.
func mod(i, n int) int { return (i%n + n) % n }
