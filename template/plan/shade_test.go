package plan

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"
)

// TestFrustum lays two published frustums flat.
func TestFrustum(t *testing.T) {
	// "The Net of a Frustum": ends 5 in and 8 in across, 4 in apart: inner radius 7.12 in, outer
	// radius 11.39 in, angle 126.4 degrees.
	d := newDevelopment(job.Shade{Top: 5 * geometry.Inch, Bottom: 8 * geometry.Inch, Height: 4 * geometry.Inch})
	if in := float64(d.Inner / geometry.Inch); math.Abs(in-7.12) > 0.005 {
		t.Errorf("inner radius %v in", in)
	}
	if out := float64(d.Outer / geometry.Inch); math.Abs(out-11.39) > 0.005 {
		t.Errorf("outer radius %v in", out)
	}
	if a := float64(d.Angle); math.Abs(a-126.4) > 0.05 {
		t.Errorf("angle %v", a)
	}
	// Math Central (mathcentral.uregina.ca), Quandaries and Queries QQ.02.06: 290 mm across at
	// the top, 550 at the bottom, 250 high: inner arc about 911 mm long.
	d = newDevelopment(job.Shade{Top: 290, Bottom: 550, Height: 250})
	if arc := float64(d.Inner) * d.Angle.Radians(); math.Abs(arc-911) > 0.5 {
		t.Errorf("inner arc %v", arc)
	}
}

// TestDevelopment: the arcs are as long as the ends are round, the sector lies in its bounds
// and touches all four sides of them, whether it opens by less or more than half a turn.
func TestDevelopment(t *testing.T) {
	for _, s := range []job.Shade{{Top: 100, Bottom: 300, Height: 200}, {Top: 50, Bottom: 400, Height: 60}, {Top: 200, Bottom: 210, Height: 300}, {Top: 20, Bottom: 300, Height: 120}} {
		d := newDevelopment(s)
		for _, end := range []struct{ radius, across geometry.Length }{{d.Outer, s.Bottom}, {d.Inner, s.Top}} {
			if arc := float64(end.radius) * d.Angle.Radians(); math.Abs(arc-math.Pi*float64(end.across)) > 1e-6 {
				t.Errorf("%v: an arc of %v for an end %v across", s, arc, end.across)
			}
		}
		low, high := geometry.Pt(1e9, 1e9), geometry.Pt(-1e9, -1e9)
		for i := range 20001 {
			a := d.Angle * geometry.Angle(float64(i)/20000-0.5)
			for _, r := range []geometry.Length{d.Inner, d.Outer} {
				p := d.At(r, a)
				low, high = geometry.Pt(min(low.X, p.X), min(low.Y, p.Y)), geometry.Pt(max(high.X, p.X), max(high.Y, p.Y))
			}
		}
		if low.Norm() > 1e-3 || high.Distance(geometry.Pt(d.size.W, d.size.H)) > 1e-3 {
			t.Errorf("%v: the sector lies in %v to %v, its size is %v", s, low, high, d.size)
		}
		// The wide end is down: its middle is the lowest point.
		if p := d.At(d.Outer, 0); !near(p.Y, d.size.H) || !near(p.X, d.size.W/2) {
			t.Errorf("%v: the middle of the wide end is at %v of %v", s, p, d.size)
		}
		b := d.band(d.Inner, d.Outer).Bounds()
		if b.Min.X > 1e-3 || b.Min.Y > 1e-3 || b.Max.X < d.size.W-1e-3 || b.Max.Y < d.size.H-1e-3 {
			t.Errorf("%v: the path lies in %v", s, b)
		}
	}
}

