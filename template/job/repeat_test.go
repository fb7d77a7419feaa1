package job

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestRepeats: what a maker may set out on what. A frame needs four sides, rings a round edge;
// round a drum a honeycomb closes, on the arcs of a cone it cannot keep one gap. Corners need
// four of them, and what is strewn does not close round a shade.
func TestRepeats(t *testing.T) {
	for shape, want := range map[Shape][]Repeat{
		Rectangle: {Straight, Brick, HalfDrop, Honeycomb, Diagonal, Frame, One, Corners, Placed, Tossed},
		Round:     {Straight, Brick, HalfDrop, Honeycomb, Diagonal, Rings, One, Placed, Tossed},
		Outline:   {Straight, Brick, HalfDrop, Honeycomb, Diagonal, One, Placed, Tossed},
		Drum:      {Straight, Brick, HalfDrop, Honeycomb, One, Placed},
		Cone:      {Straight, Brick, HalfDrop, One, Placed},
		"":        nil,
	} {
		if diff := cmp.Diff(want, RepeatsOn(shape)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", shape, diff)
		}
	}
	for name, is := range map[string]func(Repeat) bool{
		"lattice": Repeat.Lattice, "stepped": Repeat.Stepped, "opens": Repeat.Opens, "slanted": Repeat.Slanted,
		"one gap": Repeat.OneGap, "framed": Repeat.Framed, "ringed": Repeat.Ringed,
		"single": Repeat.Single, "gapped": Repeat.Gapped,
	} {
		var got []Repeat
		for _, r := range Repeats() {
			if is(r) {
				got = append(got, r)
			}
		}
		want := map[string][]Repeat{
			"lattice": {Straight, Brick, HalfDrop, Honeycomb, Diagonal}, "stepped": {Brick, HalfDrop}, "opens": {Straight},
			"slanted": {Diagonal}, "one gap": {Honeycomb, Rings, Tossed}, "framed": {Frame}, "ringed": {Rings},
			"single": {One, Corners, Placed, Tossed}, "gapped": {Straight, Brick, HalfDrop, Honeycomb, Diagonal, Frame, Rings, Tossed},
		}[name]
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

func TestTurns(t *testing.T) {
	for _, c := range []struct {
		turns         Turns
		some, all     bool
		column, row   int
		at            int
		columns, rows int // of 7 by 7 those in whole matrices
		width, height float64
	}{
		{Turns{{0}}, false, false, 3, 5, 0, 7, 7, 60, 40},
		{Turns{{90}}, true, true, 1, 1, 90, 7, 7, 40, 60},
		{Turns{{0, 90}, {270, 180}}, true, false, 1, 2, 270, 6, 6, 60, 60},
		{Turns{{0, 90, 180}}, true, false, 0, 0, 180, 6, 7, 60, 60},
		{Turns{{0, 90, 180}}, true, false, -1, -4, 90, 6, 7, 60, 60},
		{Turns{{0}, {180}, {180}}, false, false, 9, 4, 0, 7, 6, 60, 40},
	} {
		if c.turns.AnyAside() != c.some || c.turns.AllAside() != c.all || c.turns.Mixed() != (c.some && !c.all) {
			t.Errorf("%v: aside %v, %v", c.turns, c.turns.AnyAside(), c.turns.AllAside())
		}
		if got := c.turns.At(c.column, c.row); float64(got) != float64(c.at) {
			t.Errorf("%v at column %d, row %d: %v", c.turns, c.column, c.row, got)
		}
		if columns, rows := c.turns.Whole(7, 7); columns != c.columns || rows != c.rows {
			t.Errorf("%v in 7 by 7: %d by %d", c.turns, columns, rows)
		}
		p := &Pass{Turns: c.turns, Block: &Block{}}
		p.Block.Size.W, p.Block.Size.H = 60, 40
		if got := p.Place(); float64(got.W) != c.width || float64(got.H) != c.height {
			t.Errorf("%v: a place is %v", c.turns, got)
		}
	}
}
