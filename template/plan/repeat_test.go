package plan

import (
	"slices"
	"testing"

	"underlay/template/job"
)

// TestEveryRepeat: each repeat is set out on each shape of item that the job file lets it on,
// and on no other.
func TestEveryRepeat(t *testing.T) {
	items := map[job.Shape]*job.Item{
		job.Rectangle: rectItem(500, 500, 10), job.Round: roundItem(500, 10), job.Outline: rectItem(500, 500, 10),
		job.Drum: drumItem(900, 300, 10), job.Cone: coneItem(200, 400, 300, 10),
	}
	for _, shape := range job.Shapes() {
		item := items[shape]
		if item == nil {
			t.Fatalf("no %s to try repeats on", shape)
		}
		for _, r := range job.Repeats() {
			may := slices.Contains(job.RepeatsOn(shape), r)
			if got := repeatOf(newLayout(newArea(item), newPass(roundBlock(40), r, 2))).ways != nil; may && !got {
				t.Errorf("%s on a %s cannot be set out", r, shape)
			}
			if !may {
				continue
			}
			if n := len(planned(t, item, newPass(roundBlock(40), r, 2)).Prints); n < 10 {
				t.Errorf("%s on a %s has %d prints", r, shape, n)
			}
		}
	}
}
