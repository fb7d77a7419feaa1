package plan

import (
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/messages"
	"underlay/template/internal/oracle"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// TestCentredLattice: with a step of 1/2 brick and half-drop are the centred rectangular
// lattice, plane group cm (International Tables for Crystallography, Volume A): two points a
// cell, at (0, 0) and (1/2, 1/2). The cell of a brick is a pitch wide and two pitches high,
// that of a half-drop two wide and one high.
func TestCentredLattice(t *testing.T) {
	for repeat, cell := range map[job.Repeat]job.Spacing{"brick": {Across: 1, Down: 2}, "half-drop": {Across: 2, Down: 1}} {
		plan := planned(t, rectItem(800, 700, 20), newPass(rectBlock(60, 40), repeat, 2))
		pitch := plan.Choice().Pitch
		a, b := cell.Across*pitch.Across, cell.Down*pitch.Down
		first := plan.Prints[0].Origin
		part := func(l geometry.Length) float64 { return float64(l) - math.Floor(float64(l)+1e-9) }
		seen := map[[2]float64]int{}
		for _, p := range plan.Prints {
			d := p.Origin.Sub(first)
			x, y := math.Round(part(d.X/a)*1e6)/1e6, math.Round(part(d.Y/b)*1e6)/1e6
			seen[[2]float64{math.Abs(x), math.Abs(y)}]++
		}
		if len(seen) != 2 || seen[[2]float64{0, 0}] < 20 || seen[[2]float64{0.5, 0.5}] < 20 {
			t.Errorf("%s: places in the cell %v", repeat, seen)
		}
	}
}

// TestHoneycombDensity: circles that touch cover pi / (2 sqrt 3) = 0.9069 of the plane, the
// most there is (Lagrange; Thue).
func TestHoneycombDensity(t *testing.T) {
	const d = 10
	plan := planned(t, rectItem(1000, 1000, 0), newPass(roundBlock(d), "honeycomb", 0))
	pitch := plan.Choice().Pitch
	if got := math.Pi * d * d / 4 / float64(pitch.Across*pitch.Down); math.Abs(got-0.9069) > 5e-5 {
		t.Errorf("the cell is covered by %v of it", got)
	}
	if got := math.Pi * d * d / 4 * float64(len(plan.Prints)) / 1e6; math.Abs(got-0.9069) > 0.02 {
		t.Errorf("the cloth is covered by %v of it", got)
	}
	// Every print away from the edge touches six others.
	for _, p := range plan.Prints {
		if p.Origin.Distance(geometry.Pt(500, 500)) > 100 {
			continue
		}
		six := 0
		for _, q := range plan.Prints {
			if math.Abs(float64(p.Origin.Distance(q.Origin)-d)) < 1e-9 {
				six++
			}
		}
		if six != 6 {
			t.Fatalf("the print at %v touches %d", p.Origin, six)
		}
	}
	// Hexagons that touch leave nothing plain: area of the face and of the cell agree.
	hex := hexBlock(30)
	cell := planned(t, rectItem(500, 500, 0), newPass(hex, "honeycomb", 0)).Choice().Pitch
	if got, want := float64(cell.Across*cell.Down), hex.Face.Area(); math.Abs(got-want) > 1e-9*want {
		t.Errorf("cell of %v for a hexagon of %v", got, want)
	}
}

// TestMovedByHand has brick and half-drop worked by hand.
func TestMovedByHand(t *testing.T) {
	for _, c := range []struct {
		name          string
		item          *job.Item
		pass          *job.Pass
		across, down  job.Centring
		count         int
		rows, columns []int
	}{
		// 300 x 300, face 100, touching: 3 + 2 + 3 where the row through the centre has the
		// joint on it, against 2 + 3 + 2 where it has a print on it.
		{"brick", rectItem(300, 300, 0), newPass(rectBlock(100, 100), "brick", 0), job.OnJoint, job.OnPrint, 8, []int{3, 2, 3}, nil},
		{"half-drop", rectItem(300, 300, 0), newPass(rectBlock(100, 100), "half-drop", 0), job.OnPrint, job.OnJoint, 8, nil, []int{3, 2, 3}},
		// 350 across has 50 to spare, but centred only 25 on either side: a moved row is 50 off
		// and holds 2 still.
		{"brick with room", rectItem(350, 300, 0), newPass(rectBlock(100, 100), "brick", 0), job.OnJoint, job.OnPrint, 8, []int{3, 2, 3}, nil},
	} {
		got := planned(t, c.item, c.pass).Choice()
		if got.Across != c.across || got.Down != c.down || got.Count != c.count {
			t.Errorf("%s: %+v", c.name, got)
		}
		if d := cmp.Diff(c.rows, got.RowCounts); d != "" {
			t.Errorf("%s, rows (-want +got):\n%s", c.name, d)
		}
		if d := cmp.Diff(c.columns, got.ColumnCounts); d != "" {
			t.Errorf("%s, columns (-want +got):\n%s", c.name, d)
		}
	}
}

// TestStepThird: with 1/3, row k is moved by frac(k / 3), row 0 being the one through the
// centre, or next below it.
func TestStepThird(t *testing.T) {
	for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
		pass := newPass(rectBlock(29, 19), "brick", 1)
		pass.Step, pass.CentreAcross, pass.CentreDown = 1.0/3, job.OnPrint, down
		for _, p := range planned(t, rectItem(400, 300, 10), pass).Prints {
			k := float64(p.Origin.Y-150) / 20
			if down == job.OnJoint {
				k -= 0.5
			}
			row := math.Round(k)
			want := row/3 - math.Floor(row/3)
			x := float64(p.Origin.X-200)/30 - want
			if math.Abs(k-row) > 1e-9 || math.Abs(x-math.Round(x)) > 1e-9 {
				t.Errorf("%s: print at %v is not on row %v moved by %v", down, p.Origin, row, want)
			}
		}
	}
}

