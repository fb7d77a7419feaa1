package template

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"testing"

	"underlay/template/internal/messages"
	"underlay/template/internal/repo"
	"underlay/template/internal/sample"
	read "underlay/template/picture"
	"underlay/testdata/motifs"
)

// TestMotifs keeps the pictures of the examples' blocks as they are drawn by testdata/motifs. With
// -update it makes them anew.
func TestMotifs(t *testing.T) {
	known := map[string]bool{}
	for _, m := range motifs.All() {
		known[m.File] = true
		made, err := m.PNG()
		if err != nil {
			t.Fatal(err)
		}
		if len(made) > 20_000 {
			t.Errorf("%s is %d bytes, too many for a motif", m.File, len(made))
		}
		path := repo.Path(t, "examples", m.File)
		if *messages.Update {
			if err := os.WriteFile(path, made, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(path)
		if err != nil || !bytes.Equal(kept, made) {
			t.Errorf("%s is not what testdata/motifs draws now, %v; look at the change, then run go test ./template -run Motifs -update", path, err)
		}
		// What is read from it fills the face.
		p, err := read.Read(m.File, made)
		if err != nil {
			t.Errorf("%s: %v", m.File, err)
			continue
		}
		w, h := float64(p.Mask.W)/float64(p.Mask.H), m.Width/m.Height
		if math.Abs(w/h-1) > 0.01 {
			t.Errorf("%s is %d x %d pixels, and its face %g x %g mm", m.File, p.Mask.W, p.Mask.H, m.Width, m.Height)
		}
		if s := p.Mask.Share(); s < 0.2 || s > 0.95 {
			t.Errorf("%s carries paint on %.2f of its face", m.File, s)
		}
	}
	files, err := filepath.Glob(repo.Path(t, "examples", "*.png"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if !known[filepath.Base(file)] {
			t.Errorf("%s is drawn by no motif", file)
		}
	}
}

// Every block of the examples has its picture, of its own shape, and every picture its block.
func TestExamplesShowMotifs(t *testing.T) {
	used := map[string]bool{}
	for name, j := range sample.Examples(t) {
		for _, b := range j.Blocks {
			if b.Picture == nil {
				t.Errorf("%s: block %s has no picture", name, b.Name)
				continue
			}
			used[b.Picture.Name] = true
			if !b.PictureFits() {
				t.Errorf("%s: %s is not of the shape of block %s", name, b.Picture.Name, b.Name)
			}
		}
	}
	for _, m := range motifs.All() {
		if !used[m.File] {
			t.Errorf("no example shows %s", m.File)
		}
	}
}
