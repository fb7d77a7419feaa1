package picture

import (
	"image"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"testing"
)

// One print, 32 x 32 pixels with its upper right quarter half bare, saved by other programs
// (ImageMagick, Ghostscript) in every form that is read.
func TestEveryForm(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("testdata", "*.*g"))
	if err != nil || len(files) != 11 {
		t.Fatalf("%d pictures, %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Read(filepath.Base(file), data)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		m := p.Mask
		if m.W != 32 || m.H != 32 {
			t.Errorf("%s: %d x %d", file, m.W, m.H)
		}
		const want = 0.875
		if math.Abs(m.Share()-want) > 0.005 {
			t.Errorf("%s: %g of it is paint", file, m.Share())
		}
		if m.At(28, 4) > 2 || m.At(28, 28) < 253 || m.At(4, 4) < 253 {
			t.Errorf("%s: paint %d %d %d", file, m.At(28, 4), m.At(28, 28), m.At(4, 4))
		}
	}
}

// What is transparent is seen on white, wholly or partly, whatever colour it has.
func TestTransparentOnWhite(t *testing.T) {
	at := image.Rect(16, 8, 48, 40)
	through := image.NewNRGBA(image.Rect(0, 0, 64, 48))
	deep := image.NewNRGBA64(through.Rect)
	listed := image.NewPaletted(through.Rect, color.Palette{color.NRGBA{}, color.NRGBA{0, 0, 0, 255}})
	for y := at.Min.Y; y < at.Max.Y; y++ {
		for x := at.Min.X; x < at.Max.X; x++ {
			through.Set(x, y, color.NRGBA{0, 0, 0, 128})
			deep.Set(x, y, color.NRGBA64{0, 0, 0, 0x8080})
			listed.SetColorIndex(x, y, 1)
		}
	}
	for name, c := range map[string]struct {
		m    image.Image
		want uint8
	}{"half": {through, 127}, "half, deep": {deep, 127}, "palette": {listed, 0}} {
		m, err := Gray(encode(t, c.m))
		if err != nil {
			t.Fatal(err)
		}
		if m.GrayAt(0, 0).Y != 255 || m.GrayAt(20, 20).Y != c.want {
			t.Errorf("%s: %d and %d", name, m.GrayAt(0, 0).Y, m.GrayAt(20, 20).Y)
		}
	}
	// A grey that stands for nothing (PNG, chunk tRNS).
	black := withChunk(encode(t, image.NewGray(at)), "tRNS", []byte{0, 0})
	if m, err := Gray(black); err != nil || m.GrayAt(5, 5).Y != 255 {
		t.Errorf("%v, %v", m, err)
	}
}

// Greys of colours, against color.GrayModel.
func TestGreysOfColours(t *testing.T) {
	for i := range 1 << 12 {
		c := color.RGBA{uint8(i >> 8 * 17), uint8(i >> 4 & 15 * 17), uint8(i & 15 * 17), 255}
		if got, want := grey(c.R, c.G, c.B), color.GrayModel.Convert(c).(color.Gray).Y; got != want {
			t.Errorf("%v: %d, not %d", c, got, want)
		}
	}
}
