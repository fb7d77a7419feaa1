package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// seated works out a pass on or between the prints of a first one.
func seated(t *testing.T, item *job.Item, first, second *job.Pass) (*PassPlan, *PassPlan) {
	t.Helper()
	second.Name = "second"
	ip, err := tryPlan(item, job.RightHand, first, second)
	if err != nil {
		t.Fatal(err)
	}
	return ip.Passes[0], ip.Passes[1]
}

// TestBetween: one seat in the middle of every four prints that meet; with open edges also
// where two or three do, if the whole print fits.
func TestBetween(t *testing.T) {
	item := rectItem(500, 400, 10)
	ground := newPass(rectBlock(80, 80), "straight", 2)
	// 480 by 380: 5 by 4, field 408 by 326 from 46 by 37. Seats: 4 by 3 of 12 mm.
	dots := newPass(roundBlock(12), "straight", 0)
	dots.Between = ground
	_, plan := seated(t, item, ground, dots)
	if c := plan.Choice(); c.Count != 12 || c.Columns != 4 || c.Rows != 3 || !near(c.Pitch.Across, 82) || !near(c.Gap.Across, 70) {
		t.Errorf("%+v", c)
	}
	for _, p := range plan.Prints {
		x, y := float64(p.Origin.X-46+1)/82, float64(p.Origin.Y-37+1)/82
		if math.Abs(x-math.Round(x)) > 1e-9 || math.Abs(y-math.Round(y)) > 1e-9 {
			t.Errorf("the seat at %v is not between four prints", p.Origin)
		}
	}
	// The field is 36 and 27 within the area: on the open edges there is room for 12 mm, in the
	// four corners one print alone is no opening.
	dots.OpenEdges = true
	if _, plan = seated(t, item, ground, dots); plan.Choice().Count != 6*5-4 {
		t.Errorf("open edges: %+v", plan.Choice())
	}
	// A seat 60 across on the edge would reach 29 beyond the field: left and right, not above and below.
	dots.Block = roundBlock(60)
	if _, plan = seated(t, item, ground, dots); plan.Choice().Count != 12+3+3 {
		t.Errorf("wide seats: %+v", plan.Choice())
	}
	if plan.Choice().dropped != 0 {
		t.Errorf("%d dropped: open edges are taken where there is room", plan.Choice().dropped)
	}
}

// TestOpenEdgesNeedNeighbours: 2 by 2 prints of 80 with gaps of 2, two facing ones taken away by
// zones: the middle is left with two prints that only meet across it, which close nothing; of the
// edges each has one print, or none. With one zone, three are left: the middle is closed by
// neighbours, and of the four edges the two with both their prints.
func TestOpenEdgesNeedNeighbours(t *testing.T) {
	ground := newPass(rectBlock(80, 80), "straight", 2)
	dots := newPass(roundBlock(12), "straight", 0)
	dots.Between, dots.OpenEdges, dots.Name = ground, true, "dots"
	item := rectItem(200, 200, 10)
	item.Zones = []job.Zone{{Name: "button", Rect: geometry.RectAt(geometry.Pt(40, 40), geometry.Size{W: 22, H: 22})}}
	_, plan := seated(t, item, ground, dots)
	if len(plan.Prints) != 3 {
		t.Errorf("three prints: %d seats, want 3", len(plan.Prints))
	}
	item.Zones = append(item.Zones, job.Zone{Name: "pin", Rect: geometry.RectAt(geometry.Pt(138, 138), geometry.Size{W: 22, H: 22})})
	if _, err := tryPlan(item, job.RightHand, ground, dots); err == nil || !strings.Contains(err.Error(), "no opening") {
		t.Errorf("two facing prints: %v", err)
	}
}

