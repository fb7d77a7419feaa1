package plan

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// TestFrameByHand: 480 x 380 printable, block 60 x 60, gap 1: floor(481 / 61) = 7 across, gap
// opened to (480 - 420) / 6 = 10; down, corners shared, floor(381 / 61) = 6, gap
// (380 - 360) / 5 = 4, so 4 between the corners. 7 + 4 + 7 + 4 = 22.
func TestFrameByHand(t *testing.T) {
	plan := planned(t, rectItem(500, 400, 10), newPass(rectBlock(60, 60), "frame", 1))
	c := plan.Choice()
	want := []Run{{"top", 7, 10}, {"right", 4, 4}, {"bottom", 7, 10}, {"left", 4, 4}}
	if d := cmp.Diff(want, c.Runs, cmp.Comparer(near)); d != "" || c.Count != 22 {
		t.Errorf("%d prints, runs (-want +got):\n%s", c.Count, d)
	}
	if !nearEdges(c.Border, geometry.EvenEdges(10)) {
		t.Errorf("border %v", c.Border)
	}
	// Clockwise from the far left corner, tops out.
	for i, want := range map[int]Site{
		0:  {Origin: geometry.Pt(40, 40), Turn: 0},
		1:  {Origin: geometry.Pt(110, 40), Turn: 0},
		7:  {Origin: geometry.Pt(460, 104), Turn: 90},
		11: {Origin: geometry.Pt(460, 360), Turn: 180},
		18: {Origin: geometry.Pt(40, 296), Turn: 270},
	} {
		if got := plan.Prints[i]; got.Origin.Distance(want.Origin) > 1e-9 || got.Turn != want.Turn {
			t.Errorf("print %d at %v turned by %v, want %v, %v", i+1, got.Origin, got.Turn, want.Origin, want.Turn)
		}
	}
	// Left-handed: anticlockwise from the far right corner, down the left side.
	ip, err := tryPlan(rectItem(500, 400, 10), job.LeftHand, newPass(rectBlock(60, 60), "frame", 1))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range map[int]geometry.Point{0: {X: 460, Y: 40}, 6: {X: 40, Y: 40}, 7: {X: 40, Y: 104}, 11: {X: 40, Y: 360}, 21: {X: 460, Y: 104}} {
		if got := ip.Passes[0].Prints[i].Origin; got.Distance(want) > 1e-9 {
			t.Errorf("left-handed: print %d at %v, want %v", i+1, got, want)
		}
	}
	in := newPass(rectBlock(60, 60), "frame", 1)
	in.Tops = "in"
	if got := planned(t, rectItem(500, 400, 10), in).Prints[0].Turn; got != 180 {
		t.Errorf("tops in: the first is turned by %v", got)
	}
}

// TestFrameSides: only some sides are rows, centred, with the gap as given.
func TestFrameSides(t *testing.T) {
	pass := newPass(rectBlock(60, 40), "frame", 2)
	pass.Sides = job.Sides{"bottom"}
	plan := planned(t, rectItem(500, 400, 10), pass)
	// floor(482 / 62) = 7: 7 x 62 - 2 = 432, 24 left on both sides.
	if len(plan.Prints) != 7 || plan.Prints[0].Origin.Distance(geometry.Pt(436, 370)) > 1e-9 || plan.Prints[6].Origin.Distance(geometry.Pt(64, 370)) > 1e-9 {
		t.Errorf("bottom: %d prints from %v", len(plan.Prints), plan.Prints[0].Origin)
	}
	pass.Sides, pass.Gap = job.Sides{"left", "top"}, evenGaps(2, 5)
	plan = planned(t, rectItem(500, 400, 10), pass)
	// The top opens to 5: 7 x 60 + 6 x 5 = 450. The left stands in 380 - 40 - 2 = 338, from 52:
	// floor(340 / 62) = 5, opened to 5: 320, 9 left: first (lowest) at 390 - 9 - 30.
	want := []Run{{"top", 7, 5}, {"left", 5, 5}}
	if d := cmp.Diff(want, plan.Choice().Runs, cmp.Comparer(near)); d != "" {
		t.Errorf("runs (-want +got):\n%s", d)
	}
	if got := plan.Prints[7].Origin; got.Distance(geometry.Pt(30, 351)) > 1e-9 {
		t.Errorf("the left run begins at %v", got)
	}
}

