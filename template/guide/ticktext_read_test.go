package guide

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/template/plan"
)

// outside visits the texts of a guide's sheets that stand outside the cloth, by where they are.
func (g guideRead) outside(visit func(s *readback.Sheet, text string, box geometry.Rect)) {
	for _, s := range g.sheets {
		for _, w := range s.Page.Texts() {
			// pdfium takes letters for higher and wider by a 64th than they are.
			box := s.LayoutRect(w.Box.In(geometry.Edges{Top: w.Size / 64, Right: w.Size / 64}))
			if !box.Overlaps(g.cloth) {
				visit(s, w.Text, box)
			}
		}
	}
}

// tickFigure is a length by a tick, without its unit.
var tickFigure = regexp.MustCompile(`^(\d+(\.\d+)?|\d+ \d+/\d+|\d+/\d+)$`)

// checkFigures holds every figure outside the cloth against the tick that is nearest to it: that is
// the one it names, to half a millimetre or a thirty-second of an inch.
func (g guideRead) checkFigures(t *testing.T, u geometry.Unit, ticks []mark) {
	half := 0.25 * geometry.Millimetre
	if u == geometry.UnitInch {
		half = geometry.Inch / 64
	}
	g.outside(func(s *readback.Sheet, text string, box geometry.Rect) {
		if !tickFigure.MatchString(text) || g.acrossSeam(text) {
			return
		}
		value, err := geometry.ParseLength(text + " " + u.String())
		if err != nil {
			t.Fatal(err)
		}
		var nearest mark
		least := geometry.Length(math.Inf(1))
		for _, m := range ticks {
			if b := (geometry.Rect{Min: m.a, Max: m.a}.Union(geometry.Rect{Min: m.b, Max: m.b})); !b.Grow(least).Overlaps(box) {
				continue
			}
			if d := m.distance(box); d < least-1e-9 {
				least, nearest = d, m
			}
		}
		at := nearest.a.X - g.cloth.Min.X
		if (nearest.a.X - nearest.b.X).Abs() > off {
			at = nearest.a.Y - g.cloth.Min.Y
			if m := g.face.Item.Moves; m != nil && m.Down {
				at = g.cloth.Max.Y - nearest.a.Y // the cloth is moved along from its near end
			}
		}
		if (at-value).Abs() > half+off || least > 12 {
			t.Errorf("%s, sheet %s: %q at %v is nearest to the tick at %v, %v away", g.face.Label(), s.Name, text, box, nearest, least)
		}
	})
}

// acrossSeam tells whether a text is the number of a print across the seam of a shade, which may
// stand outside it.
func (g guideRead) acrossSeam(text string) bool {
	return slices.ContainsFunc(g.face.Passes, func(p plan.FacePass) bool {
		return slices.ContainsFunc(p.Prints, func(print plan.Print) bool { return print.Seam && strconv.Itoa(print.Number) == text })
	})
}

// tickWords are what is written by the ticks. What else stands there is of the sheet, and has a
// ground of its own.
var tickWords = regexp.MustCompile(`^\d[\d. /]*$|(row|column) \d+$|tape|centre|^from |^edge, |seam`)

// checkStruck looks for a tick that runs through a text.
func (g guideRead) checkStruck(t *testing.T, ticks []mark) {
	g.outside(func(s *readback.Sheet, text string, box geometry.Rect) {
		if !tickWords.MatchString(text) {
			return
		}
		for _, m := range ticks {
			if b := (geometry.Rect{Min: m.a, Max: m.a}.Union(geometry.Rect{Min: m.b, Max: m.b})); b.Grow(off).Overlaps(box) && m.distance(box) == 0 {
				t.Errorf("%s, sheet %s: a tick from %v to %v runs through %q", g.face.Label(), s.Name, m.a, m.b, text)
			}
		}
	})
}

// checkStartTape looks for the name of the start tape left and right of the cloth.
func (g guideRead) checkStartTape(t *testing.T) {
	taped := slices.ContainsFunc(g.face.Passes, func(p plan.FacePass) bool { return p.Tape != nil })
	var left, right bool
	g.outside(func(_ *readback.Sheet, text string, box geometry.Rect) {
		if strings.HasPrefix(text, "start") {
			left, right = left || box.Max.X < g.cloth.Min.X, right || box.Min.X > g.cloth.Max.X
		}
	})
	if left != taped || right != taped {
		t.Errorf("%s: start tape: %v; named left: %v, right: %v", g.face.Label(), taped, left, right)
	}
}