// TestDrumByHand: 250 mm across is 785.398 round: floor(785.398 / 61) = 12 of 60 with a gap of
// 1 at the least, which opens to 785.398 / 12 - 60 = 5.4498.
func TestDrumByHand(t *testing.T) {
	round := geometry.Length(250 * math.Pi)
	for _, c := range []struct {
		name    string
		repeat  job.Repeat
		block   *job.Block
		turns   job.Turns
		step    float64
		columns int
		note    string
	}{
		{"straight", "straight", rectBlock(60, 40), [][]int{{0}}, 0.5, 12, "12 prints go round; for the repeat to close, the gap 5.45 mm is taken"},
		{"brick", "brick", rectBlock(60, 40), [][]int{{0}}, 0.5, 12, "gap 5.45 mm"},
		// floor(785.398 / 66) = 11: a half-drop takes 10, a step of 1/3 takes 9.
		{"half-drop", "half-drop", rectBlock(65, 40), [][]int{{0}}, 0.5, 10, "11 would go round, but a half-drop closes only with an even number: 10 are taken, gap 13.54 mm"},
		{"third", "half-drop", rectBlock(65, 40), [][]int{{0}}, 1.0 / 3, 9, "with a multiple of 3: 9 are taken"},
		{"turns", "straight", rectBlock(65, 65), [][]int{{0, 90, 180, 270}}, 0.5, 8, "a repeat with these turns closes only with a multiple of 4: 8 are taken"},
		{"half-drop and turns", "half-drop", rectBlock(65, 65), [][]int{{0, 90, 180}}, 0.5, 6, "with a multiple of 6: 6 are taken"},
		{"honeycomb", "honeycomb", roundBlock(60), [][]int{{0}}, 0.5, 12, "gap 5.45 mm"},
	} {
		pass := newPass(c.block, c.repeat, 1)
		pass.Turns, pass.Step = c.turns, c.step
		plan := planned(t, drumItem(round, 300, 15), pass)
		got := plan.Choice()
		if got.Columns != c.columns || !near(got.Pitch.Across, round/geometry.Length(c.columns)) || !near(got.Gap.Across, got.Pitch.Across-c.block.Size.W) {
			t.Errorf("%s: %d round, pitch %v, gap %v", c.name, got.Columns, got.Pitch, got.Gap)
		}
		if !strings.Contains(strings.Join(plan.Notes, "\n"), c.note) {
			t.Errorf("%s: notes %q, want %q in them", c.name, plan.Notes, c.note)
		}
		if got.Border.Left != 0 || got.Border.Right != 0 {
			t.Errorf("%s: border %v", c.name, got.Border)
		}
	}
}

// TestSeam: where both ways of centring hold as many, the one that keeps prints off the seam
// is taken: n odd, the print on the front; n even, the joint.
func TestSeam(t *testing.T) {
	for n, want := range map[int]job.Centring{11: job.OnPrint, 12: job.OnJoint} {
		plan := planned(t, drumItem(geometry.Length(n)*61, 300, 15), newPass(rectBlock(60, 40), "straight", 1))
		if c := plan.Choice(); c.Columns != n || c.Across != want || c.Seam != 0 {
			t.Errorf("%d round: %+v", n, c)
		}
	}
	// Every other row of a brick crosses; those prints are named once, at the left edge.
	plan := planned(t, drumItem(12*61, 300, 15), newPass(rectBlock(60, 40), "brick", 1))
	seams := 0
	for _, p := range plan.Prints {
		if p.Seam {
			seams++
			if !near(p.Origin.X, 0) {
				t.Errorf("a print across the seam is at %v", p.Origin)
			}
		}
	}
	if seams != plan.Choice().Seam || seams == 0 || !strings.Contains(strings.Join(plan.Notes, "\n"), "in two goes") {
		t.Errorf("%d prints across the seam, %d told; notes %q", seams, plan.Choice().Seam, plan.Notes)
	}
}

// TestDoesNotClose: too few go round for the repeat to close.
func TestDoesNotClose(t *testing.T) {
	for _, c := range []struct {
		repeat job.Repeat
		turns  job.Turns
		want   string
	}{
		{"half-drop", [][]int{{0}}, `1 print goes round, but this half-drop closes only with a multiple of 2; write a smaller block or repeat = "brick"`},
		{"straight", [][]int{{0, 90}}, "1 print goes round, but a repeat with 2 turns in a row closes only with a multiple of 2; write a smaller block or fewer turns"},
	} {
		pass := newPass(rectBlock(100, 100), c.repeat, 1)
		pass.Turns = c.turns
		_, err := tryPlan(drumItem(150, 300, 15), job.RightHand, pass)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.repeat, err)
		}
	}
}

