package plan

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// TestServesByHand: five prints of 90 with gaps of 1 span 454; with borders of 25 the guide
// serves from 504 up to 595, where 454 + 91 + 50 takes a sixth.
func TestServesByHand(t *testing.T) {
	plan := planned(t, rectItem(550, 504, 25), newPass(rectBlock(90, 90), "straight", 1))
	for _, s := range []*Serves{plan.ServesAcross, plan.ServesDown} {
		if !near(s.Least, 504) || !near(s.Below, 595) {
			t.Errorf("serves %v", *s)
		}
	}
}

// TestNearMissesByHand: 450 printable, 4 prints of 90 with gaps of 1. Five take 454: 4 more
// cloth, 2 less border on both sides, 1 less gap in each of four, 0.8 less block.
func TestNearMissesByHand(t *testing.T) {
	item := rectItem(500, 500, 25)
	item.Hem = 12
	plan := planned(t, item, newPass(rectBlock(90, 90), "straight", 1))
	if len(plan.NearMisses) != 2 || plan.NearMisses[0].Down || !plan.NearMisses[1].Down {
		t.Fatalf("near misses %+v", plan.NearMisses)
	}
	for _, m := range plan.NearMisses {
		if m.Count != 5 || m.Prints != 20 || !near(*m.Cloth, 4) || !near(*m.Border, 2) || !near(*m.Gap, 1) || !near(*m.Block, 0.8) {
			t.Errorf("near miss %+v", m)
		}
	}
	// The hem holds the border up.
	item.Hem = 24
	if m := planned(t, item, newPass(rectBlock(90, 90), "straight", 1)).NearMisses[0]; m.Border != nil {
		t.Errorf("a border below the hem is proposed: %v", *m.Border)
	}
	// Five of 91 touching take 455: no gap less than 1 does it. A lap may grow: five of 90.5
	// take 0.625 of lap, 0.125 more than 0.5.
	if m := planned(t, item, newPass(rectBlock(91, 91), "straight", 1)).NearMisses[0]; m.Gap != nil {
		t.Errorf("a gap below nothing is proposed: %v", *m.Gap)
	}
	if m := planned(t, item, newPass(rectBlock(90.5, 90.5), "straight", -0.5)).NearMisses[0]; !near(*m.Gap, 0.125) {
		t.Errorf("a lap more by %v is proposed", *m.Gap)
	}
}

// changes makes the changes that near misses name.
type changes struct {
	item *job.Item
	pass *job.Pass
}

func (c changes) with(m NearMiss, kind string, d geometry.Length) (*job.Item, *job.Pass) {
	item, pass, block := *c.item, *c.pass, *c.pass.Block
	switch size := &item.Size; {
	case kind == "cloth" && m.Down:
		size.H += d
	case kind == "cloth":
		size.W += d
	case kind == "border" && m.Down:
		item.Border.Top, item.Border.Bottom = item.Border.Top-d, item.Border.Bottom-d
	case kind == "border":
		item.Border.Left, item.Border.Right = item.Border.Left-d, item.Border.Right-d
	case kind == "gap" && pass.Repeat == "honeycomb":
		pass.Gap = evenGaps(pass.Gap.Across.Least-d, pass.Gap.Across.Least-d)
	case kind == "gap" && m.Down:
		pass.Gap.Down.Least -= d
	case kind == "gap":
		pass.Gap.Across.Least -= d
	case block.Shape == "round":
		block = *roundBlock(block.Size.W - d)
	case m.Down:
		block = *rectBlock(block.Size.W, block.Size.H-d)
	default:
		block = *rectBlock(block.Size.W-d, block.Size.H)
	}
	item.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, item.Size))
	pass.Block = &block
	return &item, &pass
}

