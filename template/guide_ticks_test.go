package template

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"testing"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/internal/sample"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

// checkTicks looks, at both ends of every line a tape or a rule can be laid along, for a tick
// outside the cloth and within the reach.
func checkTicks(t *testing.T, p *papers) {
	for _, g := range p.guides {
		for _, down := range []bool{false, true} {
			g.checkRun(t, down, p.job.Paper.Reach)
		}
	}
}

// checkRun looks for the ticks of the lines that run up and down the cloth, or of those that
// run across it.
func (g guideRead) checkRun(t *testing.T, down bool, reach geometry.Length) {
	// In the frame of the ticks a line runs up and down.
	turn := func(q geometry.Point) geometry.Point {
		if down {
			return geometry.Pt(q.Y, q.X)
		}
		return q
	}
	cloth := geometry.Rect{Min: turn(g.cloth.Min), Max: turn(g.cloth.Max)}
	type tick struct {
		x     geometry.Length
		below bool
		of    *pdfread.Path
	}
	ticks := map[int][]tick{} // by tenths of a millimetre
	tenths := func(x geometry.Length) int { return int(math.Round(float64(x * 10))) }
	for _, s := range g.sheets {
		for _, l := range s.lines.all {
			a, b := turn(l.a), turn(l.b)
			if (a.X-b.X).Abs() > off || a.Distance(b) < 2 {
				continue
			}
			lo, hi := min(a.Y, b.Y), max(a.Y, b.Y)
			above := lo >= cloth.Min.Y-reach-off && hi < cloth.Min.Y
			below := lo > cloth.Max.Y && hi <= cloth.Max.Y+reach+off
			if above || below {
				ticks[tenths(a.X)] = append(ticks[tenths(a.X)], tick{(a.X + b.X) / 2, below, l.of})
			}
		}
	}
	must := func(what string, x geometry.Length, is func(*pdfread.Path) bool) {
		var above, below bool
		for d := -1; d <= 1; d++ {
			for _, k := range ticks[tenths(x)+d] {
				if (k.x-x).Abs() <= off && is(k.of) {
					above, below = above || !k.below, below || k.below
				}
			}
		}
		if !above || !below {
			t.Errorf("%s: %s at %v (down: %v) has its ticks: %v, %v", g.face.Label(), what, x, down, above, below)
		}
	}
	must("the crease", (cloth.Min.X+cloth.Max.X)/2, func(of *pdfread.Path) bool { return len(of.Dashes) > 0 })
	thin := geometry.Length(math.Inf(1))
	for _, pass := range g.face.Passes {
		for _, x := range edges(pass, turn) {
			if x < cloth.Min.X-geometry.Tolerance || x > cloth.Max.X+geometry.Tolerance {
				continue // of a print across the seam of a shade, which comes in on the other side
			}
			must("an edge of "+pass.Pass.Name, x, func(of *pdfread.Path) bool {
				if len(of.Dashes) == 0 {
					thin = min(thin, of.Width)
				}
				return len(of.Dashes) == 0
			})
		}
		// A pass that is seated on another is placed by that.
		if pass.Tape == nil || pass.Pass.Between != nil || pass.Pass.On != nil {
			continue
		}
		tapes := pass.Tape.Across
		if down {
			tapes = pass.Tape.Down
		}
		for _, x := range tapes {
			// Wide lines are twice as wide as narrow ones (ISO 128-2).
			must("a tape of "+pass.Pass.Name, x, func(of *pdfread.Path) bool {
				return len(of.Dashes) == 0 && (math.IsInf(float64(thin), 1) || of.Width >= 2*thin-0.001)
			})
		}
	}
}

// edges returns the edges of the columns of a pass, in the frame of the ticks; none where they
// are not in line, or in more than four ways to be moved.
func edges(p plan.FacePass, turn func(geometry.Point) geometry.Point) []geometry.Length {
	if !p.ColumnsInLine && !p.RowsInLine {
		return nil
	}
	pitch := turn(geometry.Pt(p.Choice().Pitch.Across, p.Choice().Pitch.Down)).X
	all, moves := map[int]geometry.Length{}, map[int]bool{}
	for _, print := range p.Prints {
		if math.Mod(float64(print.Turn), 90) != 0 {
			return nil
		}
		b := print.Outline.Bounds()
		lo, hi := turn(b.Min).X, turn(b.Max).X
		all[int(math.Round(float64(lo*50)))], all[int(math.Round(float64(hi*50)))] = lo, hi
		moves[int(math.Round(math.Mod(float64((lo-turn(p.Prints[0].Outline.Bounds().Min).X)/pitch)+1000.001, 1)*100))] = true
	}
	if len(moves) > 4 {
		return nil
	}
	return slices.Collect(maps.Values(all))
}

// TestTicksSayTheirNamesAtBothEnds reads the names and distances by the ticks of a roomy guide.
func TestTicksSayTheirNamesAtBothEnds(t *testing.T) {
	job := sample.Examples(t)["reading-nook.toml"]
	plan, err := plan.New(job)
	if err != nil {
		t.Fatal(err)
	}
	face := plan.Items[0].Faces()[0]
	g := guide.Draw(job, face)
	cloth := face.Item.Area.Cloth
	// By hand: five fern prints of 90 mm, 1 mm apart, leave (500 - 5 * 90 - 4 * 1) / 2 = 23 mm a
	// side: less than the 25 mm asked, so that there are four, and (500 - 4 * 90 - 3 * 1) / 2 = 68.5.
	names := []string{"centre 250", "start tape", "tape", "68.5", "158.5", "159.5", "249.5", "250.5", "340.5", "341.5", "431.5"}
	for name, n := range map[string]int{"column ": 4, "row ": 4} {
		for i := range n {
			names = append(names, name+strconv.Itoa(i+1))
		}
	}
	for _, name := range names {
		var above, below, left, right int
		for _, l := range g.Labels {
			if l.Text != name {
				continue
			}
			switch b := l.Extent(); {
			case b.Max.Y < cloth.Min.Y:
				above++
			case b.Min.Y > cloth.Max.Y:
				below++
			case b.Max.X < cloth.Min.X:
				left++
			case b.Min.X > cloth.Max.X:
				right++
			default:
				t.Errorf("%q stands on the cloth", name)
			}
		}
		if slices.Contains([]string{"centre 250", "start tape", "249.5", "250.5"}, name) {
			if left != 1 || right != 1 {
				t.Errorf("%q: %d left, %d right", name, left, right)
			}
		}
		if above != below || left != right || above+left == 0 {
			t.Errorf("%q: %d above, %d below, %d left, %d right", name, above, below, left, right)
		}
	}
}
