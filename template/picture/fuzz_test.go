package picture

import (
	"bytes"
	"encoding/binary"
	"image"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// FuzzPicture reads anything as a picture: it is refused with one plain sentence, or gives a print with
// paint on each of its edges; the same twice, and without much memory.
func FuzzPicture(f *testing.F) {
	files, err := filepath.Glob(filepath.Join("testdata", "*.*g"))
	if err != nil || len(files) == 0 {
		f.Fatalf("no pictures: %v", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
		if strings.HasSuffix(name, ".jpg") {
			tiff := exif(binary.BigEndian, "MM\x00*", 0x0112, 3, 1, 6)
			f.Add(withSegment(data, 0xE1, append([]byte("Exif\x00\x00"), tiff...)))
		}
	}
	small := encode(f, paper(24, 20, image.Rect(2, 2, 20, 18), image.Rect(22, 18, 23, 19)))
	f.Add(small)
	f.Add(withChunk(small, "tRNS", []byte{0, 255}))
	f.Add(withChunk(small, "eXIf", exif(binary.LittleEndian, "II*\x00", 0x0112, 3, 1, 5)))
	f.Fuzz(func(t *testing.T, file []byte) {
		before := allocated()
		p, err := Read("fern.png", file)
		if used := allocated() - before; used > 240_000_000 {
			t.Errorf("%d MB", used/1_000_000)
		}
		if err != nil {
			if s := err.Error(); strings.ContainsAny(s, "\n\r") || !strings.Contains(s, "; ") {
				t.Errorf("said: %q", s)
			}
			return
		}
		m := p.Mask
		if m.W < 1 || m.H < 1 || max(m.W, m.H) > mostSide || max(m.W, m.H) < leastSide || len(m.Paint) != m.W*m.H || !bytes.Equal(p.File, file) {
			t.Fatalf("%d x %d, %d", m.W, m.H, len(m.Paint))
		}
		any := func(n int, at func(i int) (x, y int)) bool {
			for i := range n {
				if m.At(at(i)) > 0 {
					return true
				}
			}
			return false
		}
		if !any(m.W, func(i int) (int, int) { return i, 0 }) || !any(m.W, func(i int) (int, int) { return i, m.H - 1 }) ||
			!any(m.H, func(i int) (int, int) { return 0, i }) || !any(m.H, func(i int) (int, int) { return m.W - 1, i }) {
			t.Error("an edge has no paint")
		}
		if s := m.Share(); s <= 0 || s > 1 {
			t.Errorf("%g of it is paint", s)
		}
		if again, err := Read("fern.png", file); err != nil || !slices.Equal(again.Mask.Paint, m.Paint) {
			t.Errorf("read again it is another: %v", err)
		}
		if MediaType(file) == "" {
			t.Error("it has no media type")
		}
	})
}

// FuzzOrientation reads anything as Exif data.
func FuzzOrientation(f *testing.F) {
	f.Add(exif(binary.BigEndian, "MM\x00*", 0x0112, 3, 1, 6))
	f.Add(exif(binary.LittleEndian, "II*\x00", 0x0112, 3, 1, 8))
	f.Fuzz(func(t *testing.T, tiff []byte) {
		if got := orientation(tiff); got > 8 {
			t.Errorf("turned by %d", got)
		}
	})
}