// TestLapRound: a block that is to lap round a shade is told which widths would.
func TestLapRound(t *testing.T) {
	// 720 round: 8 of 90 would touch; floor(720 / 86.5) = 8 of 87, 3 apart. To lap by 0.5 it
	// takes 720 / 8 + 0.5, or 720 / 9 + 0.5.
	plan := planned(t, drumItem(720, 200, 10), newPass(rectBlock(87, 60), "straight", -0.5))
	want := "a block 90.5 mm wide would join with 8 round, one 80.5 mm wide with 9"
	if c := plan.Choice(); c.Columns != 8 || !near(c.Gap.Across, 3) || !strings.Contains(strings.Join(plan.Notes, "\n"), want) {
		t.Errorf("%d round, gap %v, notes %q", c.Columns, c.Gap, plan.Notes)
	}
}

// TestDrumMiss: one more round by each change alone.
func TestDrumMiss(t *testing.T) {
	// 6 x 61 = 366 round: 7 take 427; 61 more round, 8.7142857 less of gap or block.
	plan := planned(t, drumItem(366, 300, 15), newPass(rectBlock(60, 40), "straight", 1))
	m := plan.NearMisses()[0]
	if m.Count != 7 || !near(*m.Cloth, 61) || m.Border != nil || m.Gap != nil || !near(*m.Block, 61.0/7) {
		t.Errorf("%+v", m)
	}
	// 426 round: 6 fit; a gap 1/7 less for each of seven does it.
	m = planned(t, drumItem(426, 300, 15), newPass(rectBlock(60, 40), "straight", 1)).NearMisses()[0]
	if m.Count != 7 || !near(*m.Cloth, 1) || m.Gap == nil || !near(*m.Gap, 1.0/7) {
		t.Errorf("%+v", m)
	}
	if a, d := plan.Serves(); a != nil || d == nil {
		t.Errorf("serves %v, %v", a, d)
	}
}

// randomCone is a shade with sloping sides and a pass on it, at random.
func (r *randomJob) makeCone() {
	top := r.pick(60, 300)
	r.item = coneItem(top, top+r.pick(4, 300), r.pick(80, 350), r.pick(0, 20))
	block := []*job.Block{rectBlock(r.pick(15, 70), r.pick(15, 70)), roundBlock(r.pick(15, 70)), hexBlock(r.pick(15, 60)), leafBlock(r.pick(15, 60), r.pick(15, 60))}[r.IntN(4)]
	r.pass = newPass(block, []job.Repeat{"straight", "brick", "half-drop"}[r.IntN(3)], r.pick(0, 6))
	r.pass.Step = []float64{0.5, 1.0 / 3, 0.25}[r.IntN(3)]
	if r.IntN(3) == 0 {
		r.pass.Gap.Across.Most += r.pick(0, 5)
		r.pass.Gap.Down.Most += r.pick(0, 5)
	}
	if r.IntN(3) == 0 {
		r.pass.Turns = [][]int{{0, 180}}
		if block.Size.W == block.Size.H {
			r.pass.Turns = [][]int{{0, 90}, {180, 270}}
		}
	}
	if r.IntN(3) == 0 {
		r.item.Zones = []job.Zone{{Name: "switch", Rect: geometry.RectAt(geometry.Pt(r.pick(0, 300), r.pick(0, 300)), geometry.Size{W: r.pick(5, 60), H: r.pick(5, 60)})}}
	}
}

