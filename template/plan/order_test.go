package plan

import (
	"fmt"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// TestNearestFirst: one, two or four prints are nearest the centre, and come first; a
// right-handed printer's far left one before the others.
func TestNearestFirst(t *testing.T) {
	block := rectBlock(90, 90)
	for _, c := range []struct {
		w, h    geometry.Length
		nearest int
	}{{500, 500, 4}, {510, 510, 1}, {510, 500, 2}, {500, 510, 2}} {
		for _, hand := range []job.Hand{job.RightHand, job.LeftHand} {
			pass := newPass(block, "straight", 1)
			ip, err := tryPlan(rectItem(c.w, c.h, 25), hand, pass)
			if err != nil {
				t.Fatal(err)
			}
			prints := ip.Passes[0].Prints
			least := prints[0].Origin.Distance(geometry.Pt(c.w/2, c.h/2))
			for i, p := range prints {
				d := p.Origin.Distance(geometry.Pt(c.w/2, c.h/2))
				if nearest := d <= least+1e-9; nearest != (i < c.nearest) {
					t.Errorf("%v x %v: print %d is %v from the centre, the first %v", c.w, c.h, i+1, d, least)
				}
			}
			if q := prints[0].Quarter; q != quarters(hand)[0] {
				t.Errorf("%v x %v, %s hand: begins %s", c.w, c.h, hand, q)
			}
		}
	}
}

// TestQuarterByQuarter: after the nearest, one quarter is done before the next begins, in the
// order in which the arm does not cross wet paint; left-handed mirrored.
func TestQuarterByQuarter(t *testing.T) {
	for hand, want := range map[job.Hand][]string{
		job.RightHand: {"far left", "far right", "near left", "near right"},
		job.LeftHand:  {"far right", "far left", "near right", "near left"},
	} {
		ip, err := tryPlan(rectItem(700, 600, 25), hand, newPass(rectBlock(60, 40), "straight", 1))
		if err != nil {
			t.Fatal(err)
		}
		// 650 by 550: 10 across, the joint; 13 down, a print on the centre: two are nearest.
		var got []string
		for _, p := range ip.Passes[0].Prints[2:] {
			if q := p.Quarter.String(); len(got) == 0 || got[len(got)-1] != q {
				got = append(got, q)
			}
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s hand (-want +got):\n%s", hand, d)
		}
	}
}

// TestMirrored: a left-handed printer's order is the right-handed one's in a mirror, where the
// pattern is.
func TestMirrored(t *testing.T) {
	order := func(hand job.Hand) []geometry.Point {
		ip, err := tryPlan(rectItem(700, 600, 25), hand, newPass(rectBlock(60, 40), "brick", 1))
		if err != nil {
			t.Fatal(err)
		}
		var at []geometry.Point
		for _, p := range ip.Passes[0].Prints {
			q := p.Origin
			if hand == job.LeftHand {
				q.X = 700 - q.X
			}
			at = append(at, geometry.Pt(geometry.Length(math.Round(float64(q.X)*1e6)/1e6), geometry.Length(math.Round(float64(q.Y)*1e6)/1e6)))
		}
		return at
	}
	if d := cmp.Diff(order(job.RightHand), order(job.LeftHand)); d != "" {
		t.Errorf("right and left, mirrored:\n%s", d)
	}
}

// TestEachBesideAnother: every print after the first stands next to one printed before it,
// measured between their origins.
func TestEachBesideAnother(t *testing.T) {
	for _, c := range []struct {
		item   *job.Item
		block  *job.Block
		repeat job.Repeat
		step   float64
	}{
		{rectItem(700, 600, 25), rectBlock(60, 40), "straight", 0.5},
		{rectItem(350, 1200, 20), rectBlock(60, 40), "straight", 0.5},
		{rectItem(700, 600, 25), rectBlock(60, 40), "brick", 0.5},
		{rectItem(700, 600, 25), rectBlock(60, 40), "brick", 1.0 / 3},
		{rectItem(700, 600, 25), rectBlock(60, 40), "half-drop", 0.25},
		{rectItem(700, 600, 25), hexBlock(50), "honeycomb", 0.5},
		{rectItem(700, 600, 25), rectBlock(50, 50), "diagonal", 0.5},
		{roundItem(800, 20), rectBlock(60, 60), "straight", 0.5},
		{roundItem(800, 20), rectBlock(60, 60), "rings", 0.5},
		{rectItem(700, 600, 25), rectBlock(60, 40), "frame", 0.5},
		{drumItem(785, 300, 20), rectBlock(60, 40), "half-drop", 0.5},
		{coneItem(200, 400, 250, 10), rectBlock(40, 40), "brick", 0.5},
	} {
		for _, hand := range []job.Hand{job.RightHand, job.LeftHand} {
			pass := newPass(c.block, c.repeat, 1)
			pass.Step = c.step
			ip, err := tryPlan(c.item, hand, pass)
			if err != nil {
				t.Fatal(err)
			}
			prints := ip.Passes[0].Prints
			// The next print in a row, or in a moved row the nearer of two, is no farther off
			// than this; on a cone, rings and frames neighbours lie farther apart outwards.
			pitch := ip.Passes[0].Choice().Pitch
			var beside geometry.Length
			switch c.repeat {
			case "straight", "diagonal":
				beside = max(pitch.Across, pitch.Down)
			case "frame":
				beside = max(pitch.Across, pitch.Down) + 50
			case "rings":
				beside = 2 * max(pitch.Across, pitch.Down)
			default:
				beside = 1.5*pitch.Across + pitch.Down
			}
			for i := 1; i < len(prints); i++ {
				least := geometry.Length(math.Inf(1))
				for _, q := range prints[:i] {
					least = min(least, prints[i].Origin.Distance(q.Origin))
				}
				if least > beside+1e-6 {
					t.Errorf("%s on %s, %s hand: print %d is %v from the nearest before it, pitch %v", c.repeat, c.item.Name, hand, i+1, least, pitch)
				}
			}
		}
	}
}

// TestAroundAZone: where zones cut the area in pieces, the order goes on with the print that is
// nearest of all to one printed. By brute force.
func TestAroundAZone(t *testing.T) {
	item := rectItem(1000, 700, 10)
	// A wide gap to the right of the middle, wider yet near the middle; a narrower one to its left,
	// the narrowest below.
	item.Zones = []job.Zone{
		{Name: "pocket", Rect: geometry.RectAt(geometry.Pt(600, 0), geometry.Size{W: 110, H: 700})},
		{Name: "buckle", Rect: geometry.RectAt(geometry.Pt(700, 200), geometry.Size{W: 60, H: 300})},
		{Name: "seam", Rect: geometry.RectAt(geometry.Pt(300, 0), geometry.Size{W: 100, H: 700})},
		{Name: "label", Rect: geometry.RectAt(geometry.Pt(400, 450), geometry.Size{W: 200, H: 60})},
	}
	for _, hand := range []job.Hand{job.RightHand, job.LeftHand} {
		ip, err := tryPlan(item, hand, newPass(rectBlock(40, 40), "straight", 1))
		if err != nil {
			t.Fatal(err)
		}
		prints := ip.Passes[0].Prints
		from := func(q Print, done []Print) geometry.Length {
			least := geometry.Length(math.Inf(1))
			for _, d := range done {
				least = min(least, q.Origin.Distance(d.Origin))
			}
			return least
		}
		jumps := 0
		for i := 1; i < len(prints); i++ {
			d := from(prints[i], prints[:i])
			if d <= 41+1e-9 {
				continue
			}
			jumps++
			for _, q := range prints[i+1:] {
				if other := from(q, prints[:i]); other < d-1e-6 {
					t.Errorf("print %d is %v from those before it, and print %d %v", i+1, d, q.Number, other)
				}
			}
		}
		if jumps != 3 {
			t.Errorf("%s hand: %d jumps over zones, want 3", hand, jumps)
		}
	}
}

// TestRowByRow runs from the near edge, each row from the left, far row last.
func TestRowByRow(t *testing.T) {
	rows := func(repeat job.Repeat, block *job.Block, item *job.Item) (got [][]string) {
		pass := newPass(block, repeat, 0)
		pass.Order = job.RowByRow
		plan := planned(t, item, pass)
		row := -1
		for _, p := range plan.Prints {
			if p.Row != row {
				got = append(got, nil)
				row = p.Row
			}
			got[len(got)-1] = append(got[len(got)-1], fmt.Sprintf("%.0f %.0f", p.Origin.X, p.Origin.Y))
		}
		return got
	}
	for _, c := range []struct {
		repeat job.Repeat
		block  *job.Block
		item   *job.Item
		want   [][]string
	}{
		{"straight", rectBlock(100, 100), rectItem(320, 220, 10), [][]string{{"60 160", "160 160", "260 160"}, {"60 60", "160 60", "260 60"}}},
		// Rows of 3, 2, 3: more than 2, 3, 2.
		{"brick", rectBlock(100, 100), rectItem(320, 320, 10), [][]string{{"60 260", "160 260", "260 260"}, {"110 160", "210 160"}, {"60 60", "160 60", "260 60"}}},
	} {
		if d := cmp.Diff(c.want, rows(c.repeat, c.block, c.item)); d != "" {
			t.Errorf("%s (-want +got):\n%s", c.repeat, d)
		}
	}
	// A diagonal has no rows of its own that lie level: what is at one height is a row.
	pass := newPass(rectBlock(60, 60), "diagonal", 1)
	pass.Order = job.RowByRow
	before := geometry.Pt(0, 1000)
	for _, p := range planned(t, rectItem(500, 500, 20), pass).Prints {
		switch {
		case p.Origin.Y > before.Y+1e-6:
			t.Errorf("the print at %v comes after one farther off, at %v", p.Origin, before)
		case p.Origin.Y > before.Y-1e-6 && p.Origin.X < before.X:
			t.Errorf("the print at %v comes after one right of it, at %v", p.Origin, before)
		}
		before = p.Origin
	}
}
