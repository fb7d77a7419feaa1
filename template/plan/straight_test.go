package plan

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// TestStraightByHand has cases worked with pencil and paper from the formulas of the straight
// repeat: n = floor((A + g) / p), an odd n puts a print on the centre line, the border left is
// (A - n p + g) / 2 and the border asked.
func TestStraightByHand(t *testing.T) {
	edges := func(top, right, bottom, left geometry.Length) geometry.Edges {
		return geometry.Edges{Top: top, Right: right, Bottom: bottom, Left: left}
	}
	cases := []struct {
		name          string
		item          *job.Item
		block         *job.Block
		gaps          job.Gaps
		columns, rows int
		across, down  job.Centring
		border        geometry.Edges
		gap           job.Spacing
	}{
		// 450 printable: floor(451 / 91) = 4, the joint on the centre, (450 - 363) / 2 = 43.5 left.
		{"cushion", rectItem(500, 500, 25), rectBlock(90, 90), evenGaps(1, 1), 4, 4, job.OnJoint, job.OnJoint, edges(68.5, 68.5, 68.5, 68.5), job.Spacing{Across: 1, Down: 1}},
		// 4 x 100 + 3 x 1 fits in 403 exactly; 403.2 down leaves 0.1 above and below.
		{"exact", rectItem(423, 423.2, 10), rectBlock(100, 100), evenGaps(1, 1), 4, 4, job.OnJoint, job.OnJoint, edges(10.1, 10, 10.1, 10), job.Spacing{Across: 1, Down: 1}},
		// A hundredth short: 3.
		{"just too narrow", rectItem(422.99, 423, 10), rectBlock(100, 100), evenGaps(1, 1), 3, 4, job.OnPrint, job.OnJoint, edges(10, 60.495, 10, 60.495), job.Spacing{Across: 1, Down: 1}},
		// 300 x 80: 5 of 60 touch in 300; down 2 of 40.
		{"touching", rectItem(300, 80, 0), rectBlock(60, 40), evenGaps(0, 0), 5, 2, job.OnPrint, job.OnJoint, edges(0, 0, 0, 0), job.Spacing{Across: 0, Down: 0}},
		// Lap 0.5: 310 wide: floor((310 - 0.5) / 59.5) = 5, 5 x 59.5 + 0.5 = 298; 1160 down:
		// floor(1159.5 / 39.5) = 29, 29 x 39.5 + 0.5 = 1146.
		{"lapping", rectItem(350, 1200, 20), rectBlock(60, 40), evenGaps(-0.5, -0.5), 5, 29, job.OnPrint, job.OnPrint, edges(27, 26, 27, 26), job.Spacing{Across: -0.5, Down: -0.5}},
		// 450: 4 with gap 1; the 90 left over 3 gaps would be 30, the range allows 4:
		// (450 - 372) / 2 = 39.
		{"range ends", rectItem(500, 500, 25), rectBlock(90, 90), evenGaps(1, 4), 4, 4, job.OnJoint, job.OnJoint, edges(64, 64, 64, 64), job.Spacing{Across: 4, Down: 4}},
		// 450 and 110: 4 x 110 = 440, 10 left over 3 gaps: 3 1/3, within the range; border as asked.
		{"range reaches the border", rectItem(500, 500, 25), rectBlock(110, 110), evenGaps(1, 4), 4, 4, job.OnJoint, job.OnJoint, edges(25, 25, 25, 25), job.Spacing{Across: 10.0 / 3, Down: 10.0 / 3}},
		// One print across keeps the least gap.
		{"range, one print", rectItem(200, 500, 25), rectBlock(110, 110), evenGaps(1, 4), 1, 4, job.OnPrint, job.OnJoint, edges(25, 45, 25, 45), job.Spacing{Across: 1, Down: 10.0 / 3}},
		// Borders 38.1, 25.4, 25.4, 25.4 on 381 x 419.1 (15 x 16 1/2 in), block 63.5 x 76.2, gap
		// 1.5875 (1/16 in): across 330.2: floor(331.7875 / 65.0875) = 5, 5 x 65.0875 - 1.5875 =
		// 323.85, 3.175 left; down 355.6: floor(357.1875 / 77.7875) = 4, 309.5625, 23.01875 left.
		{"unequal borders, inches", func() *job.Item {
			i := rectItem(381, 419.1, 0)
			i.Border = edges(38.1, 25.4, 25.4, 25.4)
			return i
		}(), rectBlock(63.5, 76.2), evenGaps(1.5875, 1.5875), 5, 4, job.OnPrint, job.OnJoint, edges(61.11875, 28.575, 48.41875, 28.575), job.Spacing{Across: 1.5875, Down: 1.5875}},
		// Gaps that differ: across floor(402 / 92) = 4; down floor(405 / 95) = 4.
		{"gaps differ", rectItem(400, 400, 0), rectBlock(90, 90), job.Gaps{Across: job.Gap{Least: 2, Most: 2}, Down: job.Gap{Least: 5, Most: 5}}, 4, 4, job.OnJoint, job.OnJoint, edges(12.5, 17, 12.5, 17), job.Spacing{Across: 2, Down: 5}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := newPass(c.block, "straight", 0)
			p.Gap = c.gaps
			plan := planned(t, c.item, p)
			got := plan.Choice()
			if got.Columns != c.columns || got.Rows != c.rows || got.Count != c.columns*c.rows || len(plan.Prints) != got.Count {
				t.Errorf("%d x %d = %d, %d prints; want %d x %d", got.Columns, got.Rows, got.Count, len(plan.Prints), c.columns, c.rows)
			}
			if got.Across != c.across || got.Down != c.down {
				t.Errorf("on the centre: %s across, %s down; want %s, %s", got.Across, got.Down, c.across, c.down)
			}
			if !nearEdges(got.Border, c.border) {
				t.Errorf("border %v, want %v", got.Border, c.border)
			}
			if !near(got.Gap.Across, c.gap.Across) || !near(got.Gap.Down, c.gap.Down) {
				t.Errorf("gap %v, want %v", got.Gap, c.gap)
			}
			if !near(got.Pitch.Across, c.gap.Across+c.block.Size.W) || !near(got.Pitch.Down, c.gap.Down+c.block.Size.H) {
				t.Errorf("pitch %v does not go with face %v and gap %v", got.Pitch, c.block.Size, c.gap)
			}
			if len(plan.Choices) != 4 {
				t.Errorf("%d ways of centring are told, want 4", len(plan.Choices))
			}
		})
	}
}