// TestNearMissesDone makes every change that is named and plans anew: as much as is said gives
// more prints, a little less does not.
func TestNearMissesDone(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 5))
	repeats := []job.Repeat{"straight", "straight", "brick", "half-drop", "honeycomb"}
	kinds := map[string]int{}
	for range 120 {
		pick := func(low, high int) geometry.Length { return geometry.Length(low+random.IntN(high-low+1)) / 2 }
		pass := newPass(rectBlock(pick(40, 160), pick(40, 160)), repeats[random.IntN(len(repeats))], pick(0, 6))
		if pass.Repeat == "honeycomb" {
			pass.Block = roundBlock(pick(40, 160))
		}
		pass.Step = []float64{0.5, 1.0 / 3, 0.25, 0.4}[random.IntN(4)]
		pass.Gap.Across.Most += pick(0, 4)
		pass.Gap.Down.Most = pass.Gap.Across.Most
		if random.IntN(3) == 0 {
			pass.CentreAcross = []job.Centring{job.OnPrint, job.OnJoint}[random.IntN(2)]
		}
		item := rectItem(pick(400, 1200), pick(400, 1200), pick(20, 80))
		item.Hem = 10
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			continue
		}
		plan := ip.Passes[0]
		for _, m := range plan.NearMisses {
			for kind, d := range map[string]*geometry.Length{"cloth": m.Cloth, "border": m.Border, "gap": m.Gap, "block": m.Block} {
				if d == nil {
					continue
				}
				kinds[kind]++
				c := changes{item, pass}
				if got := countAfter(t, c, m, kind, *d); got <= plan.Choice().Count {
					t.Fatalf("%s %v, %s less or more by %v (down %v) gives %d prints, there were %d", pass.Repeat, pass.Block.Size, kind, *d, m.Down, got, plan.Choice().Count)
				}
				if *d < 1e-4 {
					continue
				}
				if got := countAfter(t, c, m, kind, *d-1e-5); got > plan.Choice().Count {
					t.Fatalf("%s %v, %s changed by less than %v (down %v) gives %d prints already", pass.Repeat, pass.Block.Size, kind, *d, m.Down, got)
				}
			}
		}
	}
	for _, kind := range []string{"cloth", "border", "gap", "block"} {
		if kinds[kind] < 25 {
			t.Errorf("only %d changes of the %s were tried", kinds[kind], kind)
		}
	}
}

func countAfter(t *testing.T, c changes, m NearMiss, kind string, d geometry.Length) int {
	item, pass := c.with(m, kind, d)
	return planned(t, item, pass).Choice().Count
}

// TestServesAll plans cloths of sizes in and out of the range a guide serves: in it there are
// as many prints, just out of it more, or they do not fit.
func TestServesAll(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 2))
	for range 100 {
		pick := func(low, high int) geometry.Length { return geometry.Length(low+random.IntN(high-low+1)) / 2 }
		pass := newPass(rectBlock(pick(40, 160), pick(40, 160)), []job.Repeat{"straight", "brick", "half-drop"}[random.IntN(3)], pick(0, 6))
		pass.Step = []float64{0.5, 1.0 / 3}[random.IntN(2)]
		item := rectItem(pick(400, 1200), pick(400, 1200), pick(20, 80))
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			continue
		}
		plan := ip.Passes[0]
		n := plan.Choice().Count
		count := func(w, h geometry.Length) int {
			return planned(t, rectItem(w, h, item.Border.Top), pass).Choice().Count
		}
		a, d := plan.ServesAcross, plan.ServesDown
		if a.Least > item.Size.W+1e-6 || a.Below <= item.Size.W || d.Least > item.Size.H+1e-6 || d.Below <= item.Size.H {
			t.Fatalf("the guide for %v serves %v and %v", item.Size, *a, *d)
		}
		for _, w := range []geometry.Length{a.Least, (a.Least + a.Below) / 2, a.Below - 1e-4} {
			if got := count(w, item.Size.H); got != n {
				t.Fatalf("%s: %d prints at %v wide, %d at %v, in %v", pass.Repeat, n, item.Size.W, got, w, *a)
			}
		}
		if got := count(a.Below, item.Size.H); got <= n {
			t.Fatalf("%s: %d prints at %v wide, %d at %v, where more should fit", pass.Repeat, n, item.Size.W, got, a.Below)
		}
		if got := count(item.Size.W, d.Below); got <= n {
			t.Fatalf("%s: %d prints at %v high, %d at %v, where more should fit", pass.Repeat, n, item.Size.H, got, d.Below)
		}
		if got := count(item.Size.W, d.Least); got != n {
			t.Fatalf("%s: %d prints at %v high, %d at the least, %v", pass.Repeat, n, item.Size.H, got, d.Least)
		}
	}
}