// TestDiagonal: grid and blocks are turned together, print or joint on the centre.
func TestDiagonal(t *testing.T) {
	pass := newPass(rectBlock(50, 30), "diagonal", 2)
	pass.GridTurn = 30
	plan := planned(t, rectItem(600, 500, 20), pass)
	c := plan.Choice()
	for _, p := range plan.Prints {
		if math.Abs(float64(p.Turn-30)) > 1e-9 {
			t.Errorf("turned by %v", p.Turn)
		}
		d := p.Origin.Sub(geometry.Pt(300, 250)).Turn(-30)
		x, y := float64(d.X/c.Pitch.Across), float64(d.Y/c.Pitch.Down)
		if c.Across == job.OnJoint {
			x += 0.5
		}
		if c.Down == job.OnJoint {
			y += 0.5
		}
		if math.Abs(x-math.Round(x)) > 1e-9 || math.Abs(y-math.Round(y)) > 1e-9 {
			t.Errorf("the print at %v is not on the turned grid", p.Origin)
		}
	}
	if c.Columns != 0 || c.Rows != 0 || len(c.RowCounts) == 0 {
		t.Errorf("rows and columns %+v", c)
	}
}

// TestTurns: the matrix is laid over rows and columns from the top left, and repeated.
func TestTurns(t *testing.T) {
	pass := newPass(rectBlock(50, 50), "straight", 1)
	pass.Turns = [][]int{{0, 90}, {270, 180}, {0, 0}}
	for _, item := range []*job.Item{rectItem(400, 500, 20), roundItem(500, 20)} {
		plan := planned(t, item, pass)
		first := geometry.Site{I: 1 << 20, J: 1 << 20}
		for _, p := range plan.Prints {
			first = geometry.Site{I: min(first.I, p.Column), J: min(first.J, p.Row)}
			if want := pass.Turns[(p.Row-1)%3][(p.Column-1)%2]; p.Turn != geometry.Angle(want) {
				t.Errorf("%s, row %d, column %d: turned by %v, want %d", item.Shape, p.Row, p.Column, p.Turn, want)
			}
		}
		if first.I != 1 || first.J != 1 {
			t.Errorf("%s: rows and columns begin at %v", item.Shape, first)
		}
	}
}

