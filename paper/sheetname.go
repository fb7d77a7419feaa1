package paper

import "strconv"

// SheetName returns the name of the sheet in the given row and column, counted from 1: the
// row in letters (A to Z, then AA, AB and on), the column in figures.
func SheetName(row, column int) string {
	var letters []byte
	for n := row; n > 0; n = (n - 1) / 26 {
		letters = append([]byte{byte('A' + (n-1)%26)}, letters...)
	}
	return string(letters) + strconv.Itoa(column)
}
