package jobfile

import (
	"fmt"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

func coneJob(lines string) string {
	return goodTail + "\n[[item]]\nname = \"shade\"\nshape = \"cone\"\nborder = \"10 mm\"\nlap = \"8 mm\"\n" + lines
}

// TestConeByTape: a cone by tape is the one of its diameters and its height.
func TestConeByTape(t *testing.T) {
	inch := func(x float64) string { return fmt.Sprintf("\"%.9f in\"", x) }
	shade := func(lines string) job.Shade {
		t.Helper()
		return readJob(t, coneJob(lines)).Items[1].Shade
	}
	for _, c := range []struct{ top, bottom, height float64 }{
		// "The Net of a Frustum" (ceemrr.com): ends 5 in and 8 in across, 4 in apart. Its side is
		// the difference of the radii of its net, 11.39 - 7.12 = 4.27 in; sqrt(4^2 + 1.5^2) = 4.272.
		{5, 8, 4},
		{7, 12.6, 9.4}, {2, 2.1, 10}, {1, 20, 0.5},
	} {
		slope := math.Hypot(c.height, (c.bottom-c.top)/2)
		got := shade("top-around = " + inch(math.Pi*c.top) + "\nbottom-around = " + inch(math.Pi*c.bottom) + "\nslope = " + inch(slope))
		want := shade("top = " + inch(c.top) + "\nbottom = " + inch(c.bottom) + "\nheight = " + inch(c.height))
		const close = geometry.Length(1e-5)
		if (got.Top-want.Top).Abs() > close || (got.Bottom-want.Bottom).Abs() > close || (got.Height-want.Height).Abs() > close || got.Lap != want.Lap {
			t.Errorf("%v: by tape %v, by diameters %v", c, got, want)
		}
	}
	// The published net of the frustum: from its inner radius 7.12 in to its outer 11.39 in.
	got := shade(`top-around = "15.708 in"` + "\n" + `bottom-around = "25.133 in"` + "\n" + `slope = "4.27 in"`)
	if (got.Height - 4*geometry.Inch).Abs() > 0.005*geometry.Inch {
		t.Errorf("%v high", got.Height)
	}
}