// stripeName is the name of a row or a column as it ends.
var stripeName = regexp.MustCompile(`(row|column) (\d+)$`)

// checkNames holds the names of rows and columns against what they name: each stands in the middle
// of it, once on each of two sides; all that stand in line have some.
func (g guideRead) checkNames(t *testing.T) {
	type place struct {
		text string
		side int
	}
	seen := map[place][]geometry.Point{}
	size := map[string]geometry.Size{}
	named := map[string]bool{}
	g.outside(func(_ *readback.Sheet, text string, box geometry.Rect) {
		if !stripeName.MatchString(text) {
			return
		}
		side := 0
		for i, beyond := range []bool{box.Max.Y < g.cloth.Min.Y, box.Min.Y > g.cloth.Max.Y, box.Max.X < g.cloth.Min.X} {
			if beyond {
				side = i + 1
				break
			}
		}
		at, c := place{text, side}, box.Centre()
		size[text] = box.Size()
		if !slices.ContainsFunc(seen[at], func(q geometry.Point) bool { return q.Distance(c) < 1 }) {
			seen[at] = append(seen[at], c)
		}
	})
	slanted := slices.ContainsFunc(g.face.Passes, func(p plan.FacePass) bool { return p.Pass.Slanted() })
	for at, points := range seen {
		m := stripeName.FindStringSubmatch(at.text)
		named[m[1]] = true
		if len(points) > len(g.face.Passes) {
			t.Errorf("%s: %q stands at %v", g.face.Label(), at.text, points)
		}
		if slanted || len(g.face.Passes) > 1 {
			continue
		}
		if other := seen[place{at.text, at.side ^ 1}]; at.side > 0 && at.side < 3 && at.side+len(other) == 0 {
			t.Errorf("%s: %q has no twin", g.face.Label(), at.text)
		}
		k, _ := strconv.Atoi(m[2])
		middles := g.middles(g.face.Passes[0], m[1] == "row")
		c := points[0].X
		if m[1] == "row" {
			c = points[0].Y
		}
		if k > len(middles) || !slices.ContainsFunc(middles[k-1], func(l geometry.Length) bool {
			// Where a join runs through the middle the name is moved onto a sheet.
			slack := geometry.Length(0.5)
			if m[1] == "column" && !g.onOneSheet(geometry.RectAround(geometry.Pt(l, points[0].Y), size[at.text])) {
				slack = size[at.text].W
			}
			return (l - c).Abs() < slack
		}) {
			t.Errorf("%s: %q stands at %v", g.face.Label(), at.text, points[0])
		}
	}
	for _, p := range g.face.Passes {
		if (p.ColumnsInLine && !named["column"] || p.RowsInLine && !named["row"]) && !p.Pass.Seated() {
			t.Errorf("%s: named are %v", g.face.Label(), named)
		}
	}
}

// onOneSheet tells whether a sheet shows all of a box.
func (g guideRead) onOneSheet(box geometry.Rect) bool {
	return slices.ContainsFunc(g.sheets, func(s *readback.Sheet) bool { return s.Sheet.Area.Holds(box.Grow(0.5)) })
}

// middles returns where the middles of the rows or columns of a pass are, from the far or the left
// edge; of a column across the seam of a drum, the middles of both its parts.
func (g guideRead) middles(p plan.FacePass, rows bool) [][]geometry.Length {
	var all [][]geometry.Length
	var bounds []geometry.Rect
	for _, print := range p.Prints {
		bounds = append(bounds, print.Outline.Bounds())
	}
	along := func(r geometry.Rect) geometry.Length {
		if rows {
			return r.Centre().Y
		}
		return r.Centre().X
	}
	slices.SortFunc(bounds, func(a, b geometry.Rect) int { return cmp.Compare(along(a), along(b)) })
	last := geometry.Length(math.Inf(-1))
	for _, b := range bounds {
		if c := along(b); c-last > 0.01 {
			middles := []geometry.Length{c}
			if !rows && g.face.Item.Item.Shape == job.Drum {
				middles = append(middles, (max(b.Min.X, g.cloth.Min.X)+min(b.Max.X, g.cloth.Max.X))/2)
				for _, round := range []geometry.Length{-g.cloth.W(), g.cloth.W()} {
					m := b.Move(geometry.Pt(round, 0))
					middles = append(middles, (max(m.Min.X, g.cloth.Min.X)+min(m.Max.X, g.cloth.Max.X))/2)
				}
			}
			all, last = append(all, middles), c
		}
	}
	return all
}
