package plan

import (
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// TestDrift: in a full grid the farthest print is as many placements off as there are columns
// and rows to pass: 2 + 2 from the middle of 5 x 5, 4 + 4 from its corner.
func TestDrift(t *testing.T) {
	for _, c := range []struct {
		columns, rows  int
		centre, corner int
	}{{5, 5, 4, 8}, {7, 3, 4, 8}, {1, 1, 0, 0}, {1, 9, 4, 8}, {4, 4, 4, 6}, {6, 5, 5, 9}} {
		item := rectItem(geometry.Length(c.columns)*50, geometry.Length(c.rows)*50, 0)
		pass := newPass(rectBlock(49, 49), "straight", 1)
		d := planned(t, item, pass).Drift
		if d.FromCentre != c.centre || d.FromCorner != c.corner {
			t.Errorf("%d x %d: %d from the centre, %d from a corner; want %d, %d", c.columns, c.rows, d.FromCentre, d.FromCorner, c.centre, c.corner)
		}
		if c.centre > 0 && !near(d.Harmless, 1/geometry.Length(c.centre)) {
			t.Errorf("%d x %d: harmless %v", c.columns, c.rows, d.Harmless)
		}
	}
	// Gaps of 1 across and 3 down: errors eat up the lesser first.
	pass := newPass(rectBlock(49, 47), "straight", 1)
	pass.Gap.Down = job.Gap{Least: 3, Most: 3}
	if d := planned(t, rectItem(250, 250, 0), pass).Drift; !near(d.Harmless, 0.25) {
		t.Errorf("gaps of 1 and 3: harmless %v, want 1/4", d.Harmless)
	}
	// A frame of 4 x 4 has 12 prints round, each set against the last.
	d := planned(t, rectItem(210, 210, 0), newPass(rectBlock(50, 50), "frame", 1)).Drift
	if d.FromCentre != 3 {
		t.Errorf("frame: %+v", d)
	}
}
