package guide

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/template/plan"
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
func lies(c readback.Closed, o geometry.Outline) bool {
	if centre, radius, round := o.Round(); round {
		for _, p := range c.Corners {
			if math.Abs(float64(p.Distance(centre)-radius)) > float64(off) {
				return false
			}
		}
		return len(c.Corners) > 4
	}
	corners := o.Corners()
	if len(corners) != len(c.Corners) {
		return false
	}
	for _, a := range corners {
		near := false
		for _, b := range c.Corners {
			near = near || a.Distance(b) <= off
		}
		if !near {
			return false
		}
	}
	return true
}

// checkFootprints looks for every footprint: whole, where a sheet shows all of it; else every
// part of it on every sheet that shows that part. All sheets together lose nothing. Passes
// differ by line type.
func checkFootprints(t *testing.T, g guideRead) {
	styles := map[string]string{} // of passes that have one that is no other's
	for _, pass := range g.face.Passes {
		var all map[string]bool // styles in which every print is drawn
		for _, print := range pass.Prints {
			o := print.Outline
			if g.job.Paper.Extent != job.EdgesExtent && g.laps(t, pass, print) {
				continue
			}
			for _, s := range g.sheets {
				drawn := stylesOf(s, o)
				if g.job.Paper.Extent == job.EdgesExtent {
					if len(drawn) > 0 {
						t.Errorf("%s: a print at %v is drawn", s.Sheet.Name, print.Origin)
					}
					continue
				}
				if !s.Sheet.Area.Holds(o.Bounds()) {
					continue
				}
				if len(drawn) == 0 {
					t.Errorf("%s, sheet %s: no print of %s at %v", g.face.Label(), s.Name, pass.Pass.Name, print.Origin)
				}
				if all == nil {
					all = drawn
				}
				maps.DeleteFunc(all, func(style string, _ bool) bool { return !drawn[style] })
			}
			if g.job.Paper.Extent != job.EdgesExtent {
				g.mustRun(t, "a print of "+pass.Pass.Name, g.shown(print, o))
			}
		}
		if all != nil && len(all) == 0 {
			t.Errorf("%s: the prints of %s differ in their lines", g.face.Label(), pass.Pass.Name)
		}
		if len(all) == 1 {
			for style := range all {
				if other := styles[style]; other != "" {
					t.Errorf("%s: %s and %s are drawn in the same line", g.face.Label(), other, pass.Pass.Name)
				}
				styles[style] = pass.Pass.Name
			}
		}
	}
}

// stylesOf returns the lines in which an outline is drawn whole.
func stylesOf(s *readback.Sheet, o geometry.Outline) map[string]bool {
	styles := map[string]bool{}
	for _, c := range s.Closed {
		if lies(c, o) {
			styles[fmt.Sprintf("%.3f %.2f", c.Of.Width, c.Of.Dashes)] = true
		}
	}
	return styles
}

// shown returns points along the edge of a print, or of its wood, as far as its guide goes. One
// that lies across the seam of a drum, which is its bounds' width around, comes in again on the
// other side.
func (g guideRead) shown(print plan.Print, o geometry.Outline) []geometry.Point {
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
			if !s.Sheet.Area.Grow(-1e-3).Contains(q) { // what only touches it is its neighbour's
				continue
			}
			shown = true
			if !s.Lines.On(q) {
				t.Errorf("%s, sheet %s: %s should run through %v", g.face.Label(), s.Name, what, q)
				return
			}
		}
		if !shown {
			t.Errorf("%s: %s runs through %v, which is on no sheet", g.face.Label(), what, q)
			return
		}
	}
}

// edge returns the points of the cloth's edge that the guide shows: a cloth that is moved along goes
// on at its far end, or to the right.
func (g guideRead) edge(points []geometry.Point) []geometry.Point {
	m := g.face.Item.Moves
	if m == nil || m.Times == 1 {
		return points
	}
	return slices.DeleteFunc(points, func(p geometry.Point) bool {
		return m.Down && (p.Y-g.cloth.Min.Y).Abs() < 1 || !m.Down && (p.X-g.cloth.Max.X).Abs() < 1
	})
}

// checkCloth looks for what else is drawn of the cloth: its edge and creases, the wood.
func checkCloth(t *testing.T, g guideRead) {
	item, c := g.face.Item.Item, g.cloth.Centre()
	if g.job.Paper.Extent == job.EdgesExtent {
		g.mustRun(t, "the edge of the cloth", samples(item.Outline))
		return
	}
	g.mustRun(t, "the edge of the cloth", g.edge(samples(item.Outline)))
	for _, z := range item.Zones {
		g.mustRun(t, "the edge of "+z.Name, samples(geometry.RectOutline(z.Rect)))
	}
	if item.Outline.Contains(geometry.Pt(c.X, 0)) { // of pieces a cut may run there
		g.mustRun(t, "the crease", along(geometry.Pt(c.X, g.cloth.Min.Y), geometry.Pt(c.X, g.cloth.Max.Y)))
		g.mustRun(t, "the crease", along(geometry.Pt(g.cloth.Min.X, c.Y), geometry.Pt(g.cloth.Max.X, c.Y)))
	}
	for _, pass := range g.face.Passes {
		for _, print := range pass.Prints {
			if wood := print.Block.Wood; !wood.None() {
				o := wood.Turn(print.Turn).Move(print.Origin)
				g.mustRun(t, "the wood of "+print.Block.Name, slices.DeleteFunc(g.shown(print, o), func(q geometry.Point) bool { return !byCorner(o, q) }))
			}
		}
	}
}

// byCorner tells whether a point of the edge of wood is one that its brackets show: a quarter of
// the side from a corner, 9 mm at the most; of a circle, which has none, anywhere near the
// middle of its quarters.
func byCorner(o geometry.Outline, q geometry.Point) bool {
	if c, r, round := o.Round(); round {
		d := q.Sub(c)
		off := math.Abs(math.Remainder(math.Atan2(float64(d.Y), float64(d.X))*180/math.Pi-45, 90))
		return off < 20 && geometry.Angle(off).Radians()*float64(r) < 9
	}
	for i, a := range o.Corners() {
		for _, side := range []int{-1, 1} {
			b := o.Corners()[(i+side+len(o.Corners()))%len(o.Corners())]
			d, out := b.Sub(a), q.Sub(a)
			along := float64(d.X*out.X+d.Y*out.Y) / float64(d.Norm())
			if across := math.Sqrt(math.Max(0, float64(out.X*out.X+out.Y*out.Y)-along*along)); across < 1e-6 && along >= 0 &&
				along < math.Min(9, 0.24*float64(d.Norm())) {
				return true
			}
		}
	}
	return false
}

// checkNumbers looks for the number of every print inside its footprint: at least on one
// sheet, on none twice.
func checkNumbers(t *testing.T, g guideRead) {
	if g.job.Paper.Extent == job.EdgesExtent {
		return
	}
	for _, pass := range g.face.Passes {
		for i, print := range pass.Prints {
			text := strconv.Itoa(pass.First + i%g.onEach(pass))
			shown := 0
			for _, s := range g.sheets {
				n := 0
				for _, w := range s.Page.Texts() {
					if box := s.LayoutRect(w.Box); w.Text == text && readback.Within(print.Outline, box) {
						n++
					}
				}
				if n > 1 {
					t.Errorf("%s, sheet %s: %s is written %d times in its print", g.face.Label(), s.Name, text, n)
				}
				shown += n
			}
			if shown == 0 {
				t.Errorf("%s: number %s of %s is not in its print at %v", g.face.Label(), text, pass.Pass.Name, print.Origin)
			}
		}
	}
}
