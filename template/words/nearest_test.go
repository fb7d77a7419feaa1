package words

import (
	"testing"
)

// TestSlips checks distances counted by hand.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"gap", "gap", 0}, {"gap", "lap", 1}, {"gap", "ga", 1}, {"gap", "gapp", 1},
		{"gpa", "gap", 1}, {"border", "bodrer", 1}, {"border", "broder", 1}, {"hem", "rim", 2}, {"", "hem", 3},
	} {
		if got := slips(c.a, c.b, 10); got != c.want {
			t.Errorf("slips(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
		if got := slips(c.b, c.a, 10); got != c.want {
			t.Errorf("slips(%q, %q) = %d, want %d", c.b, c.a, got, c.want)
		}
	}
}