// TestCones: at random, every print lies between the two borders, tops to the narrow end, none
// nearer to another than the gap, on the flat shade as round the seam; as many in every row,
// and neither one more in a row nor one more row would keep the gap.
func TestCones(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(9, 9))}
	done := map[job.Repeat]int{}
	for range 300 {
		r.makeCone()
		ip, err := tryPlan(r.item, job.RightHand, r.pass)
		if err != nil {
			continue
		}
		r.checkCone(t, ip)
		done[r.pass.Repeat]++
	}
	for _, repeat := range []job.Repeat{"straight", "brick", "half-drop"} {
		if done[repeat] < 40 {
			t.Errorf("%s: only %d cones", repeat, done[repeat])
		}
	}
}

func (r randomJob) checkCone(t *testing.T, ip *ItemPlan) {
	t.Helper()
	p, d := ip.Passes[0], ip.Area.Flat
	b, c, gap := r.pass.Block, p.Choice(), float64(r.pass.Gap.Across.Least)
	apex := [2]float64{float64(d.Apex.X), float64(d.Apex.Y)}
	// Turning about the apex by the whole angle leads over the seam.
	turned := func(at geometry.Point, by geometry.Angle) geometry.Point { return at.Sub(d.Apex).Turn(by).Add(d.Apex) }
	angle := func(at geometry.Point) geometry.Angle {
		at = at.Sub(d.Apex)
		return geometry.Degrees(math.Atan2(float64(at.X), float64(at.Y)))
	}
	var shapes []oracle.Shape
	inner, outer := math.Inf(1), 0.0
	for i, q := range p.Prints {
		s := oracle.OutlineAt(b, q.Origin, q.Turn)
		shapes = append(shapes, s)
		inner, outer = math.Min(inner, s.Nearest(apex)), math.Max(outer, s.Far(apex))
		if a := angle(q.Origin); a < -d.Angle/2-1e-6 || a > d.Angle/2+1e-6 {
			t.Fatalf("%v: print %d at %v is not on the flat shade", r, i+1, q.Origin)
		}
		up := geometry.Pt(0, -1).Turn(q.Turn - geometry.Angle(r.pass.Turns[(q.Row-1)%len(r.pass.Turns)][(q.Column-1)%len(r.pass.Turns[0])]))
		if up.Distance(d.Apex.Sub(q.Origin).Mul(1/float64(q.Origin.Distance(d.Apex)))) > 1e-9 {
			t.Fatalf("%v: print %d has its top to %v", r, i+1, up)
		}
		for _, z := range r.item.Zones {
			zone := zoneShape(z.Rect)
			if s.Apart(zone) < -oracle.Slack {
				t.Fatalf("%v: print %d is over the zone", r, i+1)
			}
		}
	}
	border := r.item.Border
	if inner < float64(d.Inner+border.Top)-oracle.Slack || outer > float64(d.Outer-border.Bottom)+oracle.Slack {
		t.Fatalf("%v: prints from %v to %v, the slope goes from %v to %v", r, inner, outer, d.Inner, d.Outer)
	}
	if math.Abs(inner-float64(d.Inner+c.Border.Top)) > oracle.Slack || math.Abs(outer-float64(d.Outer-c.Border.Bottom)) > oracle.Slack {
		t.Fatalf("%v: prints from %v to %v, border told %v", r, inner, outer, c.Border)
	}
	reach := geometry.Pt(b.Size.W, b.Size.H).Norm() + geometry.Length(gap) + 1
	for i, s := range shapes {
		for j, u := range p.Prints[:i+1] {
			for _, by := range []geometry.Angle{-d.Angle, 0, d.Angle} {
				if by == 0 && i == j {
					continue
				}
				// Farther round than half a turn the flat shade would be laid over itself.
				if math.Abs(float64(angle(p.Prints[i].Origin)-angle(u.Origin)+by)) > 180 {
					continue
				}
				at := turned(u.Origin, by)
				if at.Distance(p.Prints[i].Origin) > reach {
					continue
				}
				other := oracle.OutlineAt(b, at, u.Turn+by)
				if distance := s.Apart(other); distance < gap-oracle.Slack {
					t.Fatalf("%v: prints %d and %d (over the seam by %v) are %v apart", r, j+1, i+1, by, distance)
				}
			}
		}
	}
	if len(r.item.Zones) > 0 || r.pass.Repeat == "half-drop" {
		return
	}
	for _, n := range c.RowCounts {
		if n != c.Columns {
			t.Fatalf("%v: rows of %v", r, c.RowCounts)
		}
	}
	if r.pass.Block.Shape == "outline" {
		return
	}
	// Even borders but for what cannot be evened: nothing.
	if !near(geometry.Length(math.Round(float64(c.Border.Top-c.Border.Bottom)*1e6)/1e6), border.Top-border.Bottom) {
		t.Fatalf("%v: border %v", r, c.Border)
	}
	multiple := len(r.pass.Turns[0])
	n := geometry.Angle(c.Columns + multiple)
	first := p.Prints[0]
	for _, q := range p.Prints {
		if q.Origin.Distance(d.Apex) < first.Origin.Distance(d.Apex) {
			first = q
		}
	}
	s := oracle.OutlineAt(b, first.Origin, first.Turn)
	if u := oracle.OutlineAt(b, turned(first.Origin, d.Angle/n), first.Turn+d.Angle/n); n > 2 && len(r.pass.Turns) == 1 && s.Apart(u) > gap+oracle.Slack && b.Size.W == b.Size.H {
		t.Fatalf("%v: there is room for %v in a row, %v apart", r, n, s.Apart(u))
	}
}

