package sheets

import (
	"math"
	"slices"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

func TestBarsDoNotCrossTheirOwnText(t *testing.T) {
	for _, scale := range []float64{1, 1.02} {
		for _, usable := range []geometry.Length{30, 200} {
			all := bars(usable, scale, true)
			for _, d := range []paper.Drawing{
				barsAcross(all, usualBar), barsDown(all, usualBar), barsAcross(all, slimBar), barsDown(all, slimBar),
				barsAcross(all, leastBar), barsDown(all, leastBar),
			} {
				for _, l := range d.Labels {
					for _, k := range d.Strokes {
						if b := k.Bounds(); b.Grow(k.Pen.Width / 2).Overlaps(l.Box()) {
							t.Errorf("%q at %v is crossed at %v", l.Text, l.Box(), b)
						}
					}
				}
				if d.Bounds.Min != (geometry.Point{}) {
					t.Errorf("begins at %v", d.Bounds.Min)
				}
			}
		}
	}
}

// barEnds returns the lengths of the check bars that run across, or down.
func barEnds(d *paper.Drawing, down bool) []geometry.Length {
	var all []geometry.Length
	for _, k := range d.Strokes {
		if b := k.Bounds(); k.Pen == barPen && max(b.W(), b.H()) > 2*barTick+1e-6 && (b.H() > b.W()) == down {
			all = append(all, max(b.W(), b.H()))
		}
	}
	return all
}

func TestCheckBars(t *testing.T) {
	for _, inches := range []bool{false, true} {
		panel := samplePanel()
		panel.Inches = inches
		for _, c := range layAll(t, panel) {
			for i, p := range c.pages {
				s := c.sheets[i]
				for _, way := range []struct {
					down  bool
					scale float64
					room  geometry.Length
				}{{false, s.Scale.Across, s.Usable().W()}, {true, s.Scale.Down, s.Usable().H()}} {
					want, short := []geometry.Length{50, 2 * 25.4}, []geometry.Length{20, 0.75 * 25.4}
					if way.room < 60 {
						want = short
					}
					if !inches {
						want, short = want[:1], short[:1]
					}
					got := barEnds(furnitureOf(p), way.down)
					near := func(a geometry.Length) func(geometry.Length) bool {
						return func(b geometry.Length) bool { return math.Abs(float64(a*geometry.Length(way.scale)-b)) < 1e-9 }
					}
					usual := 0
					for _, g := range got {
						if slices.ContainsFunc(want, func(w geometry.Length) bool { return near(w)(g) }) {
							usual++
						} else if !slices.ContainsFunc(short, func(w geometry.Length) bool { return near(w)(g) }) {
							t.Errorf("%s, %s: a bar is drawn %v long, want one of %v", c.name, s.Name, g, want)
						}
					}
					// Where text stands everywhere there may be no place for a bar; where signs do, for
					// short ones alone.
					switch {
					case c.name == "tiny sheets":
					case slices.Contains([]string{"small sheets", "squared paper", "text everywhere", "lying and corrected"}, c.name):
						if len(got) == 0 {
							t.Errorf("%s, %s: no bar, down: %v", c.name, s.Name, way.down)
						}
					case usual != len(want):
						t.Errorf("%s, %s: bars %v, want %v", c.name, s.Name, got, want)
					}
				}
				corrected := false
				for _, l := range furnitureOf(p).Labels {
					corrected = corrected || strings.Contains(l.Text, "corrected")
				}
				bars := len(barEnds(furnitureOf(p), false)) + len(barEnds(furnitureOf(p), true))
				if bars > 0 && corrected != (c.scale != paper.Scale{}) {
					t.Errorf("%s, %s: says corrected: %v", c.name, s.Name, corrected)
				}
			}
		}
	}
}

// TestCorrectedBarsSaySo, whether the printer makes things too small or too large.
func TestCorrectedBarsSaySo(t *testing.T) {
	for scale, want := range map[float64][]string{1: {"50 mm"}, 1.004: {"50 mm,", "corrected"}, 0.996: {"50 mm,", "corrected"}} {
		if got := bars(200, scale, false)[0].label; !slices.Equal(got, want) {
			t.Errorf("drawn %v as long, a bar says %v, want %v", scale, got, want)
		}
	}
}

func TestLyingSheetsTurnTheCorrection(t *testing.T) {
	tried := false
	for _, c := range layAll(t, samplePanel()) {
		if c.name != "lying and corrected" {
			continue
		}
		tried = c.pages[0].Size.W > c.pages[0].Size.H
		for i, p := range c.pages {
			if across := barEnds(furnitureOf(p), false); len(across) != 1 || math.Abs(float64(across[0])-50*250/252.) > 1e-9 {
				t.Errorf("%s: across a lying page runs the printer's way down: %v", c.sheets[i].Name, across)
			}
			if down := barEnds(furnitureOf(p), true); len(down) != 1 || math.Abs(float64(down[0])-50*180/179.2) > 1e-9 {
				t.Errorf("%s: down a lying page runs the printer's way across: %v", c.sheets[i].Name, down)
			}
		}
	}
	if !tried {
		t.Error("the sheets do not lie")
	}
}
