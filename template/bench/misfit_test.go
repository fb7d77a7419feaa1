package bench

import (
	"strings"
	"testing"

	"underlay/template/picture"
)

// A picture whose shape is more than 3 % off the face's is said on the bench sheet, once a block, and
// what to do; one that is nearer is not.
func TestBenchSaysWhatPicturesDoNotFit(t *testing.T) {
	for _, c := range []struct {
		w, h int
		want string // "": nothing
	}{
		{100, 100, ""}, {103, 100, ""}, {100, 103, ""},
		{104, 100, "The print in the picture fern.png is 4 % too wide for the face of fern, 90 × 90 mm, and is drawn out to it; " +
			"measure the print again, which by its picture is 93.6 × 90 mm or 90 × 86.5 mm, or crop the picture to the print alone."},
		{50, 100, "is 50 % too narrow"},
	} {
		j := readJob(t, "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"+
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n[[item.pass]]\nname = 'again'\nblock = 'fern'\non = 'fern'\n")
		mask := &picture.Mask{W: c.w, H: c.h, Paint: make([]uint8, c.w*c.h)}
		for i := range mask.Paint {
			mask.Paint[i] = 255
		}
		j.Blocks[0].Picture = &picture.Picture{Name: "fern.png", Mask: mask}
		p := workedOut(t, j)
		text := textOf(Sheets(p, p.Items[0])[0].Pages)
		n := strings.Count(text, "The print in the picture")
		if c.want == "" && n > 0 || c.want != "" && (n != 1 || !strings.Contains(text, c.want)) {
			t.Errorf("%d x %d: said %d times: %s", c.w, c.h, n, text)
		}
		if (c.want == "") != j.Blocks[0].PictureFits() {
			t.Errorf("%d x %d: fits %v", c.w, c.h, j.Blocks[0].PictureFits())
		}
	}
}
