package plan

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

func frameWith(b, corner *job.Block, gap geometry.Length) *job.Pass {
	pass := newPass(b, job.Frame, gap)
	pass.Corner = corner
	return pass
}

// TestCorneredByHand: 480 x 380 printable, sides 60 x 40, corners 50 x 50, gap 1. Across: 480 - 100 =
// 380, floor(379 / 61) = 6, gap (380 - 360) / 7 = 20/7. Down: 280, floor(279 / 61) = 4, gap
// (280 - 240) / 5 = 8. 4 + 2 x 6 + 2 x 4 = 24.
func TestCorneredByHand(t *testing.T) {
	corner := rectBlock(50, 50)
	item := rectItem(500, 400, 10)
	ip, err := tryPlan(item, job.RightHand, frameWith(rectBlock(60, 40), corner, 1))
	if err != nil {
		t.Fatal(err)
	}
	p := ip.Passes[0]
	want := []Run{{"top", 6, 20.0 / 7}, {"right", 4, 8}, {"bottom", 6, 20.0 / 7}, {"left", 4, 8}, {"corners", 4, 0}}
	if d := cmp.Diff(want, p.Choice().Runs, cmp.Comparer(near)); d != "" || len(p.Prints) != 24 || p.Choice().Count != 24 {
		t.Errorf("%d prints, runs (-want +got):\n%s", len(p.Prints), d)
	}
	if p.PrintsOf(corner) != 4 || len(p.Blocks()) != 2 || p.Blocks()[0] != corner {
		t.Errorf("%d of the corners, of %d blocks", p.PrintsOf(corner), len(p.Blocks()))
	}
	// Round, from the far left corner: it, six, the far right one, four.
	type at struct {
		x, y geometry.Length
		turn geometry.Angle
	}
	for _, c := range []struct {
		hand job.Hand
		want map[int]at
	}{
		{job.RightHand, map[int]at{1: {35, 35, 0}, 2: {60 + 20.0/7 + 30, 30, 0}, 7: {440 - 20.0/7 - 30, 30, 0}, 8: {465, 35, 90}, 9: {470, 60 + 8 + 30, 90},
			13: {465, 365, 180}, 20: {35, 365, 270}, 24: {30, 60 + 8 + 30, 270}}},
		{job.LeftHand, map[int]at{1: {465, 35, 90}, 2: {440 - 20.0/7 - 30, 30, 0}, 7: {60 + 20.0/7 + 30, 30, 0}, 8: {35, 35, 0}, 9: {30, 60 + 8 + 30, 270},
			13: {35, 365, 270}, 20: {465, 365, 180}, 24: {470, 60 + 8 + 30, 90}}},
	} {
		ip, err := tryPlan(item, c.hand, frameWith(rectBlock(60, 40), corner, 1))
		if err != nil {
			t.Fatal(err)
		}
		for n, want := range c.want {
			q := ip.Passes[0].Prints[n-1]
			if q.Number != n || q.Origin.Distance(geometry.Pt(want.x, want.y)) > 1e-9 || q.Turn != want.turn {
				t.Errorf("%s hand, print %d: %v turned %v, want %v", c.hand, n, q.Origin, q.Turn, want)
			}
		}
	}
	in := frameWith(rectBlock(60, 40), corner, 1)
	in.Tops = job.TopsIn
	if q := planned(t, item, in).Prints; q[0].Turn != 180 || q[7].Turn != 270 {
		t.Errorf("tops in: turned %v and %v", q[0].Turn, q[7].Turn)
	}
}

