package pdf

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Examples of objects from ISO 32000-1, 7.3 (from memory), in their odder spellings.
func TestParseObjects(t *testing.T) {
	for in, want := range map[string]any{
		"true":                    word("true"),
		"-.002":                   word("-.002"),
		"12 0 R":                  ref{12, 0},
		"/Name1":                  name("Name1"),
		"/":                       name(""),
		"(These (balanced) \\( )": text("These (balanced) ( "),
		"(a\\\nb\\053\\53\\5\\n)": text("ab++\x05\n"),
		"<901FA3>":                text("\x90\x1f\xa3"),
		"<90 1F\nA>":              text("\x90\x1f\xa0"),
		"[549 3.14 [ ] 1 0 R 2]":  array{word("549"), word("3.14"), array(nil), ref{1, 0}, word("2")},
		"<</A 1/B<</C/D>> % comment\n>>": dict{
			{"A", word("1")}, {"B", dict{{"C", name("D")}}},
		},
	} {
		p := parser{b: []byte(in)}
		got, err := p.object(0)
		if err != nil {
			t.Errorf("%s: %v", in, err)
		} else if d := cmp.Diff(want, got, cmp.AllowUnexported(ref{}, member{})); d != "" {
			t.Errorf("%s: %s", in, d)
		}
	}
}

func TestParseBrokenObjects(t *testing.T) {
	deep := make([]byte, 1000)
	for i := range deep {
		deep[i] = '['
	}
	for _, in := range []string{"", " ", "[1 2", "<</A 1", "<</A>>", "<<1 2>>", "(open", "(open\\", "<90", "<9Z>", ")", "{", "%", string(deep)} {
		p := parser{b: []byte(in)}
		if got, err := p.object(0); err == nil {
			t.Errorf("%q gave %v", in, got)
		}
	}
}

// What is written is read back as it was.
func FuzzObject(f *testing.F) {
	f.Add([]byte("<</A [1 0 R (x) <00> /N true]>>"))
	f.Add([]byte("(a\\)b)"))
	f.Fuzz(func(t *testing.T, in []byte) {
		p := parser{b: in}
		o, err := p.object(0)
		if err != nil {
			return
		}
		q := parser{b: appendObject(nil, o)}
		again, err := q.object(0)
		if err != nil {
			t.Fatalf("%q was written as %q: %v", in, q.b, err)
		}
		if d := cmp.Diff(o, again, cmp.AllowUnexported(ref{}, member{})); d != "" {
			t.Fatalf("%q was written as %q: %s", in, q.b, d)
		}
	})
}
