package trace_test

import (
	"image"
	"testing"
	"time"

	"underlay/geometry"
	"underlay/template/trace"
)

// FuzzPhoto changes a good photograph, or makes a small picture of the bytes alone: whatever comes,
// there is no panic, an answer within bounded time, and a print that is read lies in the window.
func FuzzPhoto(f *testing.F) {
	f.Add([]byte{0})
	f.Add([]byte{1, 2, 3, 250, 0, 0, 255})
	f.Add([]byte{2, 100, 100, 9, 0, 40, 60, 20, 255})
	f.Add([]byte{4, 75, 100, 30, 30, 75, 20, 3, 200, 10, 190, 12, 0})
	good := fernPhoto(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) == 0 {
			return
		}
		img := image.NewGray(good.Rect)
		copy(img.Pix, good.Pix)
		switch kind, data := data[0]%4, data[1:]; kind {
		case 0: // discs laid on it: across, down, radius, grey
			for ; len(data) >= 4; data = data[4:] {
				put(t, img, geometry.Pt(geometry.Length(data[0])-30, geometry.Length(data[1])-30), float64(data[2])/8, data[3])
			}
		case 1: // its greys changed
			if len(data) > 0 {
				for i, p := range img.Pix {
					img.Pix[i] = p*(data[0]|1) + data[len(data)/2]
				}
			}
		case 2: // a part of it
			if len(data) >= 4 {
				img = img.SubImage(image.Rect(int(data[0])*5, int(data[1])*7, int(data[2])*6, int(data[3])*8)).(*image.Gray)
			}
		default: // the bytes, again and again
			if len(data) > 1 {
				img = mapped(nil, 400+int(data[0]), 400+int(data[1]), func(x, y int) uint8 { return data[(x/7+y/5*int(data[0]))%len(data)] })
			}
		}
		start := time.Now()
		p, err := trace.Photo(img)
		if took := time.Since(start); took > 2*time.Minute {
			t.Errorf("it took %v", took)
		}
		switch {
		case err != nil && err.Error() == "", err == nil && (p.Size.W <= 0 || p.Size.W > 150 || p.Size.H <= 0 || p.Size.H > 200 || !(p.Inked > 0 && p.Inked <= 1)):
			t.Errorf("%+v, %v", p.Size, err)
		case err == nil && (len(p.Mask.Paint) != p.Mask.W*p.Mask.H || !(p.Fit >= 0 && p.Fit < 1) || !(p.Scale >= 4)):
			t.Errorf("fit %v, scale %v, %d pixels of %d x %d", p.Fit, p.Scale, len(p.Mask.Paint), p.Mask.W, p.Mask.H)
		}
	})
}

func BenchmarkPhoto(b *testing.B) {
	img := fernPhoto(b)
	large := mapped(img, 3000, 3800, func(x, y int) uint8 { return img.GrayAt(x/2, y/2).Y })
	for name, m := range map[string]*image.Gray{"3 MP": img, "11 MP": large} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := trace.Photo(m); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