// TestBetweenWithAZone: a zone takes a print away and so closes up to four openings; a seat
// that would lie over a zone itself is left out, and counted.
func TestBetweenWithAZone(t *testing.T) {
	item := rectItem(500, 400, 10)
	ground := newPass(rectBlock(80, 80), "straight", 20)
	dots := newPass(roundBlock(30), "straight", 0)
	dots.Between = ground
	// 480 by 380: 5 by 4 with a pitch of 100 do not fit: 5 x 100 - 20 = 480 do; 4 x 100 - 20 =
	// 380 do. Openings at 100, 200, ... less 10.
	item.Zones = []job.Zone{{Name: "button", Rect: geometry.RectAt(geometry.Pt(197, 197), geometry.Size{W: 6, H: 6})}}
	_, plan := seated(t, item, ground, dots)
	if plan.Choice().dropped != 1 || len(plan.Prints) != 4*3-1 || !strings.Contains(strings.Join(plan.Notes, "\n"), "1 print is left out") {
		t.Errorf("%d dropped of 12, %d printed, notes %q", plan.Choice().dropped, len(plan.Prints), plan.Notes)
	}
	item.Zones = []job.Zone{{Name: "pocket", Rect: geometry.RectAt(geometry.Pt(130, 130), geometry.Size{W: 20, H: 20})}}
	if _, plan = seated(t, item, ground, dots); plan.Choice().dropped != 0 || len(plan.Prints) != 4*3-4 {
		t.Errorf("%d dropped, %d printed", plan.Choice().dropped, len(plan.Prints))
	}
}

// TestBetweenOnShades: round a shade the last column and the first close openings as well.
func TestBetweenOnShades(t *testing.T) {
	for _, item := range []*job.Item{drumItem(12*61, 300, 15), drumItem(11*61, 300, 15), coneItem(200, 400, 300, 10), coneItem(60, 400, 120, 10)} {
		ground := newPass(rectBlock(60, 60), "straight", 1)
		if item.Shape == "cone" {
			ground.Block = rectBlock(30, 30)
		}
		dots := newPass(roundBlock(5), "straight", 0)
		dots.Between = ground
		first, plan := seated(t, item, ground, dots)
		c := first.Choice()
		if want := c.Columns * (c.Rows - 1); len(plan.Prints) != want {
			t.Errorf("%s: %d seats between %d x %d", item.Shape, len(plan.Prints), c.Columns, c.Rows)
		}
		// Every seat is as far from the two prints on one side as from those on the other; on a
		// cone the wider row is farther than the narrower.
		ip, err := tryPlan(item, job.RightHand, ground)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range plan.Prints {
			var d []float64
			for _, p := range first.Prints {
				for _, turn := range []int{-1, 0, 1} {
					at := p.Origin
					if flat := ip.Area.Flat; flat != nil {
						at = at.Sub(flat.Apex).Turn(flat.Angle * geometry.Angle(turn)).Add(flat.Apex)
					} else {
						at.X += item.Size.W * geometry.Length(turn)
					}
					if x := float64(at.Distance(s.Origin)); x < 60 {
						d = append(d, x)
					}
				}
			}
			twins := 0
			for i := range d {
				for j := range i {
					if math.Abs(d[i]-d[j]) < 1e-6 {
						twins++
					}
				}
			}
			if len(d) < 4 || twins < 2 {
				t.Fatalf("%s: the seat at %v is %v from the prints round it", item.Shape, s.Origin, d)
			}
		}
	}
}

