package paper

import (
	"strconv"
)

// SheetName returns the name of the sheet in the given row and column, counted from 1: the
// row in figures, the column in letters (a to z, then aa, ab and on).
func SheetName(row, column int) string {
	var letters []byte
	for n := column; n > 0; n = (n - 1) / 26 {
		letters = append([]byte{byte('a' + (n-1)%26)}, letters...)
	}
	return strconv.Itoa(row) + string(letters)
}
