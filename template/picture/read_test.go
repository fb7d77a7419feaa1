package picture

import (
	"image"
	"testing"
)

func TestReadCropsToThePrint(t *testing.T) {
	for _, k := range []int{1, 7, 40} {
		m := paper(100*k, 80*k, image.Rect(20*k, 10*k, 70*k, 30*k), image.Rect(20*k, 30*k, 40*k, 60*k))
		p, err := Read("fern.png", encode(t, m))
		if err != nil {
			t.Fatal(err)
		}
		if aspect := float64(p.Mask.W) / float64(p.Mask.H); aspect != 1 {
			t.Errorf("%d: %d x %d", k, p.Mask.W, p.Mask.H)
		}
		if s := p.Mask.Share(); s < 0.6399 || s > 0.6401 {
			t.Errorf("%d: %g of it is paint", k, s)
		}
		if p.Mask.At(p.Mask.W-1, p.Mask.H-1) != 0 || p.Mask.At(0, p.Mask.H-1) != 255 {
			t.Errorf("%d: it does not stand as it stood", k)
		}
	}
}
