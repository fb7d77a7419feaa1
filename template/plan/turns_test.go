package plan

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"
)

// TestPlacesOfMixedTurns: blocks that are not square, lying both ways round, stand in places as
// large as the largest turned face, so that no two come nearer than the gap, on flat cloth and
// on shades.
func TestPlacesOfMixedTurns(t *testing.T) {
	// 370 by 360, block 40 x 60, gap 25: places of 60, pitch 85. Across the joint on the centre:
	// floor((370 + 25) / 85) = 4; one more on either side would lie from 30 before the edge on.
	// Down the print on the centre: 5 rows, as a print on its side, 40 high, ends at
	// 2 x 85 + 20 = 190 from the centre, past 180: floor((360 + 25) / 85) = 4.
	pass := newPass(rectBlock(40, 60), "straight", 25)
	pass.Turns = [][]int{{0, 90}}
	c := planned(t, rectItem(410, 400, 20), pass).Choice()
	if c.Columns != 4 || c.Rows != 4 || c.Count != 16 || !near(c.Pitch.Across, 85) || !near(c.Pitch.Down, 85) {
		t.Errorf("%+v", c)
	}
	// Round a drum of 850: 10 of them.
	if c := planned(t, drumItem(850, 400, 20), pass).Choice(); c.Columns != 10 || c.Rows != 4 || !near(c.Gap.Across, 25) {
		t.Errorf("drum: %+v", c)
	}
	random := rand.New(rand.NewPCG(1, 2))
	tried := map[job.Shape]int{}
	for range 400 {
		pick := func(low, high int) geometry.Length { return geometry.Length(low*2+random.IntN((high-low)*2)) / 2 }
		item := []*job.Item{rectItem(pick(200, 400), pick(200, 400), pick(0, 20)), roundItem(pick(250, 400), 10), drumItem(pick(300, 700), pick(150, 300), 10), coneItem(pick(80, 120), pick(150, 220), pick(150, 250), 10)}[random.IntN(4)]
		repeat := []job.Repeat{"straight", "brick", "half-drop", "diagonal"}[random.IntN(4)]
		if repeat == "diagonal" && item.Shade.Height > 0 {
			continue
		}
		pass := newPass([]*job.Block{rectBlock(pick(10, 50), pick(10, 50)), leafBlock(pick(10, 50), pick(10, 50))}[random.IntN(2)], repeat, pick(0, 12))
		pass.Step = []float64{0.5, 1.0 / 3}[random.IntN(2)]
		pass.Turns = [][][]int{{{0, 90}}, {{0, 90}, {90, 0}}, {{0}, {270}}, {{0, 90}, {270, 180}}, {{0, 90, 180}}}[random.IntN(5)]
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			continue
		}
		tried[item.Shape]++
		r := randomJob{random, item, pass}
		if item.Shape != "cone" {
			r.checkPrints(t, ip.Passes[0])
			continue
		}
		prints := ip.Passes[0].Prints
		for i, p := range prints {
			for _, q := range prints[:i] {
				if d := oracle.OutlineAt(pass.Block, p.Origin, p.Turn).Apart(oracle.OutlineAt(pass.Block, q.Origin, q.Turn)); d < float64(pass.Gap.Across.Least)-oracle.Slack {
					t.Fatalf("%v: prints %v apart", r, d)
				}
			}
		}
	}
	for _, shape := range []job.Shape{"rectangle", "round", "drum", "cone"} {
		if tried[shape] < 20 {
			t.Errorf("only %d plans on %s", tried[shape], shape)
		}
	}
}

// TestTouchedByAZone: an L of 40 with arms of 20 on 142 x 142, border 10, gap 1: 122 to print
// on, 3 by 3 with a pitch of 41. A zone of 20 x 10 at 71 x 75 lies in the notch of the middle
// one, between 71 and 91 both ways, and touches its upright arm: that costs no print. A
// hundredth of a millimetre farther left it does.
func TestTouchedByAZone(t *testing.T) {
	ell := geometry.Polygon{{X: -20, Y: -20}, {X: 20, Y: -20}, {X: 20, Y: 0}, {X: 0, Y: 0}, {X: 0, Y: 20}, {X: -20, Y: 20}}
	block := &job.Block{Name: "ell", Shape: "outline", Size: geometry.Size{W: 40, H: 40}, Face: geometry.PolygonOutline(ell)}
	for x, want := range map[geometry.Length]int{71: 9, 70.99: 8, 71.01: 9} {
		item := rectItem(142, 142, 10)
		item.Zones = []job.Zone{{Name: "button", Rect: geometry.RectAt(geometry.Pt(x, 75), geometry.Size{W: 20, H: 10})}}
		if got := planned(t, item, newPass(block, "straight", 1)).Choice().Count; got != want {
			t.Errorf("zone at %v x 75: %d prints, want %d", x, got, want)
		}
	}
}
