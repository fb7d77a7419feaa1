package plan

import (
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"underlay/template/internal/sample"
)

// TestTotals is a worked case by hand (invented figures of the demo): 6 covers, on each 16
// ferns of 90 x 90 mm in two colours and 9 round pebbles of 28 mm in one; paint 90 ml a square
// metre, fern inked 0.55, pebble 0.9; 75 seconds a print, 40 more for the second colour.
func TestTotals(t *testing.T) {
	plan, err := New(sample.Example(t, "cushion-back"))
	if err != nil {
		t.Fatal(err)
	}
	fern := 6 * 16 * 0.09 * 0.09 * 0.55 * 90 / 2 // each of two colours
	pebble := 6 * 9 * math.Pi * 0.014 * 0.014 * 0.9 * 90
	want := Totals{
		Pieces: 6, Prints: 6 * (16 + 9),
		Rows: []Total{
			{"fern", "moss", 96, fern}, {"fern", "ochre", 96, fern}, {"pebble", "slate", 54, pebble},
		},
		Bench: (96*(75+40) + 54*75) * time.Second,
	}
	if d := cmp.Diff(want, NewTotals(plan), cmpopts.EquateApprox(0, 1e-9)); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestTotalsLeftOut: a figure is given only where the maker gave what it is made from.
func TestTotalsLeftOut(t *testing.T) {
	plan, err := New(sample.Example(t, "reading-nook"))
	if err != nil {
		t.Fatal(err)
	}
	got := NewTotals(plan)
	if got.Bench != 0 {
		t.Errorf("time at the bench is %v, with no pace given", got.Bench)
	}
	for _, r := range got.Rows {
		if r.Paint != 0 {
			t.Errorf("%s, %s: %v ml, with no paint-cover given", r.Block, r.Colour, r.Paint)
		}
	}
	// Both faces of 6 cushions with 16 prints each, and one runner of 145.
	if want := 6*2*16 + 145; got.Prints != want {
		t.Errorf("%d prints, want %d", got.Prints, want)
	}
}
