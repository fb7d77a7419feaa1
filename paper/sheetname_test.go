package paper

import "testing"

func TestSheetName(t *testing.T) {
	for _, c := range []struct {
		row, column int
		want        string
	}{
		{1, 1, "A1"}, {1, 2, "A2"}, {2, 1, "B1"}, {26, 12, "Z12"}, {27, 1, "AA1"}, {28, 3, "AB3"},
		{52, 1, "AZ1"}, {53, 1, "BA1"}, {702, 1, "ZZ1"}, {703, 1, "AAA1"},
	} {
		if got := SheetName(c.row, c.column); got != c.want {
			t.Errorf("row %d, column %d: %s, want %s", c.row, c.column, got, c.want)
		}
	}
}

func TestSheetNamesAreAllDifferent(t *testing.T) {
	seen := map[string]bool{}
	for row := 1; row <= 1000; row++ {
		if n := SheetName(row, 1); seen[n] {
			t.Fatalf("%s twice", n)
		} else {
			seen[n] = true
		}
	}
}
