package side

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/jobfile/edit"

	"github.com/google/go-cmp/cmp"
)

// TestProblemsHaveTheirPlace: each message stands at the value it is of.
func TestProblemsHaveTheirPlace(t *testing.T) {
	good, _ := Start("cushion")
	bag, _ := Start("bag")
	for _, c := range []struct {
		from, old, new string
		path           string
		key            string
	}{
		{good, `"50 x 50 cm"`, `"50 x 50"`, "item.0.size", "size"},
		{good, `quantity = 2`, `quantity = "two"`, "item.0.quantity", ""},
		{good, `"25 mm"`, `"2 mm"`, "item.0.border", "border"},
		{good, `"25 mm"`, `["25 mm", "25 mm", "25 mm", "2 mm"]`, "item.0.border", "border"},
		{good, `"25 mm"`, `["25 mm",` + "\n" + `"25 mm", "25 mm",` + "\n" + `"25 x"]`, "item.0.border", "border"},
		{good, `block = "fern"`, `block = "fen"`, "item.0.pass.0.block", "block"},
		{good, `gap = "1 mm"`, ``, "item.0.pass.0", ""},
		{good, `size = "A4"`, `size = "A44"`, "paper.size", "size"},
		{good, `size = "A4"`, `sise = "A4"`, "paper.sise", ""},
		{good, `looks = "#5f7a3a"`, `looks = "mossy"`, "paint.0.looks", "looks"},
		{good, `print = "90 x 90 mm"`, `print = "900 x 900 mm"`, "block.0.wood", "wood"},
		{good, `"50 x 50 cm"`, `"10 x 10 cm"`, "item.0.pass.0", ""},
		{good, "quantity = 2\n", "quantity = 2\npass = [{ block = 'fern', gap = '1 mm' }, { block = 'fern', name = 'b', gap = '1' }]\n[[item.extra]]\n", "item.0.pass.1.gap", "gap"},
		{bag, `at = "0 x 0 mm"`, `at = "900 x 0 mm"`, "item.0.keep-clear.0.at", "at"},
		{bag, `title = "Book bag"`, `title = Book bag`, "", ""},
	} {
		text := strings.Replace(c.from, c.old, c.new, 1)
		if strings.Contains(c.new, "pass = [") {
			text, _, _ = strings.Cut(text, "[[item.extra]]")
		}
		st := New().Look(text, Picked{}, 300)
		if st.Good || st.Picture != nil || len(st.Problems) != 1 {
			t.Errorf("%s: good %v, %v", c.new, st.Good, st.Problems)
			continue
		}
		p := st.Problems[0]
		if d := cmp.Diff([]string{c.path, c.key}, []string{p.Path, p.Key}); d != "" {
			t.Errorf("%s: %s (line %d: %s)", c.new, d, p.Line, p.Text)
		}
		if (st.Values == nil) != (c.path == "") {
			t.Errorf("%s: values %v", c.new, st.Values)
		}
	}
}

// TestProblemsAreTheCommands: of every bad job the page says what the command says, and where the line
// is known so is the place.
func TestProblemsAreTheCommands(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/bad/*.toml")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	placed := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s := New()
		s.Name(filepath.Base(file))
		_, err = jobfile.ReadWith(filepath.Base(file), data, s.find)
		var want job.Problems
		if !errors.As(err, &want) {
			continue
		}
		st := s.Look(string(data), Picked{}, 300)
		var said, ours []string
		for _, p := range want {
			said = append(said, p.Text)
		}
		for _, p := range st.Problems {
			ours = append(ours, p.Text)
			if p.Line == 0 || st.Values == nil {
				continue
			}
			path, err := edit.ParsePath(p.Path)
			tree, _ := treeOf(string(data))
			if err != nil || edit.Find(tree.Root, path) == nil {
				t.Errorf("%s:%d: %s: is at %q", filepath.Base(file), p.Line, p.Text, p.Path)
			}
			placed++
		}
		if d := cmp.Diff(said, ours); d != "" {
			t.Errorf("%s: %s", filepath.Base(file), d)
		}
	}
	if placed < 100 {
		t.Errorf("%d problems have a place", placed)
	}
}