// TestCornered: at random, no print leaves the area, none is nearer to another than the gap, every
// corner of the area is taken, one more on a side would be too many, and what one more is said to
// take gives it. Where prints lie is judged by github.com/paulmach/orb.
func TestCornered(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 2))
	done := 0
	for range 300 {
		pick := func(low, high int) geometry.Length { return geometry.Length(low*4+random.IntN((high-low)*4)) / 4 }
		item := rectItem(pick(250, 600), pick(250, 600), pick(0, 40))
		block, corner := rectBlock(pick(20, 90), pick(20, 60)), rectBlock(pick(20, 80), pick(20, 80))
		if random.IntN(3) == 0 {
			corner = roundBlock(pick(30, 80))
		}
		pass := frameWith(block, corner, pick(0, 5))
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			if !strings.Contains(err.Error(), "; write ") {
				t.Errorf("no advice: %v", err)
			}
			continue
		}
		done++
		p := ip.Passes[0]
		var shapes []oracle.Shape
		corners := 0
		for _, q := range p.Prints {
			s := oracle.OutlineAt(q.Block, q.Origin, q.Turn)
			if !s.Fits(item, oracle.Slack) {
				t.Fatalf("%v: print %d at %v is not on the area", pass, q.Number, q.Origin)
			}
			for i, u := range shapes {
				if d := s.Plain(u); d < float64(pass.Gap.Across.Least)-oracle.Slack {
					t.Fatalf("block %v, corner %v, gap %v on %v: prints %d and %d are %v apart", block.Size, corner.Size, pass.Gap.Across.Least, item.Size, i+1, q.Number, d)
				}
			}
			shapes = append(shapes, s)
			if q.Block == corner {
				corners++
			}
		}
		taken, g, w := corner.Size.W+corner.Size.H, pass.Gap.Across.Least, block.Size.W
		n := math.Max(0, math.Floor(float64((item.Size.W-2*item.Border.Top-taken-g)/(w+g))+1e-9))
		m := math.Max(0, math.Floor(float64((item.Size.H-2*item.Border.Top-taken-g)/(w+g))+1e-9))
		if corners != 4 || len(p.Prints) != int(4+2*n+2*m) || !nearEdges(p.Choice().Border, item.Border) {
			t.Fatalf("%v: %d prints, %d in corners, border %v; want 4 + 2 x %v + 2 x %v", pass, len(p.Prints), corners, p.Choice().Border, n, m)
		}
		if done > 25 {
			continue
		}
		for _, miss := range p.NearMisses() {
			if miss.Cloth == nil {
				t.Errorf("no more cloth gives another print")
				continue
			}
			wider := *item
			size := item.Size
			if miss.Down {
				size.H += *miss.Cloth
			} else {
				size.W += *miss.Cloth
			}
			wider.Size, wider.Outline = size, geometry.RectOutline(geometry.RectAt(geometry.Point{}, size))
			if got := planned(t, &wider, pass); len(got.Prints) <= len(p.Prints) {
				t.Errorf("%v more cloth: %d prints, as before %d", *miss.Cloth, len(got.Prints), len(p.Prints))
			}
		}
	}
	if done < 100 {
		t.Errorf("only %d frames", done)
	}
}

// TestCorneredField: a field after the frame keeps inside its corner blocks too.
func TestCorneredField(t *testing.T) {
	item := rectItem(500, 400, 10)
	frame, field := frameWith(rectBlock(60, 40), rectBlock(55, 55), 1), newPass(rectBlock(30, 30), job.Straight, 2)
	ip, err := tryPlan(item, job.RightHand, frame, field)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range ip.Passes[1].Prints {
		for _, f := range ip.Passes[0].Prints {
			if d := oracle.OutlineAt(q.Block, q.Origin, q.Turn).Plain(oracle.OutlineAt(f.Block, f.Origin, f.Turn)); d < 2-oracle.Slack {
				t.Fatalf("print %d is %v from print %d of the frame", q.Number, d, f.Number)
			}
		}
	}
	if n, first := len(ip.Passes[0].Prints), ip.Passes[1].Prints[0].Number; first != n+1 {
		t.Errorf("the field begins with %d after %d prints of the frame", first, n)
	}
}

// TestCornersTooSmall: the sides meet in the corners where the blocks there are smaller than the
// frame is deep; one as large as is said keeps them apart.
func TestCornersTooSmall(t *testing.T) {
	item := rectItem(500, 400, 10)
	_, err := tryPlan(item, job.RightHand, frameWith(rectBlock(60, 50), rectBlock(20, 20), 1))
	if err == nil || !strings.Contains(err.Error(), "write a block of 50 × 50 mm or more for the corners") {
		t.Fatalf("%v", err)
	}
	planned(t, item, frameWith(rectBlock(60, 50), rectBlock(50, 50), 1))
	if _, err := tryPlan(item, job.RightHand, frameWith(rectBlock(60, 50), rectBlock(200, 200), 1)); err == nil || !strings.Contains(err.Error(), "have no room in the corners of one side") {
		t.Errorf("%v", err)
	}
	// Corners alone, where nothing fits between them.
	if p := planned(t, rectItem(200, 200, 10), frameWith(rectBlock(60, 50), rectBlock(70, 70), 1)); len(p.Prints) != 4 {
		t.Errorf("%d prints", len(p.Prints))
	}
}

// TestCornersPaint: paint and prints are counted by block.
func TestCornersPaint(t *testing.T) {
	p := planOf(t, `
[printing]
paint-cover = "100 ml/m2"
[[block]]
name = "wave"
print = "60 x 40 mm"
inked = 0.5
[[block]]
name = "acorn"
print = "50 x 50 mm"
inked = 0.4
[[item]]
name = "cushion"
size = "500 x 400 mm"
border = "10 mm"
quantity = 3
  [[item.pass]]
  block = "wave"
  repeat = "frame"
  corner = "acorn"
  gap = "1 mm"
  colours = ["moss"]
`)
	totals := NewTotals(p)
	// 20 waves of 2400 mm2 and 4 acorns of 2500 mm2 on each of three.
	want := []Total{{"acorn", "moss", 12, 12 * 2500e-6 * 0.4 * 100}, {"wave", "moss", 60, 60 * 2400e-6 * 0.5 * 100}}
	if d := cmp.Diff(want, totals.Rows, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })); d != "" || totals.Prints != 72 {
		t.Errorf("%d prints (-want +got):\n%s", totals.Prints, d)
	}
}
