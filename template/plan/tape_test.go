package plan

import (
	"testing"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// TestTapeLines by hand: the field of 4 x 4 prints of 90 with gaps of 1 on 500 x 500 runs from
// 68.5 to 431.5. The first row lies above the joint on the centre: its near edge is at 249.5.
func TestTapeLines(t *testing.T) {
	for _, c := range []struct {
		name  string
		order job.Order
		item  *job.Item
		want  TapeLines
	}{
		{"joint on the centre", job.CentreOut, rectItem(500, 500, 25), TapeLines{Across: []geometry.Length{68.5, 431.5}, Down: []geometry.Length{68.5, 249.5, 431.5}, Start: 249.5}},
		// Five down on 504: 25 to 479; the first row is the middle one, 207 to 297.
		{"print on the centre", job.CentreOut, rectItem(500, 504, 25), TapeLines{Across: []geometry.Length{68.5, 431.5}, Down: []geometry.Length{25, 297, 479}, Start: 297}},
		// Row by row begins with the near row, whose far edge faces the centre.
		{"rows", job.RowByRow, rectItem(500, 500, 25), TapeLines{Across: []geometry.Length{68.5, 431.5}, Down: []geometry.Length{68.5, 341.5, 431.5}, Start: 341.5}},
		{"one row", job.CentreOut, rectItem(500, 140, 25), TapeLines{Across: []geometry.Length{68.5, 431.5}, Down: []geometry.Length{25, 115}, Start: 115}},
		{"drum", job.CentreOut, drumItem(500, 140, 25), TapeLines{Across: nil, Down: []geometry.Length{25, 115}, Start: 115}},
	} {
		pass := newPass(rectBlock(90, 90), "straight", 1)
		pass.Order = c.order
		got := planned(t, c.item, pass).Tape
		if d := cmp.Diff(c.want, *got, cmp.Comparer(near)); d != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, d)
		}
	}
}
