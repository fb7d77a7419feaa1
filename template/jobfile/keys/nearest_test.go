package keys

import (
	"testing"

	"underlay/template/job"
	"underlay/template/words"
)

func TestNearest(t *testing.T) {
	keys := NewKeyTree().Tables["item"].Tables["pass"].Order
	for _, c := range []struct {
		word  string
		known []string
		want  string
	}{
		{"brik", words.Texts(job.Repeats()), "brick"},
		{"birck", words.Texts(job.Repeats()), "brick"},
		{"Brick", words.Texts(job.Repeats()), "brick"},
		{"halfdrop", words.Texts(job.Repeats()), "half-drop"},
		{"half_drop", words.Texts(job.Repeats()), "half-drop"},
		{"half", words.Texts(job.Repeats()), "half-drop"},
		{"ring", words.Texts(job.Repeats()), "rings"},
		{"zigzag", words.Texts(job.Repeats()), ""},
		{"gapp", keys, "gap"},
		{"gap_across", keys, "gap-across"},
		{"colors", keys, "colours"},
		{"center-across", keys, "centre-across"},
		{"rotation", keys, ""},
		{"g", keys, ""},
		{"", keys, ""},
		{"inches", UnitWords, ""},
		{"single", words.Texts(job.Repeats()), ""},
		{"strait", words.Texts(job.Repeats()), "straight"},
		{"columns", keys, ""},
		{"prints", keys, ""},
		{"corner", keys, "corner"},
		{"space", keys, ""},
		{"A44", []string{"A4", "A5"}, "A4"},
		{"outwards", []string{"out", "in"}, "out"},
		{"Фёрн", []string{"Ферн", "Мох"}, "Ферн"},
	} {
		got, ok := words.Nearest(c.word, c.known)
		if got != c.want || ok != (c.want != "") {
			t.Errorf("Nearest(%q) = %q, %v; want %q", c.word, got, ok, c.want)
		}
	}
}

// TestInstead tries words that mean one of those known, and words that do not.
func TestInstead(t *testing.T) {
	for word, want := range map[string]string{
		"inches": `"in"`, "Inch": `"in"`, "millimetres": `"mm"`, "furlong": `"mm", "cm" or "in"`,
	} {
		if got := Instead(word, UnitWords); got != want {
			t.Errorf("instead(%q) = %s; want %s", word, got, want)
		}
	}
}
