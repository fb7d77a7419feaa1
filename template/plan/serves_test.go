package plan

import (
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"
)

// TestServesByHand: five prints of 90 with gaps of 1 span 454; with borders of 25 the guide
// serves from 504 up to 595, where 454 + 91 + 50 takes a sixth.
func TestServesByHand(t *testing.T) {
	plan := planned(t, rectItem(550, 504, 25), newPass(rectBlock(90, 90), "straight", 1))
	across, down := plan.Serves()
	for _, s := range []*Serves{across, down} {
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
	if len(plan.NearMisses()) != 2 || plan.NearMisses()[0].Down || !plan.NearMisses()[1].Down {
		t.Fatalf("near misses %+v", plan.NearMisses())
	}
	for _, m := range plan.NearMisses() {
		if m.Count != 5 || m.Prints != 20 || !near(*m.Cloth, 4) || !near(*m.Border, 2) || !near(*m.Gap, 1) || !near(*m.Block, 0.8) {
			t.Errorf("near miss %+v", m)
		}
	}
	// The hem holds the border up.
	item.Hem = 24
	if m := planned(t, item, newPass(rectBlock(90, 90), "straight", 1)).NearMisses()[0]; m.Border != nil {
		t.Errorf("a border below the hem is proposed: %v", *m.Border)
	}
	// Five of 91 touching take 455: no gap less than 1 does it. A lap may grow: five of 90.5
	// take 0.625 of lap, 0.125 more than 0.5.
	if m := planned(t, item, newPass(rectBlock(91, 91), "straight", 1)).NearMisses()[0]; m.Gap != nil {
		t.Errorf("a gap below nothing is proposed: %v", *m.Gap)
	}
	if m := planned(t, item, newPass(rectBlock(90.5, 90.5), "straight", -0.5)).NearMisses()[0]; !near(*m.Gap, 0.125) {
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
	b := &item.Border
	switch round := item.Shape == "round" || item.Shape == "outline"; kind {
	case "cloth":
		item = *c.larger(m.Down, d)
	case "border":
		if m.Down || round {
			b.Top, b.Bottom = b.Top-d, b.Bottom-d
		}
		if !m.Down || round {
			b.Left, b.Right = b.Left-d, b.Right-d
		}
	case "gap":
		one := pass.Repeat == "honeycomb" || pass.Repeat == "rings"
		for g, turn := range map[*job.Gap]bool{&pass.Gap.Across: one || !m.Down, &pass.Gap.Down: one || m.Down} {
			if turn && g.Least == g.Most {
				g.Most -= d
			}
			if turn {
				g.Least -= d
			}
		}
	case "block":
		w, h := block.Size.W-d, block.Size.H-d
		side := pass.Turns.AllAside()
		switch mixed := pass.Turns.Mixed(); {
		case block.Shape == "round":
			block = *roundBlock(w)
		case block.Shape == "hexagon":
			block = *hexBlock(w)
		case mixed:
		case pass.Repeat == "frame" || m.Down == side:
			h = block.Size.H
		default:
			w = block.Size.W
		}
		switch block.Shape {
		case "rectangle":
			block = *rectBlock(w, h)
		case "outline":
			block = *leafBlock(w, h)
		}
	}
	pass.Block = &block
	return &item, &pass
}

// larger is the item d wider or higher.
func (c changes) larger(down bool, d geometry.Length) *job.Item {
	item := *c.item
	across, up := d, geometry.Length(0)
	if down {
		across, up = 0, d
	}
	w, h := item.Size.W+across, item.Size.H+up
	var n *job.Item
	switch item.Shape {
	case "round":
		n = roundItem(item.Size.W+d, 0)
	case "outline":
		var corners []geometry.Point
		for _, p := range item.Outline.Corners() {
			corners = append(corners, geometry.Pt(p.X*w/item.Size.W, p.Y*h/item.Size.H))
		}
		n = outlineItem(0, corners...)
	case "drum":
		n = drumItem(w, h, 0)
	case "cone":
		n = coneItem(item.Shade.Top+across/math.Pi, item.Shade.Bottom+across/math.Pi, item.Shade.Height+up, 0)
	default:
		n = rectItem(w, h, 0)
	}
	n.Border, n.Hem, n.Zones = item.Border, item.Hem, item.Zones
	return n
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
		for _, m := range plan.NearMisses() {
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

// TestEverySize holds what is said of other sizes to what planning them gives, for every repeat,
// shape and turn: with a change as large as is named there are more prints, with a little less
// there are not; the cloth there is lies in what the guide serves; on all of that the prints as
// they are set out lie on the area, and no more would; and beyond it more would, or they do not.
func TestEverySize(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(21, 4))}
	named, served := map[string]int{}, map[string]int{}
	for range 80 {
		r.make()
		r.item.Hem = 0
		switch r.IntN(6) {
		case 0:
			r.item, r.pass = rectItem(r.pick(200, 500), r.pick(200, 500), r.pick(5, 30)), newPass(rectBlock(r.pick(20, 60), r.pick(20, 60)), "frame", r.pick(0, 5))
		case 1:
			r.item, r.pass = roundItem(r.pick(200, 500), r.pick(5, 30)), newPass([]*job.Block{rectBlock(r.pick(20, 60), r.pick(20, 60)), roundBlock(r.pick(20, 60))}[r.IntN(2)], "rings", r.pick(0, 5))
		case 2:
			r.item.Zones = nil
			r.item = coneItem(r.pick(80, 150), r.pick(160, 300), r.pick(150, 250), r.pick(5, 20))
			r.pass = newPass([]*job.Block{rectBlock(r.pick(20, 50), r.pick(20, 50)), roundBlock(r.pick(20, 50))}[r.IntN(2)], []job.Repeat{"straight", "brick", "half-drop"}[r.IntN(3)], r.pick(0, 5))
		case 3:
			if r.pass.Repeat != "honeycomb" {
				r.pass.Turns = [][][]int{{{0, 90}}, {{0, 90}, {90, 0}}, {{0}, {90}}}[r.IntN(3)]
			}
		}
		ip, err := tryPlan(r.item, job.RightHand, r.pass)
		if err != nil {
			continue
		}
		p, c := ip.Passes[0], changes{r.item, r.pass}
		n := p.Choice().Count
		// Where columns, or rows, are told they are what grows: a round block or a hexagon that is
		// smaller one way is so the other way as well.
		grown := func(item *job.Item, pass *job.Pass, m NearMiss) (int, int) {
			ip, err := tryPlan(item, job.RightHand, pass)
			if err != nil {
				return 0, n
			}
			now := ip.Passes[0].Choice()
			switch {
			case m.Count == 0:
				return now.Count, n
			case m.Down:
				return now.Rows, p.Choice().Rows
			}
			return now.Columns, p.Choice().Columns
		}
		count := func(item *job.Item, pass *job.Pass) int {
			got, _ := grown(item, pass, NearMiss{})
			return got
		}
		ranged := r.pass.Gap.Across.Most > r.pass.Gap.Across.Least || r.pass.Gap.Down.Most > r.pass.Gap.Down.Least
		if len(p.NearMisses()) != 2 {
			t.Fatalf("%v: near misses %v, notes %q", r, p.NearMisses(), p.Notes)
		}
		for _, m := range p.NearMisses() {
			for kind, d := range map[string]*geometry.Length{"cloth": m.Cloth, "border": m.Border, "gap": m.Gap, "block": m.Block} {
				if d == nil {
					continue
				}
				named[kind+" "+string(r.pass.Repeat)]++
				item, pass := c.with(m, kind, *d)
				if got, n := grown(item, pass, m); got <= n {
					t.Errorf("%v: %s by %v (down %v) gives %d, there were %d", r, kind, *d, m.Down, got, n)
				}
				item, pass = c.with(m, kind, *d-2.5e-5)
				if got, n := grown(item, pass, m); *d > 1e-4 && !ranged && got > n {
					t.Errorf("%v: %s by less than %v (down %v) gives %d already, there were %d", r, kind, *d, m.Down, got, n)
				}
			}
		}
		wide, high := p.Serves()
		for down, s := range map[bool]*Serves{false: wide, true: high} {
			if s == nil {
				continue
			}
			served[string(r.item.Shape)]++
			now := r.item.Size.W
			if down {
				now = r.item.Size.H
			}
			if s.Least > now || s.Below <= now {
				t.Errorf("%v: serves %v (down %v)", r, *s, down)
				continue
			}
			lies := func(size geometry.Length, slack float64) bool {
				item := c.larger(down, size-now)
				by := newArea(item).Centre().Sub(ip.Area.Centre())
				for _, q := range p.Prints {
					if !oracle.OutlineAt(r.pass.Block, q.Origin.Add(by), q.Turn).Fits(item, slack) {
						return false
					}
				}
				return true
			}
			for _, size := range []geometry.Length{s.Least, (s.Least + now) / 2, (s.Below + now) / 2, s.Below - 1e-3} {
				if size >= s.Least && !lies(size, 1e-4) {
					t.Errorf("%v: serves %v (down %v), and at %v a print is off the area", r, *s, down, size)
				}
			}
			if got := count(c.larger(down, s.Below-now), r.pass); got <= n && lies(s.Below+1e-2, 0) {
				t.Errorf("%v: serves below %v (down %v), where there are %d prints as well", r, s.Below, down, got)
			}
			if lies(s.Least-1e-2, 0) && count(c.larger(down, s.Least-1e-2-now), r.pass) <= n && s.Least > 1 {
				t.Errorf("%v: serves from %v (down %v), and less would do", r, s.Least, down)
			}
		}
	}
	for _, repeat := range []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "frame", "rings"} {
		for _, kind := range []string{"cloth", "border", "gap", "block"} {
			if named[kind+" "+repeat] < 2 {
				t.Errorf("%s: %d changes of the %s are named", repeat, named[kind+" "+repeat], kind)
			}
		}
	}
	for _, shape := range []string{"rectangle", "round", "outline", "drum"} {
		if served[shape] < 6 {
			t.Errorf("only %d sizes of %s items are served", served[shape], shape)
		}
	}
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
		a, d := plan.Serves()
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
