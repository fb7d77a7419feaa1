package paper

import (
	"testing"
)

func TestSheetName(t *testing.T) {
	for _, c := range []struct {
		row, column int
		want        string
	}{
		{1, 1, "1a"}, {1, 2, "1b"}, {2, 1, "2a"}, {12, 26, "12z"}, {1, 27, "1aa"}, {3, 28, "3ab"},
		{1, 52, "1az"}, {1, 53, "1ba"}, {1, 702, "1zz"}, {1, 703, "1aaa"},
	} {
		if got := SheetName(c.row, c.column); got != c.want {
			t.Errorf("row %d, column %d: %s, want %s", c.row, c.column, got, c.want)
		}
	}
}

func TestSheetNamesAreAllDifferent(t *testing.T) {
	seen := map[string]bool{}
	for column := 1; column <= 1000; column++ {
		if n := SheetName(1, column); seen[n] {
			t.Fatalf("%s twice", n)
		} else {
			seen[n] = true
		}
	}
}
