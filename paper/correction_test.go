package paper

import (
	"math"
	"testing"
)

func TestCorrectionUndoesThePrinter(t *testing.T) {
	// A printer that makes 180 mm come out 179.2 makes a bar drawn 180*scale come out 180.
	s := Correction(179.2, 248.9)
	for _, c := range []struct{ drawn, makes, want float64 }{
		{180 * s.Across, 179.2 / 180, 180},
		{250 * s.Down, 248.9 / 250, 250},
	} {
		if got := c.drawn * c.makes; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("comes out %g, want %g", got, c.want)
		}
	}
	if s := Correction(0, 0); s != (Scale{1, 1}) {
		t.Errorf("not measured: %v", s)
	}
}

func TestScaleOnPage(t *testing.T) {
	s := Scale{1.01, 0.99}
	if got := s.OnPage(false); got != s {
		t.Errorf("upright: %v", got)
	}
	if got := s.OnPage(true); got != (Scale{0.99, 1.01}) {
		t.Errorf("lying: %v; its x is the printer's way down", got)
	}
	if got := (Scale{}).OnPage(true); got != (Scale{1, 1}) {
		t.Errorf("no correction: %v", got)
	}
}
