package template

import "testing"

func TestNearest(t *testing.T) {
	keys := newKeyTree().tables["item"].tables["pass"].order
	for _, c := range []struct {
		word  string
		known []string
		want  string
	}{
		{"brik", repeatWords, "brick"},
		{"birck", repeatWords, "brick"},
		{"Brick", repeatWords, "brick"},
		{"halfdrop", repeatWords, "half-drop"},
		{"half_drop", repeatWords, "half-drop"},
		{"half", repeatWords, "half-drop"},
		{"ring", repeatWords, "rings"},
		{"zigzag", repeatWords, ""},
		{"gapp", keys, "gap"},
		{"gap_across", keys, "gap-across"},
		{"colors", keys, "colours"},
		{"center-across", keys, "centre-across"},
		{"rotation", keys, ""},
		{"g", keys, ""},
		{"", keys, ""},
		{"inches", unitWords, "in"},
		{"outwards", []string{"out", "in"}, "out"},
		{"Фёрн", []string{"Ферн", "Мох"}, "Ферн"},
	} {
		got, ok := Nearest(c.word, c.known)
		if got != c.want || ok != (c.want != "") {
			t.Errorf("Nearest(%q) = %q, %v; want %q", c.word, got, ok, c.want)
		}
	}
}

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
