package say

import (
	"testing"

	"underlay/geometry"
	"underlay/template/trace"

	"github.com/google/go-cmp/cmp"
)

func TestTraced(t *testing.T) {
	p := trace.Print{Size: geometry.Size{W: 61.44, H: 80.06}, Inked: 0.416, Fit: 0.0042, Worst: 0.031, Aslant: 17.2, Scale: 4.84, Blur: 0.146}
	if d := cmp.Diff("[[block]]\nname = \"fern\"\nprint = \"61.4 x 80.1 mm\"\ninked = 0.42\npicture = \"fern.png\"\n", TracedBlock("fern", "fern.png", p)); d != "" {
		t.Error(d)
	}
	sure := "sure to about 0.2 mm: buttons and dots of the window lie within 0.03 mm of their places (0.004 mm in the mean); the picture has 4.8 pixels to the millimetre, is taken 17 degrees aslant and sharp to 0.15 mm"
	if d := cmp.Diff(sure, Traced(p)); d != "" {
		t.Error(d)
	}
	p.Light, p.Specks, p.Pale, p.Blur, p.Inked = true, 1, 12.4, 0.26, 0.001
	sure = "sure to about 0.3 mm: buttons and dots of the window lie within 0.03 mm of their places (0.004 mm in the mean); the picture has 4.8 pixels to the millimetre, is taken 17 degrees aslant and sharp to 0.26 mm\n" +
		"the print is lighter than what it is on, and was taken for paint all the same\n" +
		"left out: 1 speck beside the print or in it\n" +
		"left out: 12 square millimetres that are neither clearly print nor clearly plain; where they are paint, press the block again with one dark paint"
	if d := cmp.Diff(sure, Traced(p)); d != "" {
		t.Error(d)
	}
	if got := TracedInked(p); got != "0.01" {
		t.Errorf("next to nothing inked is %s, which a job refuses", got)
	}
}
