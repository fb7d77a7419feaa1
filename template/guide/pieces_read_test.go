package guide

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

// onEach is how many prints of a pass each piece of the cloth has: all where it is one.
func (g guideRead) onEach(p plan.FacePass) int {
	return len(p.Prints) / g.face.Item.Item.Pieces.Count()
}

// cutting tells whether a path is drawn as cuts are: long dashes and short ones in turn, 24 and 6
// times as long as the line is wide (ISO 128-2, type 08).
func cutting(p *pdfread.Path) bool {
	if len(p.Dashes) != 4 {
		return false
	}
	for i, times := range []float64{24, 3, 6, 3} {
		if math.Abs(float64(p.Dashes[i])-times*float64(p.Width)) > 0.01 {
			return false
		}
	}
	return true
}

// checkPieces looks for the cuts of a cloth: halfway between two pieces and nowhere else, on every
// sheet that shows them, named there, and with ticks at both ends beyond the cloth; and for the
// name of each piece.
func checkPieces(t *testing.T, g guideRead) {
	asked := g.face.Item.Asked()
	p, w, h := asked.Pieces, asked.Size.W, asked.Size.H
	var cuts []readback.Line
	for i := 1; i < p.Columns; i++ {
		x := geometry.Length(i)*w + geometry.Length(i-1)*p.Apart + p.Apart/2
		cuts = append(cuts, readback.Line{A: geometry.Pt(x, g.cloth.Min.Y), B: geometry.Pt(x, g.cloth.Max.Y)})
	}
	for i := 1; i < p.Rows; i++ {
		y := geometry.Length(i)*h + geometry.Length(i-1)*p.Apart + p.Apart/2
		cuts = append(cuts, readback.Line{A: geometry.Pt(g.cloth.Min.X, y), B: geometry.Pt(g.cloth.Max.X, y)})
	}
	full := g.job.Paper.Extent == job.FullExtent
	onCut := func(a, b geometry.Point) bool {
		for _, c := range cuts {
			upright := c.A.X == c.B.X && (a.X-c.A.X).Abs() <= off && (b.X-c.A.X).Abs() <= off
			level := c.A.Y == c.B.Y && (a.Y-c.A.Y).Abs() <= off && (b.Y-c.A.Y).Abs() <= off
			if upright || level {
				return true
			}
		}
		return false
	}
	for _, s := range g.sheets {
		for _, l := range s.Lines.All {
			if cutting(l.Of) && !onCut(l.A, l.B) {
				t.Errorf("%s, sheet %s: a cut from %v to %v, where there is none", g.face.Label(), s.Name, l.A, l.B)
			}
		}
	}
	var ticks []mark
	if len(cuts) > 0 {
		ticks = g.ticks(reachOf(g.face.Item, bounds(g.face.Item, g.job)))
	}
	for _, c := range cuts {
		if full {
			g.mustRun(t, "a cut", along(c.A, c.B))
			g.checkCutDrawn(t, c)
		}
		for _, end := range []geometry.Point{c.A, c.B} {
			if !slices.ContainsFunc(ticks, func(m mark) bool {
				return goesOn(c, m) && m.a.Distance(end) < c.A.Distance(c.B)/2
			}) {
				t.Errorf("%s: no tick for the cut by %v", g.face.Label(), end)
			}
		}
	}
	if full {
		g.checkEdgesOfPieces(t)
	}
	for _, piece := range g.face.Item.Pieces() {
		name, shown := "piece "+strconv.Itoa(piece.Number), false
		for _, s := range g.sheets {
			for _, text := range s.Page.Texts() {
				shown = shown || text.Text == name && piece.Rect.Holds(s.LayoutRect(text.Box))
			}
		}
		if !shown && full {
			t.Errorf("%s: %s is not named", g.face.Label(), name)
		}
	}
}

// goesOn tells whether a tick goes on a line.
func goesOn(l readback.Line, m mark) bool {
	long := readback.Line{A: l.A.Add(l.A.Sub(l.B)), B: l.B.Add(l.B.Sub(l.A))}
	return long.Distance(m.a) <= off && long.Distance(m.b) <= off
}

// checkCutDrawn looks for the line of a cut on every sheet that shows much of it, and for its names:
// on the cloth, and beyond both ends of it with how far it is from the cloth's edge.
func (g guideRead) checkCutDrawn(t *testing.T, c readback.Line) {
	t.Helper()
	onCloth, words := false, map[bool]bool{} // by which end
	for _, s := range g.sheets {
		drawn := false
		for _, l := range s.Lines.All {
			drawn = drawn || cutting(l.Of) && c.Distance(l.A) <= off && c.Distance(l.B) <= off
		}
		if shown := s.Sheet.Area.Intersect(geometry.Rect{Min: c.A, Max: c.B}.Grow(1)); !drawn && max(shown.W(), shown.H()) > 20 && min(shown.W(), shown.H()) > 1.9 {
			t.Errorf("%s, sheet %s: the cut from %v is not drawn as one", g.face.Label(), s.Name, c.A)
		}
		for _, w := range s.Page.Texts() {
			box := s.LayoutRect(w.Box)
			m := box.Centre()
			switch {
			case (w.Text == "cut here when dry" || w.Text == "cut here" || w.Text == "cut") && g.cloth.Holds(box) && c.Distance(m) < 12:
				onCloth = true
			case strings.Contains(w.Text, "cut") && !g.cloth.Overlaps(box):
				for end, p := range map[bool]geometry.Point{false: c.A, true: c.B} {
					words[end] = words[end] || m.Distance(p) < 30
				}
			}
		}
	}
	if !onCloth || !words[false] || !words[true] {
		t.Errorf("%s: the cut from %v is named on the cloth: %v, at its ends: %v", g.face.Label(), c.A, onCloth, words)
	}
}

// checkEdgesOfPieces looks for the edge, the hem and the border line of every piece.
func (g guideRead) checkEdgesOfPieces(t *testing.T) {
	t.Helper()
	asked := g.face.Item.Asked()
	for _, piece := range g.face.Item.Pieces() {
		r := piece.Rect
		g.mustRun(t, "the edge of a piece", samples(geometry.RectOutline(r)))
		if asked.Hem > 0 {
			g.mustRun(t, "the hem of a piece", samples(geometry.RectOutline(r.Grow(-asked.Hem))))
		}
		g.mustRun(t, "the border of a piece", samples(geometry.RectOutline(r.In(asked.Border))))
	}
}
