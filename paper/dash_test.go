package paper

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"underlay/geometry"
)

// Lengths of line elements in ISO 128-2 (from ISO 128-20:1996, table 3): dots up to 0.5 d, gaps
// 3 d, short dashes 6 d, dashes 12 d, long dashes 24 d.
func TestDashesAreInProportionToTheLine(t *testing.T) {
	for _, c := range []struct {
		kind  LineType
		width geometry.Length
		want  []float64
	}{
		{Continuous, 0.5, nil},
		{Dashed, 0.5, []float64{6, 1.5}},
		{Chain, 0.5, []float64{12, 1.5, 0.25, 1.5}},
		{DoubleChain, 1, []float64{24, 3, 0.5, 3, 0.5, 3}},
		{Dotted, 0.7, []float64{0.35, 2.1}},
		{LongShort, 0.5, []float64{12, 1.5, 3, 1.5}},
		{Dotted, 0.25, []float64{0.25, 0.75}}, // a dot of 0.125 is lost at 150 dots an inch, 0.169 mm each
		{Dashed, 0.13, []float64{3, 0.75}},    // as 0.25
	} {
		got := Pen{Type: c.kind, Width: c.width}.Dashes()
		if d := cmp.Diff(c.want, got, cmpopts.EquateApprox(0, 1e-12)); d != "" {
			t.Errorf("type %d, %v mm: %s", c.kind, c.width, d)
		}
	}
}
