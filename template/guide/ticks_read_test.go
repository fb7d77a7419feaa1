package guide

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

// checkTicks looks, at both ends of every line a tape or a rule can be laid along, for a tick
// outside the cloth and within the reach; and at every text by the ticks for the tick it stands at.
func checkTicks(t *testing.T, g guideRead) {
	for _, down := range []bool{false, true} {
		g.checkRun(t, down, g.job.Paper.Reach)
	}
	g.checkSlants(t)
	ticks := g.ticks(g.job.Paper.Reach)
	g.checkFigures(t, g.job.Units, ticks)
	g.checkStruck(t, ticks)
	if g.job.Paper.Reach >= 25 {
		g.checkStartTape(t)
		g.checkNames(t)
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
	if g.face.Item.Item.Shape == job.Drum && down {
		cloth.Max.Y += g.face.Item.Item.Shade.Lap // no tick on the lap of the seam
	}
	type tick struct {
		x     geometry.Length
		below bool
		of    *pdfread.Path
	}
	ticks := map[int][]tick{} // by tenths of a millimetre
	tenths := func(x geometry.Length) int { return int(math.Round(float64(x * 10))) }
	for _, s := range g.sheets {
		for _, l := range s.Lines.All {
			a, b := turn(l.A), turn(l.B)
			if (a.X-b.X).Abs() > off || a.Distance(b) < 2 {
				continue
			}
			lo, hi := min(a.Y, b.Y), max(a.Y, b.Y)
			above := lo >= cloth.Min.Y-reach-off && hi < cloth.Min.Y
			below := lo > cloth.Max.Y && hi <= cloth.Max.Y+reach+off
			if f := g.face.Item.Area.Flat; f != nil && !down {
				// The arc of the narrow end dips into the bounds of the cloth.
				above = lo > cloth.Min.Y && hi < f.At(f.Inner, 0).Y
			}
			if above || below {
				ticks[tenths(a.X)] = append(ticks[tenths(a.X)], tick{(a.X + b.X) / 2, below, l.Of})
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
	if g.face.Item.Area.Flat != nil && down {
		return // no straight line runs across a cone
	}
	crooked := g.face.Item.Item.Shape == job.FourSided
	if crooked {
		g.checkCrookedCrease(t, down)
	}
	if m := g.face.Item.Moves; !crooked && (m == nil || m.Down != down) {
		must("the crease", (cloth.Min.X+cloth.Max.X)/2, func(of *pdfread.Path) bool { return len(of.Dashes) > 0 })
	}
	thin := geometry.Length(math.Inf(1))
	for _, pass := range g.face.Passes {
		for _, x := range edges(pass, turn) {
			if x < cloth.Min.X-geometry.Tolerance { // across the seam of a drum it comes in on the other side
				x += cloth.W()
			}
			if x > cloth.Max.X+geometry.Tolerance {
				x -= cloth.W()
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
	if !p.ColumnsInLine && !p.RowsInLine && !p.Pass.Framed() {
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
	if len(moves) > 4 && !p.Pass.Framed() {
		return nil
	}
	return slices.Collect(maps.Values(all))
}

// mark is a straight line outside the cloth that is no more than a tick: no cross, no bar.
type mark struct{ a, b geometry.Point }

// ticks returns the ticks of a guide, of all its sheets.
func (g guideRead) ticks(reach geometry.Length) []mark {
	var all []mark
	for _, s := range g.sheets {
		for _, l := range s.Lines.All {
			long := l.A.Distance(l.B)
			if len(l.Of.Lines) != 1 || len(l.Of.Lines[0].Steps) != 1 || long < 0.5 || long > reach*1.5 {
				continue
			}
			b := geometry.Rect{Min: l.A, Max: l.A}.Union(geometry.Rect{Min: l.B, Max: l.B})
			if slices.ContainsFunc(g.sheets, func(s *readback.Sheet) bool { return joinAt(s, b) }) || endsBar(s, b.Centre()) || isBar(s, l) {
				continue // where a join ends, or a bar
			}
			if within := g.cloth.Grow(reach + g.face.Item.Item.Shade.Lap + off); !b.Overlaps(g.cloth) && within.Holds(b) {
				all = append(all, mark{l.A, l.B})
			}
		}
	}
	return all
}

// endsBar tells whether a long line ends at a point.
func endsBar(s *readback.Sheet, q geometry.Point) bool {
	return slices.ContainsFunc(s.Lines.All, func(l readback.Line) bool {
		return l.A.Distance(l.B) > 19 && (l.A.Distance(q) < 0.1 || l.B.Distance(q) < 0.1)
	})
}

// isBar tells whether a line has a short one across each of its ends.
func isBar(s *readback.Sheet, l readback.Line) bool {
	across := func(end geometry.Point) bool {
		return slices.ContainsFunc(s.Lines.All, func(m readback.Line) bool {
			return m.A.Distance(m.B) < 3.2 && (geometry.Rect{Min: m.A, Max: m.B}).Centre().Distance(end) < 0.1
		})
	}
	return l.A.Distance(l.B) > 15 && across(l.A) && across(l.B)
}

// joinAt tells whether a box lies on a join of the sheet.
func joinAt(s *readback.Sheet, b geometry.Rect) bool {
	on := func(lo, hi, l geometry.Length) bool { return (lo-l).Abs() <= off && (hi-l).Abs() <= off }
	for _, c := range []geometry.Rect{s.Sheet.Cell, s.Sheet.Kept} {
		if on(b.Min.X, b.Max.X, c.Min.X) || on(b.Min.X, b.Max.X, c.Max.X) || on(b.Min.Y, b.Max.Y, c.Min.Y) || on(b.Min.Y, b.Max.Y, c.Max.Y) {
			return true
		}
	}
	return false
}

// distance is how far a box is from the mark, looked at point by point.
func (m mark) distance(box geometry.Rect) geometry.Length {
	least := geometry.Length(math.Inf(1))
	const points = 100
	for i := range points + 1 {
		q := m.a.Add(m.b.Sub(m.a).Mul(float64(i) / points))
		d := geometry.Pt(max(box.Min.X-q.X, q.X-box.Max.X, 0), max(box.Min.Y-q.Y, q.Y-box.Max.Y, 0))
		least = min(least, d.Norm())
	}
	return least
}

// checkSlants looks for the ticks of a diagonal: each edge of its prints, drawn on, runs along a
// tick at either end.
func (g guideRead) checkSlants(t *testing.T) {
	for _, p := range g.face.Passes {
		if !p.Pass.Slanted() {
			continue
		}
		for _, print := range p.Prints {
			corners := print.Outline.Corners()
			for i, a := range corners {
				b := corners[(i+1)%len(corners)]
				var ends [2]bool
				for _, s := range g.sheets {
					for _, l := range s.Lines.All {
						long, way := l.B.Sub(l.A), b.Sub(a)
						outside := !(geometry.Rect{Min: l.A, Max: l.A}).Union(geometry.Rect{Min: l.B, Max: l.B}).Overlaps(g.cloth)
						if n := long.Norm(); !outside || n < 1 || n > 12 {
							continue
						}
						side := func(q geometry.Point) geometry.Length {
							d := q.Sub(a)
							return (d.X*way.Y - d.Y*way.X) / way.Norm()
						}
						if side(l.A).Abs() > off || side(l.B).Abs() > off {
							continue
						}
						d := l.A.Sub(a)
						if d.X*way.X+d.Y*way.Y < 0 {
							ends[0] = true
						} else {
							ends[1] = true
						}
					}
				}
				if !ends[0] || !ends[1] {
					t.Errorf("%s: the line from %v to %v has its ticks: %v", g.face.Label(), a, b, ends)
				}
			}
		}
	}
}

// TestTicksSayTheirNamesAtBothEnds reads the names and distances by the ticks of a roomy guide.
func TestTicksSayTheirNamesAtBothEnds(t *testing.T) {
	job := sample.Examples(t)["reading-nook.toml"]
	plan, err := plan.New(job)
	if err != nil {
		t.Fatal(err)
	}
	face := plan.Items[0].Faces()[0]
	g := Draw(job, face)
	cloth := face.Item.Area.Cloth
	// By hand: five fern prints of 90 mm, 1 mm apart, leave (500 - 5 * 90 - 4 * 1) / 2 = 23 mm a
	// side: less than the 25 mm asked, so that there are four, and (500 - 4 * 90 - 3 * 1) / 2 = 68.5.
	names := []string{"start tape", "tape", "68.5", "158.5", "159.5", "249.5", "250.5", "340.5", "341.5", "431.5"}
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
		if slices.Contains([]string{"start tape", "249.5", "250.5"}, name) {
			if left != 1 || right != 1 {
				t.Errorf("%q: %d left, %d right", name, left, right)
			}
		}
		if above != below || left != right || above+left == 0 {
			t.Errorf("%q: %d above, %d below, %d left, %d right", name, above, below, left, right)
		}
	}
}
