package guide

import (
	"fmt"
	"strings"
	"testing"

	"underlay/paper"
)

// TestSheetFigures: on sheets gaps and borders are as a ruler shows them, to half a millimetre; in
// inches to a sixteenth, as everywhere; a hair of a gap is not made none. By hand: 3 of 61.3 mm and two gaps of
// 1.3 leave (300 - 186.5) / 2 = 56.75 mm, or 2.234 in, 2 4/16; two of 0.2 leave 57.85 mm.
func TestSheetFigures(t *testing.T) {
	const text = "units = '%s'\n[[block]]\nname = 'fern'\nprint = '61.3 x 61.3 mm'\n[[item]]\nname = 'bag'\nsize = '300 x 300 mm'\nborder = '40 mm'\n" +
		"[[item.pass]]\nblock = 'fern'\ngap = '%s'\ncentre-across = 'print'\ncentre-down = 'print'\n"
	for _, c := range []struct{ units, gap, want string }{
		{"mm", "1.3 mm", "fern 61.3 × 61.3 mm, gap 1.5 mm | border 57 mm"},
		{"mm", "0.2 mm", "fern 61.3 × 61.3 mm, gap 0.2 mm | border 58 mm"},
		{"in", "1.3 mm", "gap 1/16 in | border 2 1/4 in"},
	} {
		p := planOf(t, fmt.Sprintf(text, c.units, c.gap))
		lines := panel(p.Items[0].Faces()[0], p.Job, &paper.Drawing{}).Lines
		if got := strings.Join(lines[:2], " | "); !strings.HasSuffix(got, c.want) {
			t.Errorf("gap %s in %s: %q, want %q", c.gap, c.units, got, c.want)
		}
	}
}
