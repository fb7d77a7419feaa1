package plan

import (
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// chords are chord constants: chord = pitch circle diameter x constant, for n holes from 3.
// From a "Pitch circle chordal distance calculation" table.
var chords = []float64{
	0.86603, 0.70711, 0.58779, 0.50000, 0.43388, 0.38268, 0.34202, 0.30902, 0.28173, 0.25882, 0.23932, 0.22252, 0.20791,
	0.19509, 0.18375, 0.17365, 0.16459, 0.15643, 0.14904, 0.14231, 0.13617, 0.13053, 0.12533, 0.12054, 0.11609, 0.11196, 0.10812, 0.10453,
}

// radius is that of a ring of a plan, the outermost being 1: how far the origin of its first
// print is from the middle of the item.
func radius(p *PassPlan, ring int) geometry.Length {
	for _, q := range p.Prints {
		if q.Row == ring {
			return q.Origin.Distance(p.layout.area.Centre())
		}
	}
	return 0
}

// TestRingChords sets n round prints in a ring and compares the chords between neighbours
// with the table.
func TestRingChords(t *testing.T) {
	for i, constant := range chords {
		n := i + 3
		// A ring of radius 100 for prints that just fit n times, and not n + 1 times.
		d := geometry.Length(200 * math.Sin(math.Pi/float64(n)))
		d -= 0.001
		pass := newPass(roundBlock(d), "rings", 0)
		pass.Rings = 1
		plan := planned(t, roundItem(200+d, 0), pass)
		run := plan.Choice().Runs[0]
		if run.Count != n || !near(radius(plan, 1), 100) {
			t.Errorf("%d prints of %v: ring of %d, radius %v", n, d, run.Count, radius(plan, 1))
			continue
		}
		var ring []Print
		for _, p := range plan.Prints {
			if p.Row == 1 {
				ring = append(ring, p)
			}
		}
		for j, p := range ring {
			chord := p.Origin.Distance(ring[(j+1)%n].Origin)
			if math.Abs(float64(chord)/200-constant) > 6e-6 {
				t.Errorf("%d in a ring: chord %v of a circle of 200, the table has %v", n, chord, constant)
			}
		}
	}
}

// TestCornerGap: the plain cloth between neighbours in a fan is what lies between their
// outlines.
func TestCornerGap(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	for range 500 {
		pick := func(low, high float64) geometry.Length { return geometry.Length(low + random.Float64()*(high-low)) }
		block := []*job.Block{rectBlock(pick(10, 60), pick(10, 60)), roundBlock(pick(10, 60)), hexBlock(pick(10, 60)), leafBlock(pick(10, 60), pick(10, 60))}[random.IntN(4)]
		r, a := block.Size.H/2+pick(1, 300), geometry.Angle(360)/geometry.Angle(2+random.IntN(30))
		got := float64(newFan(block, job.Turns{{0}}, 180).gap(r, a))
		at := func(a geometry.Angle) oracle.Shape { return oracle.OutlineAt(block, geometry.Pt(0, -r).Turn(a), a) }
		if want := at(0).Apart(at(a)); want > 1e-3 && math.Abs(got-want) > 1e-6 || want < -1e-3 && got > 0 {
			t.Errorf("%s %v at %v, %v degrees apart: gap %v, measured %v", block.Shape, block.Size, r, a, got, want)
		}
	}
}

// TestRingsByHand: 500 across, border 20, block 40 x 50, gap 5. The outermost ring reaches 230:
// r = sqrt(230^2 - 20^2) - 25 = 204.129. Corner gap at n = 25: 2 (179.129 sin 7.2 - 20 cos 7.2)
// = 5.217 degrees; at 26 it is 3.48. The next reaches 204.129 - 25 - 5 = 174.129.
func TestRingsByHand(t *testing.T) {
	plan := planned(t, roundItem(500, 20), newPass(rectBlock(40, 50), "rings", 5))
	runs := plan.Choice().Runs
	outer := math.Sqrt(230*230-20*20) - 25
	next := math.Sqrt(math.Pow(outer-25-5, 2)-20*20) - 25
	if one, two := radius(plan, 1), radius(plan, 2); !near(one, geometry.Length(outer)) || !near(two, geometry.Length(next)) {
		t.Errorf("radii %v, %v; want %v, %v", one, two, outer, next)
	}
	gap := func(n float64) float64 {
		f := math.Pi / n
		return 2 * ((outer-25)*math.Sin(f) - 20*math.Cos(f))
	}
	if n := float64(runs[0].Count); n != 25 || math.Abs(float64(runs[0].Gap)-gap(25)) > 1e-9 || gap(26) >= 5 {
		t.Errorf("outermost ring of %v, gap %v", n, runs[0].Gap)
	}
	// From the middle outwards: the first print of every ring is at 12 o'clock, the next one
	// clockwise of it, tops outwards.
	for i, p := range plan.Prints {
		d := p.Origin.Sub(geometry.Pt(250, 250))
		if p.Column == 1 && (d.X.Abs() > 1e-9 || d.Y > 1e-9) {
			t.Errorf("print %d, the first of its ring, is at %v", i+1, p.Origin)
		}
		if p.Column == 2 && d.X <= 0 && p.Row < len(runs)-1 {
			t.Errorf("print %d, the second of its ring, is at %v", i+1, p.Origin)
		}
		if i > 0 && p.Row > plan.Prints[i-1].Row {
			t.Errorf("print %d is on ring %d, after ring %d", i+1, p.Row, plan.Prints[i-1].Row)
		}
		up := geometry.Pt(0, -1).Turn(p.Turn)
		if out := d.Norm(); out > 1 && up.Distance(d.Mul(1/float64(out))) > 1e-9 {
			t.Errorf("print %d at %v has its top to %v", i+1, p.Origin, up)
		}
	}
	if plan.Tape != nil || len(plan.Notes) == 0 {
		t.Errorf("tape %v, notes %q", plan.Tape, plan.Notes)
	}
	// The middle print is a ring as well: with as many rings as there are, it is taken, with
	// fewer it is not.
	item := roundItem(480, 20)
	runs = planned(t, item, newPass(rectBlock(40, 50), "rings", 5)).Choice().Runs
	if last := runs[len(runs)-1]; last.Name != "middle" || last.Count != 1 {
		t.Fatalf("no print in the middle: %+v", runs)
	}
	for n := 1; n <= len(runs)+1; n++ {
		pass := newPass(rectBlock(40, 50), "rings", 5)
		pass.Rings = n
		if d := cmp.Diff(runs[:min(n, len(runs))], planned(t, item, pass).Choice().Runs); d != "" {
			t.Errorf("rings = %d (-want +got):\n%s", n, d)
		}
	}
}

// TestRingsRoundAZone: prints over a zone are left out of their ring, the others stay.
func TestRingsRoundAZone(t *testing.T) {
	item := roundItem(500, 20)
	item.Zones = []job.Zone{{Name: "label", Rect: geometry.RectAt(geometry.Pt(240, 30), geometry.Size{W: 20, H: 10})}}
	plan, all := planned(t, item, newPass(rectBlock(40, 50), "rings", 5)), planned(t, roundItem(500, 20), newPass(rectBlock(40, 50), "rings", 5))
	runs, whole := plan.Choice().Runs, all.Choice().Runs
	if runs[0].Count != whole[0].Count-1 || runs[1] != whole[1] || len(plan.Prints) != len(all.Prints)-1 {
		t.Errorf("runs %+v, without the zone %+v", runs, whole)
	}
}

// TestRings: at random, no print leaves the area, none is nearer to another than the gap; one
// more in any ring would be, and so would a print in the middle where there is none.
func TestRings(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 1))
	for range 150 {
		pick := func(low, high int) geometry.Length { return geometry.Length(low*4+random.IntN((high-low)*4)) / 4 }
		item := roundItem(pick(200, 600), pick(0, 40))
		block := []*job.Block{rectBlock(pick(20, 90), pick(20, 90)), roundBlock(pick(20, 90)), hexBlock(pick(20, 80)), leafBlock(pick(20, 80), pick(20, 80))}[random.IntN(4)]
		pass := newPass(block, "rings", pick(0, 6))
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			continue
		}
		p := ip.Passes[0]
		r := randomJob{random, item, pass}
		r.checkPrints(t, p)
		centre, gap := geometry.Pt(item.Size.W/2, item.Size.W/2), float64(pass.Gap.Across.Least)
		middle := false
		for i, run := range p.Choice().Runs {
			radius := radius(p, i+1)
			middle = middle || run.Name == "middle"
			if run.Name == "middle" {
				continue
			}
			at := func(i int) oracle.Shape {
				a := geometry.Angle(i) * 360 / geometry.Angle(run.Count+1)
				return oracle.OutlineAt(block, centre.Add(geometry.Pt(0, -radius).Turn(a)), a)
			}
			if d := at(0).Apart(at(1)); d >= gap+oracle.Slack {
				t.Fatalf("%v: %s of %d has room for one more, %v apart", r, run.Name, run.Count, d)
			}
			out := oracle.OutlineAt(block, centre.Add(geometry.Pt(0, -radius-0.01)), 0)
			if run.Name == "ring 1" && out.Fits(item, 0) {
				t.Fatalf("%v: the outermost ring could be larger than %v", r, radius)
			}
		}
		if middle {
			continue
		}
		mid, least := oracle.OutlineAt(block, centre, 0), math.Inf(1)
		for _, q := range p.Prints {
			least = math.Min(least, mid.Apart(oracle.OutlineAt(block, q.Origin, q.Turn)))
		}
		if least >= gap+oracle.Slack {
			t.Fatalf("%v: a print in the middle would keep %v", r, least)
		}
	}
}
