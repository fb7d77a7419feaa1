package guide

import (
	"testing"

	"underlay/geometry"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/plan"
)

// Joins keep 5 mm from creases and tape lines wherever the sheets as they lie could be moved, all
// together, such that they do.
func TestJoinsKeepClear(t *testing.T) {
	joins, near := 0, 0
	for name, j := range sample.Examples(t) {
		p, err := plan.New(j)
		if err != nil {
			t.Fatal(err)
		}
		for _, ip := range p.Items {
			for _, face := range ip.Laid() {
				_, tiling, err := Spread(j, face)
				if err != nil {
					t.Fatal(err)
				}
				across, down := map[geometry.Length]bool{}, map[geometry.Length]bool{}
				for _, s := range tiling.Sheets {
					if s.Left != "" {
						across[s.Kept.Min.X] = true
					}
					if s.Above != "" {
						down[s.Kept.Min.Y] = true
					}
				}
				c := ip.Area.Cloth.Centre()
				upright, level := []geometry.Length{c.X}, []geometry.Length{c.Y}
				for _, pass := range face.Passes {
					if pass.Tape != nil {
						upright, level = append(upright, pass.Tape.Across...), append(level, pass.Tape.Down...)
					}
				}
				area := tiling.Sheets[0].Area
				for _, d := range []struct {
					at                   map[geometry.Length]bool
					lines                []geometry.Length
					n                    int
					usable, layout, from geometry.Length
				}{
					{across, upright, tiling.Columns, area.W(), tiling.Layout.W(), tiling.Layout.Min.X},
					{down, level, tiling.Rows, area.H(), tiling.Layout.H(), tiling.Layout.Min.Y},
				} {
					clear := func(at geometry.Length) bool {
						for _, l := range d.lines {
							if (l - at).Abs() < 5-1e-6 {
								return false
							}
						}
						return true
					}
					can := false
					v := j.Paper.Overlap
					slack := geometry.Length(d.n)*(d.usable-v) + v - d.layout
					for back := geometry.Length(0); back <= slack; back += 0.25 {
						all := true
						for i := 1; i < d.n; i++ {
							all = all && clear(d.from-back+geometry.Length(i)*(d.usable-v)+v/2)
						}
						can = can || all
					}
					for at := range d.at {
						joins++
						if clear(at) {
							continue
						}
						near++
						if can {
							t.Errorf("%s, %s: a join at %v is within 5 mm of one of %v, and need not be", name, face.Label(), at, d.lines)
						}
					}
				}
			}
		}
	}
	if joins < 40 || near > joins/10 {
		t.Errorf("%d of %d joins are within 5 mm of a crease or a tape line", near, joins)
	}
}

// What a shorter reach is said to save it does save, when it is written into the job.
func TestShorterReachSavesWhatItSays(t *testing.T) {
	const long = "[paper]\nreach = '25 mm'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n" +
		"[[item]]\nname = 'runner'\nsize = '35 x 120 cm'\nborder = '15 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	at := func(reach geometry.Length) (*plan.Plan, plan.FacePlan) {
		p := planOf(t, long)
		p.Job.Paper.Reach, p.Job.Paper.LeastReach = reach, reach
		return p, p.Items[0].Faces()[0]
	}
	p, face := at(25)
	sheets, now, saves := ShorterReach(p, face)
	if !saves {
		t.Fatal("a shorter reach saves nothing")
	}
	for reach, want := range map[geometry.Length]int{25: now, job.ShortReach: sheets} {
		p, face := at(reach)
		_, tiling, err := Spread(p.Job, face)
		if err != nil || len(tiling.Sheets) != want {
			t.Errorf("a reach of %v takes %d sheets, said are %d; %v", reach, len(tiling.Sheets), want, err)
		}
	}
}

// What no join should cut is handed to the planner: every print's outline, every arrow.
func TestSheetsKnowWhatTheyCut(t *testing.T) {
	p := planOf(t, "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n")
	face := p.Items[0].Faces()[0]
	l := drawIn(p.Job, face, bounds(p.Items[0], p.Job)).sheetLayout(p.Job.Paper.LeastReach)
	prints := face.Passes[0].Prints
	for _, print := range prints {
		whole := 0
		for _, b := range l.Whole {
			if b.Weight == wholePrint && b.Rect.Holds(print.Outline.Bounds()) && b.Rect.W() < 91 {
				whole++
			}
		}
		if whole != 1 {
			t.Errorf("print %d is kept whole %d times", print.Number, whole)
		}
	}
	small := 0
	for _, b := range l.Whole {
		if b.Weight == 1 {
			small++
		}
	}
	if small < 2*len(prints) {
		t.Errorf("%d arrows, numbers and names kept whole, of %d prints", small, len(prints))
	}
}
