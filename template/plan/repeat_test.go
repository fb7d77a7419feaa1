package plan

import (
	"slices"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// TestEveryRepeat: each repeat and each shape has its line, and each repeat can be set out on
// each shape that the job file lets it on.
func TestEveryRepeat(t *testing.T) {
	items := map[job.Shape]*job.Item{
		job.Rectangle: rectItem(500, 500, 10), job.Round: roundItem(500, 10), job.Outline: rectItem(500, 500, 10),
		job.FourSided: fourSidedItem(t, [4]geometry.Length{500, 503, 499, 498}, 706, geometry.EvenEdges(10)),
		job.Drum:      drumItem(900, 300, 10), job.Cone: coneItem(200, 400, 300, 10),
	}
	for _, shape := range job.Shapes() {
		item := items[shape]
		if item == nil {
			t.Fatalf("no %s to try repeats on", shape)
		}
		for _, r := range job.Repeats() {
			may := slices.Contains(job.RepeatsOn(shape), r)
			if repeats()[r] == nil {
				t.Errorf("%s has no line in the table of repeats", r)
			}
			if !may {
				continue
			}
			least := map[job.Repeat]int{job.One: 1, job.Corners: 4, job.Placed: 1}[r]
			if least == 0 {
				least = 10
			}
			pass := newPass(roundBlock(40), r, 2)
			pass.Places = []job.Place{{At: newArea(item).Centre()}}
			if n := len(planned(t, item, pass).Prints); n < least {
				t.Errorf("%s on a %s has %d prints", r, shape, n)
			}
		}
	}
}
