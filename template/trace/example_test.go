package trace_test

import (
	"bytes"
	"flag"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/repo"
	"underlay/template/picture"
	"underlay/template/trace"
	"underlay/testdata/photograph"
)

var update = flag.Bool("update", false, "make the example's photograph anew, and what comes of it")

// TestExamplePhotograph measures the photograph of the example, a fern 61 mm wide in moss green. With
// -update it is taken anew, and the picture that comes of it.
func TestExamplePhotograph(t *testing.T) {
	name := repo.Path(t, "examples", "fern-photo.jpg")
	// Pressed a little askew.
	fern := motifs["fern"](61, nil).put(2, geometry.Point{})
	size := fern.path().Bounds().Size()
	if *update {
		photographFern(t, name, fern)
	}
	file, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	grey, err := picture.Gray(file)
	if err != nil {
		t.Fatal(err)
	}
	p, err := trace.Photo(grey)
	if err != nil {
		t.Fatal(err)
	}
	if dw, dh := p.Size.W-size.W, p.Size.H-size.H; math.Abs(float64(dw)) > 0.2 || math.Abs(float64(dh)) > 0.2 {
		t.Errorf("the fern is %v, and was measured %v", size, p.Size)
	}
	if *update {
		var out bytes.Buffer
		if err := picture.WritePNG(&out, p.Mask, trace.PixelsPerMM*1000); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(repo.Path(t, "examples", "pictures", "traced.png"), out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func photographFern(t *testing.T, name string, fern motif) {
	page := windowPages["A4"](t)
	at := page.at.Add(geometry.Pt(72, 101))
	p := printed(t, page, fern.put(0, at))
	c := photograph.Camera{W: 1500, H: 1900, Focal: 1800, K1: 0.012, Aslant: 14, Toward: 70, Turn: 3}
	c = c.Framed(0, 0, 210, 297, 0.02)
	var seen [3]*image.Gray
	moss, wood := [3]float64{0.09, 0.16, 0.05}, [3]float64{0.36, 0.23, 0.13}
	for i := range seen {
		light := photograph.Light{White: []float64{0.85, 0.8, 0.72}[i], FallX: -0.25, FallY: 0.15, Vignette: 0.15, Blur: 0.5, Noise: 1.5}
		seen[i] = photograph.Take(p.sheet(cloth{paint: moss[i], ground: 0.85, table: wood[i]}), c, light, 3, rand.New(rand.NewPCG(5, uint64(i))))
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, photograph.Coloured(seen[0], seen[1], seen[2]), &jpeg.Options{Quality: 80}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