// TestRangeOnMovedRows: the gap opens until the border is as asked; the farthest print on
// either side of the centre decides.
func TestRangeOnMovedRows(t *testing.T) {
	pass := newPass(rectBlock(60, 40), "brick", 0)
	pass.Gap, pass.Step = evenGaps(1, 30), 1.0/3
	c := planned(t, rectItem(400, 300, 20), pass).Choice()
	if b := min(c.Border.Left, c.Border.Right); !near(b, 20) {
		t.Errorf("border %v, gap %v", c.Border, c.Gap)
	}
	if !near(c.Border.Top, 20) || !near(c.Border.Bottom, 20) {
		t.Errorf("border %v, gap %v", c.Border, c.Gap)
	}
	// In a honeycomb one gap rules both ways, so one pair of borders is as asked.
	comb := newPass(roundBlock(40), "honeycomb", 0)
	comb.Gap = evenGaps(1, 30)
	c = planned(t, rectItem(400, 300, 20), comb).Choice()
	if !near(min(c.Border.Left, c.Border.Top), 20) || c.Border.Least() < 20-1e-9 || c.Gap.Across != c.Gap.Down {
		t.Errorf("honeycomb: border %v, gap %v", c.Border, c.Gap)
	}
}

// TestTooMany: a job may have 200,000 prints over all its items.
func TestTooMany(t *testing.T) {
	block := rectBlock(1, 1)
	_, err := tryPlan(rectItem(900, 900, 0), job.RightHand, newPass(block, "straight", 0))
	if err == nil || !strings.Contains(err.Error(), "a job may have 200,000; write a larger block") {
		t.Errorf("810,000 prints: %v", err)
	}
	one := newPass(block, "straight", 0)
	two := newPass(block, "brick", 0)
	two.Name = "again"
	if _, err := tryPlan(rectItem(400, 400, 0), job.RightHand, one); err != nil {
		t.Errorf("160,000 prints: %v", err)
	}
	_, err = tryPlan(rectItem(400, 400, 0), job.RightHand, one, two)
	if err == nil || !strings.Contains(err.Error(), "a job may have 200,000") {
		t.Errorf("320,000 prints in two passes: %v", err)
	}
}

// TestNoneFits: what is said where no print fits names what is in the way and what to write.
func TestNoneFits(t *testing.T) {
	seatedOn := newPass(rectBlock(60, 60), "straight", 1)
	between := newPass(rectBlock(60, 60), "straight", 0)
	between.Name, between.Between = "seats", seatedOn
	on := newPass(rectBlock(60, 60), "straight", 0)
	on.Name, on.On, on.Offset = "outlines", seatedOn, geometry.Pt(100, 0)
	zoned := rectItem(100, 100, 10)
	zoned.Zones = []job.Zone{{Name: "pocket", Rect: geometry.RectAt(geometry.Pt(45, 45), geometry.Size{W: 10, H: 10})}}
	for _, c := range []struct {
		item   *job.Item
		passes []*job.Pass
		want   string
	}{
		{rectItem(100, 200, 10), []*job.Pass{newPass(rectBlock(90, 30), "brick", 1)},
			`the block "fern", 90 × 30 mm, is 10 mm too wide for the printable area, 80 × 180 mm; make the item that much larger, the border less, or write a block of at most 80 × 30 mm`},
		{rectItem(100, 100, 10), []*job.Pass{newPass(rectBlock(90, 95), "straight", 1)}, "10 mm too wide and 15 mm too high"},
		{rectItem(200, 100, 10), []*job.Pass{newPass(rectBlock(90, 95), "straight", 1)}, "15 mm too high"},
		{zoned, []*job.Pass{newPass(rectBlock(60, 60), "straight", 1)}, `no whole print of the block "fern" fits; write a smaller border, another repeat or a smaller block`},
		{rectItem(100, 100, 10), []*job.Pass{seatedOn, between}, `"straight" has no opening closed by four prints with room for the block "fern"; write open-edges = true`},
		{rectItem(100, 100, 10), []*job.Pass{seatedOn, on}, `set on those of "straight", lies wholly on the area; write a smaller offset or a smaller block`},
		{drumItem(200, 100, 10), []*job.Pass{newPass(rectBlock(250, 30), "straight", 1)}, "no print fits round the shade; write a smaller block"},
		{coneItem(100, 200, 80, 10), []*job.Pass{newPass(rectBlock(30, 90), "straight", 1)}, `the block "fern" is 90 mm high and the printable slope of the shade 74.34 mm`},
		{rectItem(100, 300, 10), []*job.Pass{newPass(rectBlock(90, 30), "frame", 1)}, `no print fits along the top: the block "fern" is 90 mm wide and the printable area 80 mm`},
		{rectItem(300, 100, 10), []*job.Pass{newPass(rectBlock(50, 50), "frame", 1)}, `the prints along the top would lie on those along the bottom; write a smaller block, or sides = ["top"]`},
		{rectItem(170, 500, 10), []*job.Pass{newPass(rectBlock(40, 90), "frame", 1)}, `the prints along the left side would lie on those along the right; write a smaller block, or sides = ["top", "bottom"]`},
		{roundItem(100, 10), []*job.Pass{newPass(rectBlock(60, 60), "rings", 1)}, `no whole print of the block "fern" fits`},
	} {
		_, err := tryPlan(c.item, job.RightHand, c.passes...)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("said:\n%v\nwant in it:\n%s", err, c.want)
			continue
		}
		messages.Check(t, "", err)
	}
}

