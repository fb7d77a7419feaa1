package words

import (
	"testing"
)

func TestQuote(t *testing.T) {
	for text, want := range map[string]string{
		"fern":       `"fern"`,
		"a\nb\x1b[1": `"a b<U+001B>[1"`,
		"0123456789012345678901234567890123456789012345678901234567890": `"01234567890123456789012345678901234567890123456789012345678…"`,
	} {
		if got := Quote(text); got != want {
			t.Errorf("quote(%q) = %s, want %s", text, got, want)
		}
	}
}

func TestUpperFirst(t *testing.T) {
	for text, want := range map[string]string{"": "", "fern": "Fern", "Fern": "Fern", "ферн": "Ферн", "élan": "Élan", "葉": "葉", "9 x 9": "9 x 9"} {
		if got := UpperFirst(text); got != want {
			t.Errorf("upperFirst(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestJoined(t *testing.T) {
	for _, c := range []struct {
		words []string
		want  string
	}{
		{nil, ""}, {[]string{"fern"}, "fern"}, {[]string{"fern", "wave"}, "fern and wave"}, {[]string{"fern", "wave", "acorn"}, "fern, wave and acorn"},
	} {
		if got := InWords(c.words); got != c.want {
			t.Errorf("inWords(%q) = %q, want %q", c.words, got, c.want)
		}
	}
	if got, want := OneOf([]string{"a", "b", "c"}), `"a", "b" or "c"`; got != want {
		t.Errorf("oneOf = %s, want %s", got, want)
	}
}
