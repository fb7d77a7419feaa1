package edit_test

import (
	"reflect"
	"testing"

	"underlay/template/internal/sample"
	"underlay/template/jobfile/edit"

	"github.com/pelletier/go-toml/v2"
)

// FuzzEdit: no text makes an edit panic. What comes out is TOML to another reader where the text was, or
// is the text as it was, with a sentence; and a value that was set is there.
func FuzzEdit(f *testing.F) {
	f.Add(nook, "item.0.pass.0.gap", `"2 mm"`)
	f.Add(named, "block.0.name", `"leaf"`)
	f.Add(sample.Made([]byte("a pillow and a bag, a runner, a shade")), "item.0.hem", `"2 mm"`)
	f.Add("a = [\n1, # x\n{b = 2 , }\n]", "a.1.c", "[]")
	f.Add("a.b.c = 1\r\n[a.d]\r\n", "a.b", "")
	f.Add("[a.b]\n[a]\nx=1", "a.y.z", "'''\nq'''")
	f.Fuzz(func(t *testing.T, text, path, source string) {
		p, err := edit.ParsePath(path)
		if err != nil {
			return
		}
		if again, err := edit.ParsePath(p.String()); err != nil || !reflect.DeepEqual(p, again) {
			t.Fatalf("%q is written %q and read as %q, %v", p, p.String(), again, err)
		}
		var before any
		good := toml.Unmarshal([]byte(text), &before) == nil
		check := func(what, out string, err error) {
			switch {
			case err != nil && (out != text || err.Error() == ""):
				t.Fatalf("%s: %v, and the text is another", what, err)
			case err == nil && good:
				var after any
				if broken := toml.Unmarshal([]byte(out), &after); broken != nil {
					t.Fatalf("%s %s = %s: %v\n%s\n---\n%s", what, p, source, broken, text, out)
				}
			}
		}
		out, err := edit.Set(text, p, source)
		check("set", out, err)
		if err == nil && source != "" {
			if _, again := edit.Set(out, p, source); again != nil {
				t.Fatalf("%s = %s was set, and cannot be again: %v\n%s\n---\n%s", p, source, again, text, out)
			}
			back, err := edit.Remove(out, p)
			if err != nil {
				t.Fatalf("%s was set, and cannot be taken away: %v\n%s", p, err, out)
			}
			_ = back
		}
		out, err = edit.Remove(text, p)
		check("remove", out, err)
		out, err = edit.Rename(text, p, source)
		check("rename", out, err)
		out, err = edit.Add(text, p, edit.Field{Key: "name", Source: `"x"`})
		check("add", out, err)
		out, err = edit.KeepItem(text, source)
		check("keep", out, err)
	})
}
