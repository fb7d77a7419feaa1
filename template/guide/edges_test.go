package guide

import (
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
)

// A round cloth has no corners to lay it by.
func TestEdgesOfARoundCloth(t *testing.T) {
	plan := planOf(t, "[paper]\nextent = 'edges'\n[[block]]\nname = 'pebble'\nprint = '40 x 40 mm'\n"+
		"[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '360 mm'\nborder = '20 mm'\n[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\n")
	edge := 0
	for _, s := range Draw(plan.Job, plan.Items[0].Faces()[0]).Strokes {
		for _, piece := range s.Path() {
			if len(piece.Steps) < 4 {
				continue
			}
			edge++
			for _, q := range readback.Corners(piece) {
				if r := q.Distance(geometry.Pt(180, 180)); r < 179.99 || r > 180.01 {
					t.Fatalf("a line inside the reach runs %v mm from the middle", float64(r))
				}
			}
		}
	}
	if edge != 1 {
		t.Errorf("the edge of the cloth is drawn %d times", edge)
	}
}
