package template

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"testing"

	"underlay/geometry"
	"underlay/testdata/pdfread"
)

// samples returns points all along an outline, its corners among them.
func samples(o geometry.Outline) []geometry.Point {
	var points []geometry.Point
	if centre, radius, round := o.Round(); round {
		for i := range 72 {
			points = append(points, centre.Add(geometry.Pt(radius, 0).Turn(geometry.Angle(5*i))))
		}
		return points
	}
	corners := o.Corners()
	for i, a := range corners {
		points = append(points, along(a, corners[(i+1)%len(corners)])...)
	}
	return points
}

// along returns points all along a straight line.
func along(a, b geometry.Point) []geometry.Point {
	const parts = 12
	var points []geometry.Point
	for i := range parts + 1 {
		points = append(points, a.Add(b.Sub(a).Mul(float64(i)/parts)))
	}
	return points
}

// lies tells whether a closed piece lies along an outline.
func (c closedPiece) lies(o geometry.Outline) bool {
	if centre, radius, round := o.Round(); round {
		for _, p := range c.corners {
			if math.Abs(float64(p.Distance(centre)-radius)) > float64(off) {
				return false
			}
		}
		return len(c.corners) > 4
	}
	corners := o.Corners()
	if len(corners) != len(c.corners) {
		return false
	}
	for _, a := range corners {
		near := false
		for _, b := range c.corners {
			near = near || a.Distance(b) <= off
		}
		if !near {
			return false
		}
	}
	return true
}

// checkFootprints looks for every footprint: whole, where a sheet shows all of it; else every
// part of it on every sheet that shows that part. All sheets together lose nothing.
func checkFootprints(t *testing.T, p *papers) {
	style := func(of *pdfread.Path) string { return fmt.Sprintf("%.3f %.2f", of.Width, of.Dashes) }
	for _, g := range p.guides {
		styles := map[string]int{}
		whole := 0
		for i, pass := range g.face.Passes {
			for _, print := range pass.Prints {
				o := print.Footprint.Outline
				if p.job.Paper.Extent == EdgesExtent {
					for _, s := range g.sheets {
						for _, c := range s.closed {
							if c.lies(o) {
								t.Errorf("%s: a print at %v is drawn", s.Sheet.Name, print.Origin)
							}
						}
					}
					continue
				}
				for _, s := range g.sheets {
					if !s.Sheet.Area.Holds(o.Bounds()) {
						continue
					}
					found := false
					for _, c := range s.closed {
						if c.lies(o) {
							found = true
							styles[style(c.of)] |= 1 << i
						}
					}
					if !found {
						t.Errorf("%s, page %d: no print of %s at %v", g.face.Label(), s.Page, pass.Pass.Name, print.Origin)
					}
					whole++
				}
				g.mustRun(t, "a print of "+pass.Pass.Name, g.shown(print, o))
			}
		}
		// Passes differ by line type: no style is used for two of them.
		for s, passes := range styles {
			if passes&(passes-1) != 0 {
				t.Errorf("%s: two passes are drawn in the same line, %s", g.face.Label(), s)
			}
		}
		if whole == 0 && p.job.Paper.Extent != EdgesExtent {
			t.Logf("%s: no sheet shows a whole print", g.face.Label())
		}
	}
}

// shown returns points along the edge of a print, or of its wood, as far as its guide goes. One
// that lies across the seam of a drum, which is its bounds' width around, comes in again on the
// other side.
func (g guideRead) shown(print Print, o geometry.Outline) []geometry.Point {
	var all []geometry.Point
	for _, round := range []geometry.Length{-1, 0, 1} {
		if round != 0 && !(print.Seam && g.face.Item.Item.Shape == "drum") {
			continue
		}
		for _, q := range samples(o) {
			q.X += round * g.cloth.W()
			if g.cloth.Contains(q) {
				all = append(all, q)
			}
		}
	}
	return all
}

// mustRun looks for a drawn line through points, on every sheet that shows them.
func (g guideRead) mustRun(t *testing.T, what string, points []geometry.Point) {
	t.Helper()
	for _, q := range points {
		shown := false
		for _, s := range g.sheets {
			if !s.Sheet.Area.Contains(q) {
				continue
			}
			shown = true
			if !s.lines.on(q) {
				t.Errorf("%s, page %d: %s should run through %v", g.face.Label(), s.Page, what, q)
				return
			}
		}
		if !shown {
			t.Errorf("%s: %s runs through %v, which is on no sheet", g.face.Label(), what, q)
			return
		}
	}
}

