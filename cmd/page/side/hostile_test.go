package side

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"
)

// markup is a name that would be an element, close one, or run, were it not text.
const markup = `</title><script>alert(1)</script>"><img src=x onerror=alert(1)>&amp;`

// TestNamesAreText: names with markup come out as text in every picture and page.
func TestNamesAreText(t *testing.T) {
	text, _ := Start("bag")
	s := New()
	var err error
	for _, path := range []string{"title", "block.0.name", "item.0.name", "item.0.pass.0.name", "item.0.keep-clear.0.name", "paint.0.name"} {
		if text, err = s.Set(text, path, markup); err != nil {
			t.Fatal(err)
		}
	}
	text, _ = s.Set(text, "item.0.faces", `["front", "`+strings.ReplaceAll(markup, `"`, `\"`)+`"]`)
	st := s.Look(text, Picked{Face: 1}, 300)
	if !st.Good || st.Items[0] != markup || st.Colours[0].Name != markup {
		t.Fatalf("%v %q", st.Problems, st.Items)
	}
	pictures := []string{st.Picture.SVG, st.Order.SVG}
	p := s.Papers(text, 0, nil)
	for i := range p.Pages {
		sheet, err := s.Sheet(text, nil, i)
		if err != nil {
			t.Fatal(err)
		}
		pictures = append(pictures, sheet)
	}
	for i, picture := range pictures {
		wellFormed(t, fmt.Sprint(i), picture)
		if strings.Contains(picture, "<script") || strings.Contains(picture, "<img") {
			t.Errorf("picture %d has an element of a name", i)
		}
	}
}

// TestTooMuch: texts that are too large, too deep or make too many prints are refused with a sentence.
func TestTooMuch(t *testing.T) {
	text, _ := Start("cushion")
	many := strings.Replace(strings.Replace(text, "90 x 90 mm", "3 x 3 mm", 1), "50 x 50 cm", "2 x 2 m", 1)
	many = strings.Replace(many, "98 x 98 mm", "3 x 3 mm", 1)
	for _, c := range []struct{ name, text, want string }{
		{"1 MiB and more", text + strings.Repeat("# more\n", 1<<20/7), "larger than 1 MiB"},
		{"two hundred thousand prints", many, "a job may have 200,000"},
		{"deep lists", "x = " + strings.Repeat("[", 100_000), "not closed"},
		{"deep braces", "x = " + strings.Repeat("{a=", 100_000), "not closed"},
		{"deep names", "a" + strings.Repeat(".a", 100_000) + " = 1", "within each other"},
		{"deep headings", "[a" + strings.Repeat(".a", 100_000) + "]\nb = 1", "within each other"},
		{"a long name", strings.Replace(text, "floor cushion", strings.Repeat("leaf ", 1000), 1), "longer than 300"},
		{"no text", "title = \"\xff\"", "UTF-8"},
		{"empty", "", "empty"},
		{"nothing but a remark", "# later", "no block"},
	} {
		s := New()
		st := s.Look(c.text, Picked{}, 300)
		if st.Good || len(st.Problems) == 0 || !strings.Contains(st.Problems[0].Text, c.want) {
			t.Errorf("%s: %.300v", c.name, st.Problems)
		}
		for _, call := range []func() (string, error){
			func() (string, error) { return s.Set(c.text, "title", "x") },
			func() (string, error) { return s.Choose(c.text, "item.0.shape", "round") },
			func() (string, error) { return s.Remove(c.text, "title") },
			func() (string, error) { a, err := s.Add(c.text, "item", ""); return a.Text, err },
		} {
			if out, err := call(); err != nil && out != c.text {
				t.Errorf("%s: refused (%v), and the text is another", c.name, err)
			}
		}
		if _, err := s.Draw(c.text, nil); err == nil {
			t.Errorf("%s: is drawn", c.name)
		}
	}
}

// TestLightPictures: 2,000 prints make a picture of less than 300 KB without a typeface, 6,400 one image,
// and neither has fewer prints.
func TestLightPictures(t *testing.T) {
	for _, c := range []struct {
		across, down int
		image        bool
	}{{40, 50, false}, {73, 72, true}, {80, 80, true}} {
		st := New().Look(sized(c.across, c.down), Picked{}, 700)
		for name, p := range map[string]*Picture{"look": st.Picture, "order": st.Order} {
			if p == nil || p.Prints != c.across*c.down || p.Image != c.image || len(p.SVG) > 300<<10 || strings.Contains(p.SVG, "font-face") {
				t.Errorf("%s of %d: %+v", name, c.across*c.down, p)
				continue
			}
			wellFormed(t, name, p.SVG)
			if prints := strings.Count(p.SVG, "data-number"); !c.image && prints < p.Prints {
				t.Errorf("%s: %d marks with a number", name, prints)
			}
			if c.image != strings.Contains(p.SVG, `href="data:image/png;base64,`) {
				t.Errorf("%s: image %v: %.300s", name, c.image, p.SVG)
			}
		}
	}
}

// FuzzSide: no text makes a call panic, and each says something that JSON can hold; a text comes out of
// an edit as another, or as it was with a sentence.
func FuzzSide(f *testing.F) {
	for _, text := range jobs(f) {
		f.Add(text, "item.0.pass.0.gap", "2 mm")
	}
	f.Add("block = [{name='a', print='9 x 9 mm'}]\nitem = [{name='b', size='9 x 9 cm', border='1 mm', pass=[{block='a', gap='1 mm'}]}]", "item.0.pass.0.dabs", "[{colour='x'}]")
	f.Add("item.name = 1", "item.name", "x")
	f.Add("[[item]]\n[[item.pass]]\nat=[[1]]", "item.0.shape", "cone")
	f.Add("[a.b]\n[[a.c]]\nx.y=1", "a.b.c.d", "1")
	f.Fuzz(func(t *testing.T, text, path, value string) {
		s := New()
		heavy := func(st State) bool { return st.Picture != nil && st.Picture.Prints > 2000 }
		st := s.Look(text, Picked{}, 300)
		if out, err := json.Marshal(st); err != nil || !utf8.Valid(out) {
			t.Fatal(err)
		}
		if st.Good != (len(st.Problems) == 0) {
			t.Fatalf("good %v, %v", st.Good, st.Problems)
		}
		check := func(call, out string, err error) {
			switch {
			case err != nil && (out != text || err.Error() == ""):
				t.Fatalf("%s: %v, and the text is another", call, err)
			case err == nil:
				if _, broken := treeOf(out); broken != nil {
					t.Fatalf("%s %q = %q makes what is no TOML of\n%s\n---\n%s\n%v", call, path, value, text, out, broken)
				}
			}
		}
		out, err := s.Set(text, path, value)
		check("set", out, err)
		out, err = s.Remove(text, path)
		check("remove", out, err)
		if heavy(st) {
			return
		}
		out, err = s.Choose(text, path, value)
		check("choose", out, err)
		if err == nil {
			s.Look(out, Picked{Item: 1, Face: 1, Colourway: 1}, 300)
		}
		for _, what := range Things() {
			for _, in := range []string{"", "item.0", "item.0.pass.0", path} {
				added, err := s.Add(text, what, in)
				check("add "+what, added.Text, err)
			}
		}
	})
}