// TestFrames: at random, no print leaves the area, none is nearer to another than the gap,
// the corners are taken, and one more on a side would be too many.
func TestFrames(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	done := 0
	for range 300 {
		pick := func(low, high int) geometry.Length { return geometry.Length(low*4+random.IntN((high-low)*4)) / 4 }
		item := rectItem(pick(200, 600), pick(200, 600), pick(0, 40))
		pass := newPass([]*job.Block{rectBlock(pick(20, 90), pick(20, 90)), roundBlock(pick(20, 90))}[random.IntN(2)], "frame", pick(0, 5))
		sides := job.Sides{"top", "right", "bottom", "left"}
		if random.IntN(2) == 0 {
			random.Shuffle(4, func(i, j int) { sides[i], sides[j] = sides[j], sides[i] })
			pass.Sides = sides[:1+random.IntN(3)]
		}
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			continue
		}
		done++
		r := randomJob{random, item, pass}
		r.checkPrints(t, ip.Passes[0])
		if len(pass.Sides) > 0 {
			continue
		}
		c, g := ip.Passes[0].Choice(), pass.Gap.Across.Least
		w, h := pass.Block.Size.W, pass.Block.Size.H
		n := math.Floor(float64((item.Size.W-2*item.Border.Top+g)/(w+g)) + 1e-9)
		m := math.Floor(float64((item.Size.H-2*item.Border.Top-2*h-g)/(w+g)) + 1e-9)
		if c.Count != int(2*n+2*m) {
			t.Fatalf("%v: %d prints, want 2 x %v and 2 x %v", r, c.Count, n, m)
		}
		if n > 1 && !nearEdges(c.Border, item.Border) {
			t.Fatalf("%v: border %v", r, c.Border)
		}
	}
	if done < 100 {
		t.Errorf("only %d frames", done)
	}
}

// TestFrameNeedsCorners: a frame with all sides has a print in every corner. On 170 of 200 less
// two borders of 15 one print of 90 fits along the top and no two; what the message says to
// write instead does.
func TestFrameNeedsCorners(t *testing.T) {
	item, pass := rectItem(200, 500, 15), newPass(rectBlock(90, 60), "frame", 1)
	_, err := tryPlan(item, job.RightHand, pass)
	want := `only one print fits along the top, and a frame with all four sides has one in either corner; write a block of at most 84.5 mm wide, or sides = ["top", "bottom"]`
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Fatalf("said: %v", err)
	}
	narrower := newPass(rectBlock(84.5, 60), "frame", 1)
	if runs := planned(t, item, narrower).Choice().Runs; len(runs) != 4 || runs[0].Count != 2 {
		t.Errorf("a block as advised gives %+v", runs)
	}
	pass.Sides = job.Sides{"top", "bottom"}
	if runs := planned(t, item, pass).Choice().Runs; len(runs) != 2 || runs[0].Count != 1 {
		t.Errorf("sides as advised give %+v", runs)
	}
}

// TestFrameCorners: sides that meet share a corner, and it belongs to the top or the bottom: by
// hand, 480 x 380 with a block of 60 x 40 and a gap of 2. The top runs the whole width,
// floor(482 / 62) = 7; a left side below it has 380 - 40 - 2 = 338, floor(340 / 62) = 5; above a
// bottom as well 296, floor(298 / 62) = 4, as a frame with all sides has, where
// floor((380 - 80 - 2) / 62) = 4 with gaps of (300 - 240) / 5 = 12 between the corners.
func TestFrameCorners(t *testing.T) {
	for _, c := range []struct {
		sides job.Sides
		want  []Run
	}{
		{job.Sides{"left"}, []Run{{"left", 6, 2}}},
		{job.Sides{"top", "left"}, []Run{{"top", 7, 2}, {"left", 5, 2}}},
		{job.Sides{"top", "bottom", "left"}, []Run{{"top", 7, 2}, {"bottom", 7, 2}, {"left", 4, 2}}},
		{nil, []Run{{"top", 7, 10}, {"right", 4, 12}, {"bottom", 7, 10}, {"left", 4, 12}}},
	} {
		pass := newPass(rectBlock(60, 40), "frame", 2)
		pass.Sides = c.sides
		plan := planned(t, rectItem(500, 400, 10), pass)
		if d := cmp.Diff(c.want, plan.Choice().Runs, cmp.Comparer(near)); d != "" {
			t.Errorf("%v (-want +got):\n%s", c.sides, d)
		}
		randomJob{nil, rectItem(500, 400, 10), pass}.checkPrints(t, plan)
	}
}

// TestFieldInsideAFrame: by hand, 480 x 480 with a frame of 60 x 40 leaves 400 less a gap on
// either side to the field after it: with gaps of 10 across and 5 down, 380 by 390, room for
// floor(390 / 50) = 7 by floor(395 / 45) = 8 of 40. The gap on each side is that of its own way:
// were they exchanged, 390 by 380 would take floor(400 / 50) = 8 by floor(385 / 45) = 8.
func TestFieldInsideAFrame(t *testing.T) {
	field := newPass(rectBlock(40, 40), "straight", 0)
	field.Gap = job.Gaps{Across: job.Gap{Least: 10, Most: 10}, Down: job.Gap{Least: 5, Most: 5}}
	frame := newPass(rectBlock(60, 40), "frame", 2)
	ip, err := tryPlan(rectItem(500, 500, 10), job.RightHand, frame, field)
	if err != nil {
		t.Fatal(err)
	}
	if c := ip.Passes[1].Choice(); c.Columns != 7 || c.Rows != 8 {
		t.Errorf("%d by %d inside the frame, want 7 by 8", c.Columns, c.Rows)
	}
	// 10 of border, 40 of frame, the gap, and half of what 7 x 50 - 10 = 340 and 8 x 45 - 5 = 355 leave.
	if b := ip.Passes[1].Choice().Border; !nearEdges(b, geometry.Edges{Top: 72.5, Right: 80, Bottom: 72.5, Left: 80}) {
		t.Errorf("border %v", b)
	}
}