// checkCloth looks for what else is drawn of the cloth: its edge and creases, the wood.
func checkCloth(t *testing.T, p *papers) {
	for _, g := range p.guides {
		item, c := g.face.Item.Item, g.cloth.Centre()
		if p.job.Paper.Extent == EdgesExtent {
			edge := samples(item.Outline)
			if r, ok := item.Outline.Upright(); ok {
				edge = r.Polygon()
			}
			g.mustRun(t, "the edge of the cloth", edge)
			continue
		}
		g.mustRun(t, "the edge of the cloth", samples(item.Outline))
		for _, z := range item.Zones {
			g.mustRun(t, "the edge of "+z.Name, samples(geometry.RectOutline(z.Rect)))
		}
		if item.Outline.Contains(geometry.Pt(c.X, 0)) {
			g.mustRun(t, "the crease", along(geometry.Pt(c.X, g.cloth.Min.Y), geometry.Pt(c.X, g.cloth.Max.Y)))
			g.mustRun(t, "the crease", along(geometry.Pt(g.cloth.Min.X, c.Y), geometry.Pt(g.cloth.Max.X, c.Y)))
		}
		for _, pass := range g.face.Passes {
			wood := pass.Pass.Block.Wood
			for _, print := range pass.Prints {
				if !wood.None() {
					g.mustRun(t, "the wood of "+pass.Pass.Block.Name, g.shown(print, wood.Turn(print.Turn).Move(print.Origin)))
				}
			}
		}
	}
}

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
			if absLength(a.X-b.X) > off || a.Distance(b) < 2 {
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
				if absLength(k.x-x) <= off && is(k.of) {
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
func edges(p FacePass, turn func(geometry.Point) geometry.Point) []geometry.Length {
	if !p.ColumnsInLine && !p.RowsInLine {
		return nil
	}
	pitch := turn(geometry.Pt(p.Choice().Pitch.Across, p.Choice().Pitch.Down)).X
	all, moves := map[int]geometry.Length{}, map[int]bool{}
	for _, print := range p.Prints {
		if math.Mod(float64(print.Turn), 90) != 0 {
			return nil
		}
		b := print.Footprint.Outline.Bounds()
		lo, hi := turn(b.Min).X, turn(b.Max).X
		all[int(math.Round(float64(lo*50)))], all[int(math.Round(float64(hi*50)))] = lo, hi
		moves[int(math.Round(math.Mod(float64((lo-turn(p.Prints[0].Footprint.Outline.Bounds().Min).X)/pitch)+1000.001, 1)*100))] = true
	}
	if len(moves) > 4 {
		return nil
	}
	return slices.Collect(maps.Values(all))
}

// checkNumbers looks for the number of every print inside its footprint: at least on one
// sheet, on none twice.
func checkNumbers(t *testing.T, p *papers) {
	for _, g := range p.guides {
		if p.job.Paper.Extent == EdgesExtent {
			continue
		}
		for _, pass := range g.face.Passes {
			for i, print := range pass.Prints {
				text := strconv.Itoa(pass.First + i)
				shown := 0
				for _, s := range g.sheets {
					n := 0
					for _, w := range s.page.texts {
						if box := s.layoutRect(w.Box); w.Text == text && within(print.Footprint.Outline, box) {
							n++
						}
					}
					if n > 1 {
						t.Errorf("%s, page %d: %s is written %d times in its print", g.face.Label(), s.Page, text, n)
					}
					shown += n
				}
				if shown == 0 {
					t.Errorf("%s: number %s of %s is not in its print at %v", g.face.Label(), text, pass.Pass.Name, print.Origin)
				}
			}
		}
	}
}

// TestTicksSayTheirNamesAtBothEnds reads the names and distances by the ticks of a roomy guide.
func TestTicksSayTheirNamesAtBothEnds(t *testing.T) {
	job := exampleJobs(t)["reading-nook.toml"]
	plan, err := NewPlan(job)
	if err != nil {
		t.Fatal(err)
	}
	face := plan.Items[0].Faces()[0]
	g := newGuide(job, face)
	cloth := face.Item.Area.cloth
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
