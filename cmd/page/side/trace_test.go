package side

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestTraceAsTheCommand measures a photograph as the command does: the same picture, the same lines for
// the job. Put into a block they leave a good job, which shows the print.
func TestTraceAsTheCommand(t *testing.T) {
	photo, err := os.ReadFile(filepath.Join(examples, "fern-photo.jpg"))
	if err != nil {
		t.Fatal(err)
	}
	s := New()
	got, err := s.Trace(photo, "camera/IMG 1.jpg", "fern", "149.6 mm", "")
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "photo.jpg"), photo, 0o644); err != nil {
		t.Fatal(err)
	}
	run := exec.Command(command(t), "trace", "photo.jpg", "--name", "fern", "--across", "149.6 mm")
	run.Dir = folder
	lines, err := run.Output()
	png, _ := os.ReadFile(filepath.Join(folder, "fern.png"))
	if err != nil || strings.TrimSpace(string(lines)) != strings.TrimSpace(got.Block) || !bytes.Equal(png, got.Picture.Content) || got.Picture.Name != "fern.png" {
		t.Errorf("the command says %q, %v, the page %q; pictures of %d and %d bytes", lines, err, got.Block, len(png), len(got.Picture.Content))
	}
	text, _ := Start("cushion")
	plain := s.Look(text, Picked{Only: "look"}, 300).Picture.SVG
	for _, e := range got.Edits {
		if text, err = s.Choose(text, "block.0."+e.Path, e.Value); err != nil {
			t.Fatal(err)
		}
	}
	st := s.Look(text, Picked{Only: "look"}, 300)
	if !st.Good || st.Picture.SVG == plain {
		t.Errorf("%v\n%s", st.Problems, text)
	}
	if again, err := s.Trace(photo, "camera/IMG 1.jpg", "", "", ""); err != nil || again.Name != "IMG 1" {
		t.Errorf("%q, %v", again.Name, err)
	}
	if _, err := s.Trace(photo, "p.jpg", "", "180 mm", ""); err == nil || !strings.Contains(err.Error(), "fit to page") {
		t.Errorf("a bar of 180 mm: %v", err)
	}
	if _, err := s.Trace([]byte("no photograph"), "p.jpg", "", "", ""); err == nil {
		t.Error("what is no photograph is measured")
	}
	s.Forget("fern.png")
	if st := s.Look(text, Picked{}, 300); st.Good || st.Problems[0].Path != "block.0.picture" || !strings.Contains(st.Problems[0].Text, "no picture of this name") {
		t.Errorf("%v", st.Problems)
	}
}
