package sheets

import (
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

// crossesOn returns the middles of the crosses on a page, in the layout's frame.
func crossesOn(p paper.Page, s paper.Sheet) []geometry.Point {
	var all []geometry.Point
	for _, k := range furnitureOf(p).Strokes {
		if k.Pen != crossPen || len(k.Path()) != 2 {
			continue
		}
		m := k.Bounds().Centre().Sub(s.At)
		all = append(all, s.Area.Min.Add(geometry.Pt(m.X/geometry.Length(s.Scale.Across), m.Y/geometry.Length(s.Scale.Down))))
	}
	return all
}

func TestCrossesAreTheSamePointsOnBothSheets(t *testing.T) {
	joins := 0
	for _, c := range layAll(t, samplePanel()) {
		byName := map[string]int{}
		for i, s := range c.sheets {
			byName[s.Name] = i
		}
		for i, s := range c.sheets {
			for _, e := range []paper.Side{paper.RightSide, paper.BottomSide} {
				k, ok := byName[neighbour(s, e)]
				if !ok || c.overlap < LeastCrossed {
					continue
				}
				joins++
				other := c.sheets[k]
				from, to := joinLine(s, e)
				cut := paper.LeftSide
				if e == paper.BottomSide {
					cut = paper.TopSide
				}
				if a, b := joinLine(other, cut); a.Distance(from) > 1e-6 || b.Distance(to) > 1e-6 {
					t.Errorf("%s: %s meets %s on %v to %v and on %v to %v", c.name, s.Name, other.Name, from, to, a, b)
				}
				onLine := func(all []geometry.Point) (on []geometry.Point) {
					for _, p := range all {
						off, along := p.X-from.X, p.Y-from.Y
						if e == paper.BottomSide {
							off, along = along, off
						}
						if math.Abs(float64(off)) < 1e-6 && along > 0 && along < from.Distance(to) {
							on = append(on, p)
						}
					}
					return on
				}
				mine, theirs := onLine(crossesOn(c.pages[i], s)), onLine(crossesOn(c.pages[k], other))
				if len(mine) < 2 || len(mine) != len(theirs) {
					t.Errorf("%s: %s has %d crosses on its join with %s, which has %d", c.name, s.Name, len(mine), other.Name, len(theirs))
					continue
				}
				shared := s.Area.Intersect(other.Area)
				for j, p := range mine {
					if p.Distance(theirs[j]) > 1e-6 {
						t.Errorf("%s: %s puts a cross at %v, %s at %v", c.name, s.Name, p, other.Name, theirs[j])
					}
					if !shared.Grow(-crossReach(c.overlap) + geometry.Tolerance).Contains(p) {
						t.Errorf("%s: the cross at %v is not wholly in %v", c.name, p, shared)
					}
					for _, q := range mine[:j] {
						if p.Distance(q) < 2*paper.CrossArm {
							t.Errorf("%s: crosses at %v and %v run together", c.name, p, q)
						}
					}
				}
			}
		}
	}
	if joins < 50 {
		t.Errorf("only %d joins were looked at", joins)
	}
}

// Of two sheets that meet one has the line to cut, the other the line to lay the cut edge on.
func TestOneSheetOfTwoIsCut(t *testing.T) {
	for _, c := range layAll(t, samplePanel()) {
		for i, s := range c.sheets {
			var cuts, covers int
			for _, k := range furnitureOf(c.pages[i]).Strokes {
				b := k.Bounds()
				whole := b.W() >= s.Usable().W()-1e-6 || b.H() >= s.Usable().H()-1e-6
				switch {
				case k.Pen == trimPen && whole:
					cuts++
				case k.Pen == coverPen && whole:
					covers++
				}
			}
			wantCuts, wantCovers := 0, 0
			for _, e := range []paper.Side{paper.LeftSide, paper.TopSide, paper.RightSide, paper.BottomSide} {
				if neighbour(s, e) == "" {
					continue
				}
				if cut(e) {
					wantCuts++
				} else {
					wantCovers++
				}
			}
			if cuts != wantCuts || covers != wantCovers {
				t.Errorf("%s, %s: %d lines to cut and %d to cover, want %d and %d", c.name, s.Name, cuts, covers, wantCuts, wantCovers)
			}
		}
	}
}
