package paper

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/bidi"

	"underlay/geometry"
)

func TestAnchors(t *testing.T) {
	w := TextWidth("fern", 5, false)
	at := geometry.Pt(100, 50)
	for anchor, corner := range map[Anchor]geometry.Point{
		AnchorMiddle:      geometry.Pt(100-w/2, 47.5),
		AnchorLeft:        geometry.Pt(100, 47.5),
		AnchorRight:       geometry.Pt(100-w, 47.5),
		AnchorTop:         geometry.Pt(100-w/2, 50),
		AnchorBottom:      geometry.Pt(100-w/2, 45),
		AnchorTopLeft:     geometry.Pt(100, 50),
		AnchorTopRight:    geometry.Pt(100-w, 50),
		AnchorBottomLeft:  geometry.Pt(100, 45),
		AnchorBottomRight: geometry.Pt(100-w, 45),
	} {
		got := Label{Text: "fern", At: at, Anchor: anchor, Height: 5}.Box()
		if want := geometry.RectAt(corner, geometry.Size{W: w, H: 5}); !got.Min.Near(want.Min) || !got.Max.Near(want.Max) {
			t.Errorf("anchor %d: box %v, want %v", anchor, got, want)
		}
		if got := anchor.Of(geometry.RectAt(corner, geometry.Size{W: w, H: 5})); !got.Near(at) {
			t.Errorf("anchor %d of its own box is %v", anchor, got)
		}
	}
}

func TestLegible(t *testing.T) {
	for _, c := range []struct {
		text, shown string
		whole       bool
	}{
		{"floor cushion", "floor cushion", true},
		{"", "", true},
		{"  bench\trunner\r\n2 ", "bench runner 2", true},
		{"a\u00a0b", "a b", true},
		{"Łódź Ελλάς Жар-птица 17¾″ × 60 µm", "Łódź Ελλάς Жар-птица 17¾″ × 60 µm", true},
		{"cafe\u0301", "café", true},                   // an accent of its own
		{"soft\u00adhyphen\u200b", "softhyphen", true}, // signs without a shape
		{"fern 🌿", "fern □", false},
		{"fern 🌿\ufe0f", "fern □", false},
		{"שלום", "□□□□", false},
		{"سلام", "□□□□", false},
		{"फ़र्न", "□□□", false}, // the vowel signs go with their letters
		{"a\xffb", "a□b", false},
		{"q\u0301", "q", false},
	} {
		shown, whole := Legible(c.text)
		if shown != c.shown || whole != c.whole {
			t.Errorf("%q is shown as %q, whole %v; want %q, %v", c.text, shown, whole, c.shown, c.whole)
		}
		if again, _ := Legible(shown); again != shown {
			t.Errorf("%q shown once more is %q", shown, again)
		}
	}
}

func TestPlainTextIsShownAsItIs(t *testing.T) {
	for r := range faces()[0].glyphs {
		for _, text := range []string{string(r), "a" + string(r) + "b", "A" + string(r), string(r) + "\u0301", "e " + string(r) + " ", " " + string(r)} {
			if shown, whole := respelled(text); plain(text) && (shown != text || !whole) {
				t.Errorf("%q is taken for plain; it is shown as %q", text, shown)
			}
		}
	}
	if !plain("Ärmel 17¾″ × 60 µm · Жар-птица …") {
		t.Error("usual text is not plain")
	}
}

func TestNoLetterOfTheFacesIsLeftOut(t *testing.T) {
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		for r := rune(lastLetter); r <= unicode.MaxRune; r++ {
			if i, err := f.GlyphIndex(nil, r); i != 0 || err != nil {
				t.Fatalf("%U is glyph %d, %v", r, i, err)
			}
		}
	}
}

func TestFacesHaveTheSameLettersNoneFromRightToLeft(t *testing.T) {
	f := faces()
	letters := func(f face) map[rune]bool {
		m := map[rune]bool{}
		for r := range f.glyphs {
			m[r] = true
		}
		return m
	}
	if d := cmp.Diff(letters(f[0]), letters(f[1])); d != "" {
		t.Error(d)
	}
	for r := range f[0].glyphs {
		p, _ := bidi.LookupRune(r)
		if c := p.Class(); c == bidi.R || c == bidi.AL || unicode.IsControl(r) {
			t.Errorf("%q would be shown", r)
		}
	}
	if _, ok := f[0].glyphs[notShown]; !ok {
		t.Error("the sign for letters not shown is not shown")
	}
}

func TestShorten(t *testing.T) {
	const text = "floor cushion, front: fern ground"
	full := TextWidth(text, 5, false)
	for limit := geometry.Length(0); limit < full+5; limit += 0.37 {
		s := Shorten(text, 5, false, limit)
		if w := TextWidth(s, 5, false); w > limit+geometry.Tolerance {
			t.Errorf("%q is %v mm long, more than %v", s, w, limit)
		}
		cut, shortened := strings.CutSuffix(s, "…")
		switch {
		case limit >= full && s != text:
			t.Errorf("%q is cut though the whole fits %v mm", s, limit)
		case limit < full && !strings.HasPrefix(text, cut):
			t.Errorf("%q does not begin %q", cut, text)
		case limit < full && !shortened && s != "":
			t.Errorf("%q does not show that it is cut", s)
		case limit < full && s != "":
			next := strings.TrimPrefix(text, cut)
			longer := cut + next[:1] + "…"
			if next[0] != ' ' && TextWidth(longer, 5, false) <= limit {
				t.Errorf("%q is cut where %q fits %v mm", s, longer, limit)
			}
		}
	}
	if s := Shorten("fern", 5, false, 0.5); s != "" {
		t.Errorf("%q in half a millimetre", s)
	}
}

func FuzzLegible(f *testing.F) {
	f.Add("fern")
	f.Add("e\u0301\t🌿\xff שלום")
	f.Fuzz(func(t *testing.T, text string) {
		shown, _ := Legible(text)
		if !utf8.ValidString(shown) || strings.TrimSpace(shown) != shown {
			t.Errorf("%q is shown as %q", text, shown)
		}
		for _, r := range shown {
			if _, ok := faceOf(true).glyphs[r]; !ok {
				t.Errorf("%q is shown with %q, which the face has not got", text, r)
			}
		}
		if w := TextWidth(text, 5, true); w < 0 || w > 0 != (shown != "") {
			t.Errorf("%q is %v mm long", text, w)
		}
	})
}