// zoneShape is the shape of a zone.
func zoneShape(r geometry.Rect) oracle.Shape {
	return oracle.OutlineAt(rectBlock(r.W(), r.H()), r.Centre(), 0)
}

// TestConeByHand: 200 across at the top, 400 at the bottom, 300 high: slant sqrt(300^2 + 100^2) =
// 316.228, outer radius 632.456, inner 316.228, angle pi 400 / 632.456 = 113.842 degrees.
// Border 10, block 40 x 50, gap 2: origins from 326.228 + 25 to sqrt(622.456^2 - 20^2) - 25 =
// 597.135; 245.9 / 52 = 4.73 rows more than one: an even number 4 (joint), or 5 (print).
func TestConeByHand(t *testing.T) {
	plan := planned(t, coneItem(200, 400, 300, 10), newPass(rectBlock(40, 50), "straight", 2))
	c := plan.Choice()
	if c.Rows != 5 || c.Down != job.OnPrint {
		t.Fatalf("%+v", c)
	}
	// t = (622.456^2 - K^2 - 20^2) / (2 (K + 622.456)) with K = 326.228 + 50 + 4 x 52 = 584.228.
	k := 10*math.Sqrt(1000) + 10 + 50 + 4*52
	reach := 20*math.Sqrt(1000) - 10
	shift := (reach*reach - k*k - 400) / (2 * (k + reach))
	if !near(c.Border.Top, geometry.Length(10+shift)) || !near(c.Border.Bottom, geometry.Length(10+shift)) {
		t.Errorf("border %v, want %v at both ends", c.Border, 10+shift)
	}
	// In the narrowest row the inner corners stand on 326.228 + t; the gap at n is
	// 2 (r sin(f/2) - 20 cos(f/2)).
	inner := 10*math.Sqrt(1000) + 10 + shift
	gap := func(n float64) float64 {
		half := math.Pi * 400 / (20 * math.Sqrt(1000)) / n / 2
		return 2 * (inner*math.Sin(half) - 20*math.Cos(half))
	}
	n := float64(c.Columns)
	if gap(n) < 2 || gap(n+1) >= 2 || math.Abs(float64(c.Gap.Across)-gap(n)) > 1e-9 {
		t.Errorf("%v round with a gap of %v; %v at that, %v at one more", n, c.Gap.Across, gap(n), gap(n+1))
	}
	if c.Seam != 0 || plan.Tape != nil || len(plan.Notes) < 2 {
		t.Errorf("seam %d, tape %v, notes %q", c.Seam, plan.Tape, plan.Notes)
	}
}
