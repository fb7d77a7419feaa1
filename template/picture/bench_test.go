package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"testing"
)

// grain is a picture of about that many million pixels: a round print on cloth, with the grain of a
// camera.
func grain(million int) *image.NRGBA {
	w, h := 1000*million/5, 5000
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			g := uint8(225)
			if u, v := 2*x-w, 2*y-h; u*u+v*v < w*w/4 && u*u+v*v < h*h/4 {
				g = 40
			}
			g += uint8((x*7 ^ y*13 ^ x*y>>5) & 15)
			m.SetNRGBA(x, y, color.NRGBA{g, g, g / 2, 255})
		}
	}
	return m
}

// BenchmarkRead reads pictures of 12 megapixels, as telephones take them, and of the most there may be.
func BenchmarkRead(b *testing.B) {
	for _, million := range []int{12, 40} {
		m := grain(million)
		var asPNG, asJPEG bytes.Buffer
		if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&asPNG, m); err != nil {
			b.Fatal(err)
		}
		if err := jpeg.Encode(&asJPEG, m, nil); err != nil {
			b.Fatal(err)
		}
		m = nil
		for name, file := range map[string][]byte{"JPEG": asJPEG.Bytes(), "PNG": asPNG.Bytes()} {
			b.Run(fmt.Sprintf("%s of %d megapixels", name, million), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := Read("fern", file); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
