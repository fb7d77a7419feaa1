package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template"
)

// filesIn returns what stands in the files of a folder and below.
func filesIn(t *testing.T, root string) map[string]string {
	t.Helper()
	files := map[string]string{}
	for _, folder := range []string{"", "within"} {
		entries, err := os.ReadDir(filepath.Join(root, folder))
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if e.IsDir() {
				continue
			}
			data, err := os.ReadFile(filepath.Join(root, folder, e.Name()))
			if err != nil {
				t.Fatal(err)
			}
			files[filepath.ToSlash(filepath.Join(folder, e.Name()))] = string(data)
		}
	}
	return files
}

// Several files are put into their places all or none, whatever goes wrong last; and new ones never
// over what somebody else puts there meanwhile.
func TestWriteAllOrNone(t *testing.T) {
	lost := errors.New("input/output error")
	for name, c := range map[string]struct {
		spoil func(dir string, drafts []draft) (ready func() error)
		want  map[string]string // nil: as it was
	}{
		"all goes well": {func(string, []draft) func() error { return nil },
			map[string]string{"within/fern.png": "fern", "within/wave.png": "wave", "within/nook.toml": "job"}},
		"the second cannot be written": {func(_ string, drafts []draft) func() error {
			drafts[1].content = func(io.Writer) error { return lost }
			return nil
		}, nil},
		"the last cannot be brought to disk": {func(_ string, drafts []draft) func() error {
			drafts[2].sync = func(*os.File) error { return lost }
			return nil
		}, nil},
		"not ready": {func(string, []draft) func() error { return func() error { return lost } }, nil},
		"another comes first": {func(dir string, _ []draft) func() error {
			return func() error { return os.WriteFile(filepath.Join(dir, "within", "wave.png"), []byte("theirs"), 0o600) }
		}, map[string]string{"within/nook.toml": "before", "within/wave.png": "theirs"}},
		"the job's place is taken by a folder": {func(dir string, _ []draft) func() error {
			return func() error {
				place := filepath.Join(dir, "within", "nook.toml")
				if err := os.Remove(place); err != nil {
					return err
				}
				return os.Mkdir(place, 0o700)
			}
		}, map[string]string{}},
	} {
		dir := t.TempDir()
		if err := os.Mkdir(filepath.Join(dir, "within"), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, "within", "nook.toml"), []byte("before"), 0o600); err != nil {
			t.Fatal(err)
		}
		before := filesIn(t, dir)
		var drafts []draft
		for _, f := range [][2]string{{"fern.png", "fern"}, {"wave.png", "wave"}, {"nook.toml", "job"}} {
			to, err := newPlace(filepath.Join(dir, "within", f[0]), origin{})
			if err != nil {
				t.Fatal(err)
			}
			to.fresh = f[0] != "nook.toml"
			drafts = append(drafts, draftOf(to, []byte(f[1])))
		}
		err := writeAll(drafts, c.spoil(dir, drafts))
		if (err == nil) != (name == "all goes well") {
			t.Errorf("%s: %v", name, err)
		}
		want := c.want
		if want == nil {
			want = before
		}
		if d := cmp.Diff(want, filesIn(t, dir)); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

// A PDF made up to do harm: what its files are called leads nowhere but beside the job.
func TestRecoverUsesNoPath(t *testing.T) {
	const job = "[[block]]\npicture = 'fern.png'\n[[block]]\npicture = '../wave.png'\n[[block]]\npicture = '..\\acorn.png'\n" +
		"[[block]]\npicture = 'CON.png'\n[[block]]\npicture = '.hidden.png'\n[[block]]\npicture = 'run.exe'\n" +
		"[[block]]\npicture = '/etc/pebble.png'\n[[block]]\npicture = 'fern.png'\n"
	files := []pdf.Attachment{{Name: template.CarriedName, Content: []byte(job)}}
	for _, name := range []string{"../../fern.png", "../wave.png", `..\acorn.png`, "CON.png", ".hidden.png", "run.exe", "/etc/pebble.png", "other.png", "note.txt"} {
		files = append(files, pdf.Attachment{Name: name, Type: "image/png", Content: []byte(name)})
	}
	write := func(files []pdf.Attachment) []byte {
		var out bytes.Buffer
		page := paper.Page{Size: geometry.Size{W: 50, H: 50}}
		if err := pdf.Write(&out, pdf.Document{Attachments: files, Parts: []paper.Part{{Pages: []paper.Page{page}}}}); err != nil {
			t.Fatal(err)
		}
		return out.Bytes()
	}
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "within"), 0o700); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "nook.pdf")
	recover := func() (int, string) {
		var stderr bytes.Buffer
		code := run([]string{"recover", file, "-o", filepath.Join(dir, "within", "nook.toml")}, nil, io.Discard, &stderr, noEnv)
		return code, stderr.String()
	}
	for _, c := range []struct {
		files []pdf.Attachment
		want  map[string]string
		says  string
	}{
		{files, map[string]string{"within/nook.toml": job, "within/fern.png": "../../fern.png"}, ""},
		{files[:1], map[string]string{}, `the picture "fern.png": this PDF carries no fern.png inside, only other files; take one that underlay draw wrote; or write -o - for the job alone`},
		{[]pdf.Attachment{files[0], {Name: "fern.png", Content: make([]byte, 33<<20)}}, map[string]string{}, "larger than all"},
	} {
		made := write(c.files)
		if err := os.WriteFile(file, made, 0o600); err != nil {
			t.Fatal(err)
		}
		for name := range filesIn(t, dir) {
			if name != "nook.pdf" {
				if err := os.Remove(filepath.Join(dir, name)); err != nil {
					t.Fatal(err)
				}
			}
		}
		code, says := recover()
		if (code == 0) != (c.says == "") || !strings.Contains(says, c.says) {
			t.Errorf("ends with %d, %s", code, says)
		}
		c.want["nook.pdf"] = string(made)
		if d := cmp.Diff(c.want, filesIn(t, dir)); d != "" {
			t.Errorf("%s: %s", c.says, d)
		}
	}
}