// TestJointGivesFour: common practice, no published source: the joint on the centre gives four
// prints across where a print there gives three.
func TestJointGivesFour(t *testing.T) {
	plan := planned(t, rectItem(430, 430, 25), newPass(rectBlock(90, 90), "straight", 1))
	for _, c := range plan.Choices {
		want := map[job.Centring]int{job.OnPrint: 3, job.OnJoint: 4}
		if c.Columns != want[c.Across] || c.Rows != want[c.Down] {
			t.Errorf("%s across, %s down: %d x %d", c.Across, c.Down, c.Columns, c.Rows)
		}
	}
	if c := plan.Choice(); c.Across != job.OnJoint || c.Down != job.OnJoint || c.Count != 16 {
		t.Errorf("taken: %+v", c)
	}
}

// TestCentringAsAsked forces what sits on the centre lines.
func TestCentringAsAsked(t *testing.T) {
	p := newPass(rectBlock(90, 90), "straight", 1)
	p.CentreAcross = job.OnPrint
	c := planned(t, rectItem(430, 430, 25), p).Choice()
	if c.Across != job.OnPrint || c.Down != job.OnJoint || c.Columns != 3 || c.Rows != 4 {
		t.Errorf("print across: %+v", c)
	}
	// 380 less 3 x 90 and 2 x 1: 108, 54 a side.
	if !near(c.Border.Left, 25+54) {
		t.Errorf("border %v", c.Border)
	}
	p.CentreAcross = job.OnJoint
	_, err := tryPlan(rectItem(150, 430, 25), job.RightHand, p)
	if err == nil {
		t.Fatal("a joint on the centre of a cloth one print wide is taken")
	}
	want := `item "floor cushion", pass "straight": no print fits with the centre lines as asked; write centre-across = "print" and centre-down = "joint"`
	if err.Error() != want {
		t.Errorf("%q, want %q", err, want)
	}
}

// TestStraightAgainstEveryShift lays rows of prints at every shift that matters on a room and
// counts: no shift, print or joint on the centre or any other, holds more than is reported.
func TestStraightAgainstEveryShift(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	pick := func(low, high int) geometry.Length { return geometry.Length(low+random.IntN(high-low+1)) / 4 }
	for range 300 {
		border := pick(0, 100)
		w, h := pick(40, 400), pick(40, 400)
		item := rectItem(w+2*border+pick(0, 1600), h+2*border+pick(0, 1600), border)
		gap := job.Gaps{Across: job.Gap{Least: pick(-4, 20), Most: 0}, Down: job.Gap{Least: pick(-4, 20), Most: 0}}
		gap.Across.Most, gap.Down.Most = gap.Across.Least+pick(0, 12), gap.Down.Least+pick(0, 12)
		pass := newPass(rectBlock(w, h), "straight", 0)
		pass.Gap = gap
		c := planned(t, item, pass).Choice()
		most := func(room, face, gap geometry.Length) int {
			best := 0
			for first := geometry.Length(0); first < face+gap; first += 0.125 {
				n := 0
				for x := first; x+face <= room+1e-6; x += face + gap {
					n++
				}
				best = max(best, n)
			}
			return best
		}
		if n := most(item.Size.W-2*border, w, gap.Across.Least); n != c.Columns {
			t.Fatalf("item %v, border %v, block %v x %v, gap %v: %d across, by hand %d", item.Size, border, w, h, gap, c.Columns, n)
		}
		if n := most(item.Size.H-2*border, h, gap.Down.Least); n != c.Rows {
			t.Fatalf("item %v, border %v, block %v x %v, gap %v: %d down, by hand %d", item.Size, border, w, h, gap, c.Rows, n)
		}
		if c.Border.Least() < border-geometry.Tolerance {
			t.Fatalf("border %v is below the one asked, %v", c.Border, border)
		}
		for _, g := range []struct {
			is   geometry.Length
			ask  job.Gap
			many bool
			left geometry.Length
		}{{c.Gap.Across, gap.Across, c.Columns > 1, c.Border.Left}, {c.Gap.Down, gap.Down, c.Rows > 1, c.Border.Top}} {
			if g.is < g.ask.Least || g.is > g.ask.Most {
				t.Fatalf("gap %v is out of its range %v", g.is, g.ask)
			}
			// The gap is as wide as it can be: at its most, or the border is as asked.
			if g.many && g.is < g.ask.Most-1e-9 && g.left > border+1e-9 {
				t.Fatalf("gap %v of %v leaves a border of %v, asked %v", g.is, g.ask, g.left, border)
			}
		}
	}
}