// TestRangeOnARound: on round cloth the gap across is opened with the gap down at its least, and
// the other way round; where both then push a print off, they give way in the same share, and no
// print is lost. By brute force, gap by gap.
func TestRangeOnARound(t *testing.T) {
	shared := 0
	for d := geometry.Length(200); d < 400; d += 13 {
		item, pass := roundItem(d, 10), newPass(rectBlock(40, 30), "straight", 0)
		pass.Gap = evenGaps(1, 9)
		p := planned(t, item, pass)
		c := p.Choice()
		least := newPass(rectBlock(40, 30), "straight", 1)
		least.CentreAcross, least.CentreDown = c.Across, c.Down
		start := planned(t, item, least)
		if start.Choice().Count != c.Count {
			t.Errorf("%v across: %d prints, %d with the least gap", d, c.Count, start.Choice().Count)
		}
		// Prints as far from the middle as other gaps put them.
		keeps := func(across, down geometry.Length) bool {
			for _, q := range start.Prints {
				at := q.Origin.Sub(geometry.Pt(d/2, d/2))
				at = geometry.Pt(d/2+at.X*(40+across)/41, d/2+at.Y*(30+down)/31)
				if !oracle.OutlineAt(pass.Block, at, 0).Fits(item, 1e-6) {
					return false
				}
			}
			return true
		}
		open := func(keeps func(geometry.Length) bool) geometry.Length {
			g := geometry.Length(1)
			for g < 9 && keeps(g+0.001) {
				g += 0.001
			}
			return g
		}
		a := open(func(g geometry.Length) bool { return keeps(g, 1) })
		b := open(func(g geometry.Length) bool { return keeps(1, g) })
		if c.Columns == 1 || len(c.RowCounts) == 1 {
			continue
		}
		share := geometry.Length(1)
		for share > 0 && !keeps(1+share*(a-1), 1+share*(b-1)) {
			share -= 0.0001
		}
		if share < 0.999 {
			shared++
		}
		if (c.Gap.Across-1-share*(a-1)).Abs() > 0.01 || (c.Gap.Down-1-share*(b-1)).Abs() > 0.01 {
			t.Errorf("%v across: gaps %v, by hand %v of %v and %v", d, c.Gap, share, a, b)
		}
	}
	if shared < 3 {
		t.Errorf("only %d times did the gaps give way to each other", shared)
	}
}