// TestOn: a print at every print of the earlier pass, moved by the offset turned with it, and
// turned with it, in its order.
func TestOn(t *testing.T) {
	outline := newPass(rectBlock(60, 60), "straight", 4)
	outline.Turns = [][]int{{0, 90}, {270, 180}}
	fill := newPass(rectBlock(10, 14), "straight", 0)
	fill.On, fill.Offset = outline, geometry.Pt(20, -10)
	first, plan := seated(t, rectItem(400, 300, 10), outline, fill)
	if len(plan.Prints) != len(first.Prints) || plan.Choice().dropped != 0 {
		t.Fatalf("%d prints on %d, %d dropped", len(plan.Prints), len(first.Prints), plan.Choice().dropped)
	}
	steps := map[geometry.Angle]geometry.Point{0: {X: 20, Y: -10}, 90: {X: 10, Y: 20}, 180: {X: -20, Y: 10}, 270: {X: -10, Y: -20}}
	for i, p := range plan.Prints {
		q := first.Prints[i]
		if p.Turn != q.Turn || p.Origin.Sub(q.Origin).Distance(steps[q.Turn]) > 1e-9 {
			t.Errorf("print %d at %v turned %v, on %v turned %v", i+1, p.Origin, p.Turn, q.Origin, q.Turn)
		}
	}
	if plan.Drift != nil || plan.Tape != nil {
		t.Errorf("drift %v, tape %v", plan.Drift, plan.Tape)
	}
	// 380 by 280: 5 by 4 or so; moved 25 to the right, the last column would leave the area.
	outline.Turns, fill.Offset = [][]int{{0}}, geometry.Pt(60, 0)
	first, plan = seated(t, rectItem(400, 300, 10), outline, fill)
	if plan.Choice().dropped != first.Choice().Rows || len(plan.Prints) != first.Choice().Count-plan.Choice().dropped {
		t.Errorf("%d dropped, %d printed on %d", plan.Choice().dropped, len(plan.Prints), len(first.Prints))
	}
	if want := fmt.Sprintf("%d prints are left out, as the block would not lie wholly on the area there", plan.Choice().dropped); plan.Notes[0] != want {
		t.Errorf("notes %q, want %q", plan.Notes, want)
	}
}

// TestOnShades: what leaves the flat shade on one side comes in on the other.
func TestOnShades(t *testing.T) {
	for _, item := range []*job.Item{drumItem(12*61, 300, 15), coneItem(200, 400, 300, 10), coneItem(60, 400, 120, 10)} {
		outline := newPass(rectBlock(40, 40), "straight", 1)
		fill := newPass(rectBlock(8, 8), "straight", 0)
		fill.On, fill.Offset = outline, geometry.Pt(30, 5)
		first, plan := seated(t, item, outline, fill)
		if len(plan.Prints) != len(first.Prints) {
			t.Fatalf("%s: %d prints on %d, %d dropped", item.Shape, len(plan.Prints), len(first.Prints), plan.Choice().dropped)
		}
		back := 0
		for i, p := range plan.Prints {
			q := first.Prints[i]
			want := q.Origin.Add(fill.Offset.Turn(q.Turn))
			if p.Origin.Distance(want) < 1e-9 {
				continue
			}
			back++
			if item.Shape == "drum" {
				want.X -= item.Size.W
			} else {
				apex, angle := plan.layout.area.Flat.Apex, plan.layout.area.Flat.Angle
				want = want.Sub(apex).Turn(angle).Add(apex)
			}
			if p.Origin.Distance(want) > 1e-9 {
				t.Errorf("%s: print %d at %v, want it come round at %v", item.Shape, i+1, p.Origin, want)
			}
		}
		if most := first.Choice().Rows; back == 0 || back > most {
			t.Errorf("%s: %d prints came round, want some of one in each of %d rows", item.Shape, back, most)
		}
	}
}

// TestSeatsThatOverlap: prints of 80 with gaps of 20 leave openings that a square of 20 fills and
// touches the corners of, and one of 20.1 overlaps: that is told, and no print is left out.
func TestSeatsThatOverlap(t *testing.T) {
	for size, want := range map[geometry.Length]int{19: 0, 20: 0, 20.1: 12, 50: 12} {
		ground := newPass(rectBlock(80, 80), "straight", 20)
		dots := newPass(rectBlock(size, size), "straight", 0)
		dots.Between, dots.Name = ground, "dots"
		ip, err := tryPlan(rectItem(500, 400, 10), job.RightHand, ground, dots)
		if err != nil {
			t.Fatal(err)
		}
		told := 0
		for _, o := range ip.Overlaps {
			told += o.Prints
		}
		if told != want || len(ip.Passes[1].Prints) != 12 {
			t.Errorf("%v: %d told of %d prints", size, told, len(ip.Passes[1].Prints))
		}
	}
}
