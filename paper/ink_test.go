package paper

import (
	"slices"
	"strings"
	"testing"
	"testing/quick"
)

// TestNamedInks has colours of each kind from the table in CSS Color Module Level 4, section 6.1, with
// the sixteen that HTML 4 had: https://www.w3.org/TR/css-color-4/#named-colors, from memory.
func TestNamedInks(t *testing.T) {
	for name, want := range map[string]Ink{
		"aqua": {0, 255, 255}, "black": {}, "blue": {0, 0, 255}, "fuchsia": {255, 0, 255}, "gray": {128, 128, 128}, "green": {0, 128, 0},
		"lime": {0, 255, 0}, "maroon": {128, 0, 0}, "navy": {0, 0, 128}, "olive": {128, 128, 0}, "purple": {128, 0, 128}, "red": {255, 0, 0},
		"silver": {192, 192, 192}, "teal": {0, 128, 128}, "white": {255, 255, 255}, "yellow": {255, 255, 0},
		"rebeccapurple": {0x66, 0x33, 0x99}, "slategrey": {112, 128, 144}, "papayawhip": {255, 239, 213}, "cornflowerblue": {100, 149, 237},
		"Light Blue": {173, 216, 230}, " dark olive-green ": {85, 107, 47}, "YELLOWGREEN": {154, 205, 50},
	} {
		if got, ok := NamedInk(name); !ok || got != want {
			t.Errorf("%s is %v, %v, want %v", name, got, ok, want)
		}
	}
	for _, name := range []string{"", " ", "moss", "ochre", "transparent", "currentcolor", "none", "light bluet", "#000"} {
		if got, ok := NamedInk(name); ok {
			t.Errorf("%q is %v", name, got)
		}
	}
}

// TestInkNames: CSS has 148 names, in alphabetical order here, and each is known.
func TestInkNames(t *testing.T) {
	names := InkNames()
	if len(slices.Compact(slices.Clone(names))) != 148 || !slices.IsSorted(names) {
		t.Errorf("%d names: %v", len(names), names)
	}
	for _, n := range names {
		_, ok := NamedInk(n)
		if _, other := NamedInk(strings.Replace(n, "gray", "grey", 1)); !ok || !other {
			t.Errorf("%s is not known, in one spelling or both", n)
		}
	}
}

func TestParseInk(t *testing.T) {
	for text, want := range map[string]Ink{
		"#5f7a3a": {0x5f, 0x7a, 0x3a}, "#5F7A3A": {0x5f, 0x7a, 0x3a}, "#5a3": {0x55, 0xaa, 0x33}, "#FFF": {255, 255, 255},
		"#000000": {}, " #000001 ": {0, 0, 1}, "Olive": {128, 128, 0}, "light blue": {173, 216, 230},
	} {
		if got, ok := ParseInk(text); !ok || got != want {
			t.Errorf("%q is %v, %v, want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "#", "#5f", "#5f7a", "#5f7a3", "#5f7a3aff", "# 5f7a3a", "##5f7a3a", "#5g7a3a", "5f7a3a", "rgb(1,2,3)", "#５f7a3a"} {
		if got, ok := ParseInk(text); ok {
			t.Errorf("%q is %v", text, got)
		}
	}
	again := func(k Ink) bool {
		got, ok := ParseInk(k.String())
		return ok && got == k
	}
	if err := quick.Check(again, nil); err != nil {
		t.Error(err)
	}
}

// FuzzParseInk: what is read as a colour is one of the names of CSS, or says the same in figures.
func FuzzParseInk(f *testing.F) {
	for _, s := range []string{"#5f7a3a", "#5a3", "Olive", "light blue", "rebecca purple", "#5f7a3aff", "rgb(1,2,3)", "ＲＥＤ", "\u212aHAKI"} {
		f.Add(s)
	}
	names := map[Ink]bool{}
	for _, n := range InkNames() {
		k, _ := NamedInk(n)
		names[k] = true
	}
	f.Fuzz(func(t *testing.T, text string) {
		k, ok := ParseInk(text)
		if !ok {
			return
		}
		plain := strings.ToLower(strings.TrimSpace(text))
		long, figures := plain, strings.HasPrefix(plain, "#")
		if len(plain) == 4 {
			long = string([]byte{'#', plain[1], plain[1], plain[2], plain[2], plain[3], plain[3]})
		}
		if figures && k.String() != long || !figures && !names[k] {
			t.Errorf("%q is %v", text, k)
		}
	})
}
