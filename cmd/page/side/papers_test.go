package side

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// command builds the command, and returns where it is.
func command(t *testing.T) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "underlay.exe")
	build := exec.Command("go", "build", "-o", file, "underlay/cmd/underlay")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return file
}

// TestDrawAsTheCommand: the page's PDF is the command's, byte for byte, of jobs with and without
// pictures and titles; and it gives the job and its pictures back.
func TestDrawAsTheCommand(t *testing.T) {
	underlay := command(t)
	all := jobs(t)
	all["no-title"] = strings.Replace(all["cushion"], `title = "Floor cushions"`, "", 1)
	pictured := 0
	for _, name := range []string{"no-title", "shade", "bag", "reading-nook-letter", "book-bag-motif", "napkins"} {
		s := sideWithPictures()
		s.Name(name + ".toml")
		ours, err := s.Draw(all[name], nil)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		folder := t.TempDir()
		pictures, _ := filepath.Glob(filepath.Join(examples, "*.png"))
		for _, p := range pictures {
			content, _ := os.ReadFile(p)
			if err := os.WriteFile(filepath.Join(folder, filepath.Base(p)), content, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.WriteFile(filepath.Join(folder, name+".toml"), []byte(all[name]), 0o644); err != nil {
			t.Fatal(err)
		}
		draw := exec.Command(underlay, "draw", name+".toml", "-o", "-")
		draw.Dir, draw.Env = folder, append(os.Environ(), "SOURCE_DATE_EPOCH=")
		theirs, err := draw.Output()
		if err != nil || !bytes.Equal(ours, theirs) {
			t.Errorf("%s: the page draws %d bytes, the command %d, %v", name, len(ours), len(theirs), err)
		}
		o, err := Open(ours, "folder/"+name+" (1).pdf")
		if err != nil || o.Text != all[name] || o.Name != name+" (1)" {
			t.Errorf("%s: out of its PDF comes %q, %v", name, o.Name, err)
		}
		for _, p := range o.Pictures {
			pictured++
			if content, err := os.ReadFile(filepath.Join(examples, p.Name)); err != nil || !bytes.Equal(content, p.Content) {
				t.Errorf("%s: the picture %s is another: %v", name, p.Name, err)
			}
		}
	}
	if len(mustGlob(t, "*.png")) > 0 && pictured == 0 {
		t.Error("no job had a picture")
	}
}

func mustGlob(t *testing.T, pattern string) []string {
	files, err := filepath.Glob(filepath.Join(examples, pattern))
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// TestPapers lists the pages of a small job, counts its sheets, and shows each page as a picture of
// its size.
func TestPapers(t *testing.T) {
	text, _ := Start("cushion")
	s := New()
	p := s.Papers(text, 0, nil)
	if len(p.Problems) > 0 || len(p.Pages) < 5 {
		t.Fatalf("%+v", p)
	}
	guides := 0
	for i, page := range p.Pages {
		if page.Guide {
			guides++
		}
		picture, err := s.Sheet(text, nil, i)
		if err != nil || !strings.Contains(picture, `width="210mm" height="297mm"`) || page.W != 210 || page.H != 297 {
			t.Errorf("page %d, %+v: %v %.200s", i, page, err, picture)
		}
		wellFormed(t, page.Name, picture)
	}
	own := 0
	for _, c := range p.Counts {
		if c.Own {
			own = c.Sheets
		}
		other, err := s.Apply(text, c.Edits)
		if again := s.Papers(other, 0, []string{"guide"}); err != nil || len(again.Pages) == 0 || sheets(again) != c.Sheets {
			t.Errorf("%s: %d sheets are told, %d drawn, %v", c.Paper, c.Sheets, sheets(again), err)
		}
	}
	if own != guides || guides == 0 {
		t.Errorf("%d sheets are told and %d drawn", own, guides)
	}
	if _, err := s.Sheet(text, nil, len(p.Pages)); err == nil {
		t.Error("there is a page after the last")
	}
	if _, err := s.Draw(text, []string{"guide", "poster"}); err == nil || !strings.Contains(err.Error(), `"swatch"`) {
		t.Errorf("a part that is none: %v", err)
	}
}

// sheets counts the pages at true size.
func sheets(p Papers) int {
	n := 0
	for _, page := range p.Pages {
		if page.Guide {
			n++
		}
	}
	return n
}

// wellFormed holds a picture against another reader of XML.
func wellFormed(t *testing.T, name, picture string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(picture))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
	}
}

// TestRulerAndWindow are PDFs, or say which paper would do.
func TestRulerAndWindow(t *testing.T) {
	for name, draw := range map[string]func(string) ([]byte, error){"ruler": Ruler, "window": Window} {
		if file, err := draw("Letter"); err != nil || !bytes.HasPrefix(file, []byte("%PDF-")) {
			t.Errorf("%s: %v", name, err)
		}
		for _, paper := range []string{"A6", "A44"} {
			if _, err := draw(paper); err == nil {
				t.Errorf("%s on %s", name, paper)
			}
		}
	}
}

// TestOpen tells what is no job.
func TestOpen(t *testing.T) {
	for _, c := range []struct{ name, file, want string }{
		{"job.toml", "title = \"x\" # half", ""},
		{"job.toml", "\ufefftitle = 'x'\r\n", ""},
		{"utf16.toml", "\xff\xfet\x00i\x00", ""},
		{"notes.pdf", "%PDF-1.4\n%%EOF", "cut off or damaged"},
		{"photo.jpg", "\xff\xd8\xff\xe0", "this is a picture"},
		{"program", "MZ\x00\x01", "no text"},
		{"empty.toml", " \n", "empty"},
		{"large.toml", strings.Repeat("# x\n", 300_000), "1 MiB"},
	} {
		o, err := Open([]byte(c.file), c.name)
		switch {
		case c.want == "" && (err != nil || o.Name != strings.TrimSuffix(c.name, ".toml") || strings.HasPrefix(o.Text, "\ufeff") || !strings.HasPrefix(o.Text, "ti")):
			t.Errorf("%s: %q, %v", c.name, o.Text, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}
