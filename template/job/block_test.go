package job

import (
	"testing"

	"underlay/geometry"
	"underlay/template/picture"
)

// TestPictureFits: a picture may be three in a hundred wider or higher than the face, and no more.
func TestPictureFits(t *testing.T) {
	for _, c := range []struct {
		w, h int
		fits bool
	}{
		{1000, 1000, true}, {1029, 1000, true}, {1000, 1029, true},
		{1031, 1000, false}, {1000, 1031, false},
	} {
		b := &Block{Size: geometry.Size{W: 90, H: 90}, Picture: &picture.Picture{Mask: &picture.Mask{W: c.w, H: c.h}}}
		if got := b.PictureFits(); got != c.fits {
			t.Errorf("%d x %d pixels on a square face: fits %v, off %v", c.w, c.h, got, b.PictureOff())
		}
	}
	if b := (&Block{Size: geometry.Size{W: 90, H: 60}}); !b.PictureFits() {
		t.Error("no picture does not fit")
	}
}
