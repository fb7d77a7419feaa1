package template

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"underlay/paper"
	"underlay/testdata/pdfread"
)

// TestPictures keeps the README's pictures of real pages as the program draws them. With
// -update it makes them anew.
func TestPictures(t *testing.T) {
	const name = "../examples/reading-nook.toml"
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	job, err := ReadJob(filepath.Base(name), data)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := NewPlan(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, picture := range []struct {
		file string
		part string
		page int // of the part, for the first item
	}{
		{"bench.png", "bench", 2},
		{"map.png", "guide", 1},
		{"guide.png", "guide", 3},
		{"swatch.png", "swatch", 1},
		{"tags.png", "tags", 1},
	} {
		doc, _, err := plan.Document([]string{picture.part})
		if err != nil {
			t.Fatal(err)
		}
		var pdf bytes.Buffer
		if err := paper.WritePDF(&pdf, doc); err != nil {
			t.Fatal(err)
		}
		var got bytes.Buffer
		page := pdfread.Open(t, pdf.Bytes()).Pages()[picture.page-1]
		if err := png.Encode(&got, page.Render(50)); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join("../examples/pictures", picture.file)
		if *update {
			if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got.Bytes(), want) {
			t.Errorf("%s is not what the program draws now; look at the change, then run go test ./template -run Pictures -update", path)
		}
	}
}
