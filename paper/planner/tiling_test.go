package planner

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/paper"
)

// layOut lays sheets along a length by hand, each begun where the last still shows overlap,
// until the end is reached.
func layOut(length, usable, overlap float64) int {
	n, end := 1, usable
	for end < length-1e-6 {
		n, end = n+1, end-overlap+usable
	}
	return n
}

func TestPlanTakesTheFewestSheets(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	papers := paper.Stocks()
	for range 800 {
		p := papers[r.IntN(len(papers))]
		l := layout(geometry.Length(1+r.IntN(3000)), geometry.Length(1+r.IntN(3000)))
		margin, overlap := geometry.Length(r.IntN(20)), geometry.Length(r.IntN(30))
		scale := paper.Scale{Across: 0.97 + 0.06*r.Float64(), Down: 0.97 + 0.06*r.Float64()}
		got, err := Plan(Layout{Bounds: l}, paper.Setup{Stock: p, Margin: margin, Overlap: overlap, Scale: scale})
		if err != nil {
			t.Fatal(err)
		}
		w, h := float64(p.Size.W-2*margin), float64(p.Size.H-2*margin)
		lw, lh, v := float64(l.W()), float64(l.H()), float64(overlap)
		columns, rows := layOut(lw, w/scale.Across, v), layOut(lh, h/scale.Down, v)
		lying := false
		joins := func(c, r int) int { return 2*c*r - c - r }
		// Across the lying page runs the printer's way down.
		if c, r := layOut(lw, h/scale.Down, v), layOut(lh, w/scale.Across, v); c*r < columns*rows ||
			c*r == columns*rows && joins(c, r) < joins(columns, rows) {
			columns, rows, lying = c, r, true
		}
		if got.Columns != columns || got.Rows != rows || got.Lying != lying || len(got.Sheets) != columns*rows {
			t.Fatalf("%v on %s, margin %g, overlap %g: %d x %d, lying %v; by hand %d x %d, lying %v",
				l.Size(), p.Name, margin, overlap, got.Columns, got.Rows, got.Lying, columns, rows, lying)
		}
		if n, err := CountSheets(Layout{Bounds: l}, paper.Setup{Stock: p, Margin: margin, Overlap: overlap, Scale: scale}); err != nil || n != columns*rows {
			t.Fatalf("counted %d, %v; want %d", n, err, columns*rows)
		}
		checkTiling(t, got, margin, overlap)
	}
}

// checkTiling checks that the sheets cover the layout, share the overlap, and are what their
// pages can show.
func checkTiling(t *testing.T, g paper.Tiling, margin, overlap geometry.Length) {
	t.Helper()
	const near = 1e-6
	all := g.Sheets[0].Area
	for i, s := range g.Sheets {
		all = all.Union(s.Area)
		if s.Name != paper.SheetName(s.Row, s.Column) || s.Row != i/g.Columns+1 || s.Column != i%g.Columns+1 {
			t.Fatalf("sheet %d is %s, row %d, column %d", i, s.Name, s.Row, s.Column)
		}
		end := s.OnPage(s.Area.Max)
		if s.At != geometry.Pt(margin, margin) || math.Abs(float64(end.X+margin-s.Page.W)) > near ||
			math.Abs(float64(end.Y+margin-s.Page.H)) > near {
			t.Fatalf("%s: its area ends at %v on a page of %v", s.Name, end, s.Page)
		}
		if s.Column > 1 {
			left := g.Sheets[i-1]
			if shared := left.Area.Max.X - s.Area.Min.X; shared < overlap-near || left.Area.Min.Y != s.Area.Min.Y {
				t.Fatalf("%s and %s share %g mm", left.Name, s.Name, shared)
			}
			if math.Abs(float64(left.Kept.Max.X-s.Kept.Min.X)) > near || left.Right != s.Name || s.Left != left.Name {
				t.Fatalf("%v and %v do not meet", left, s)
			}
		}
		if s.Row > 1 {
			up := g.Sheets[i-g.Columns]
			if shared := up.Area.Max.Y - s.Area.Min.Y; shared < overlap-near || up.Area.Min.X != s.Area.Min.X {
				t.Fatalf("%s and %s share %g mm", up.Name, s.Name, shared)
			}
			if math.Abs(float64(up.Kept.Max.Y-s.Kept.Min.Y)) > near || up.Below != s.Name || s.Above != up.Name {
				t.Fatalf("%v and %v do not meet", up, s)
			}
		}
	}
	if !all.Grow(near).Holds(g.Layout) {
		t.Fatalf("the sheets show %v of %v", all, g.Layout)
	}
	if c, d := all.Centre(), g.Layout.Centre(); c.Distance(d) > joinGrid {
		t.Fatalf("the layout's middle is %v, the grid's %v", d, c)
	}
}

func TestPlanCases(t *testing.T) {
	type result struct {
		Columns, Rows int
		Lying         bool
		Page          geometry.Size
		First         geometry.Rect
	}
	for _, c := range []struct {
		name            string
		layout          geometry.Rect
		stock           string
		margin, overlap geometry.Length
		scale           paper.Scale
		want            result
	}{
		{"cushion and its reach", layout(550, 550), "A4", 7, 12, paper.Scale{},
			result{3, 2, false, geometry.Size{W: 210, H: 297}, geometry.Rect{Min: geometry.Pt(-28.5, -26), Max: geometry.Pt(167.5, 257)}}},
		{"just fits", layout(196, 283), "A4", 7, 12, paper.Scale{},
			result{1, 1, false, geometry.Size{W: 210, H: 297}, geometry.Rect{Min: geometry.Pt(-25, -25), Max: geometry.Pt(171, 258)}}},
		{"fits within the tolerance", layout(196+5e-7, 283), "A4", 7, 12, paper.Scale{},
			result{1, 1, false, geometry.Size{W: 210, H: 297}, geometry.Rect{Min: geometry.Pt(-25, -25), Max: geometry.Pt(171, 258)}}},
		{"lying", layout(283, 190), "A4", 7, 12, paper.Scale{},
			result{1, 1, true, geometry.Size{W: 297, H: 210}, geometry.Rect{Min: geometry.Pt(-25, -28), Max: geometry.Pt(258, 168)}}},
		{"lying, corrected", layout(290, 150), "A4", 0, 12, paper.Scale{Across: 1.01, Down: 0.99},
			result{1, 1, true, geometry.Size{W: 297, H: 210}, geometry.Rect{
				Min: geometry.Pt(120-150, 50-105/geometry.Length(1.01)), Max: geometry.Pt(120+150, 50+105/geometry.Length(1.01))}}},
		{"a tie stays upright", layout(100, 100), "A4", 7, 12, paper.Scale{},
			result{1, 1, false, geometry.Size{W: 210, H: 297}, geometry.Rect{Min: geometry.Pt(-73, -116.5), Max: geometry.Pt(123, 166.5)}}},
		{"roll", layout(550, 900), "roll 610 mm", 5, 12, paper.Scale{},
			result{1, 1, false, geometry.Size{W: 610, H: 910}, geometry.Rect{Min: geometry.Pt(-50, -25), Max: geometry.Pt(550, 875)}}},
		{"roll, two strips", layout(1188, 900), "roll 610 mm", 5, 12, paper.Scale{},
			result{2, 1, false, geometry.Size{W: 610, H: 910}, geometry.Rect{Min: geometry.Pt(-25, -25), Max: geometry.Pt(575, 875)}}},
		{"roll longer than a page", layout(550, 15012), "roll 610 mm", 5, 12, paper.Scale{},
			result{1, 2, false, geometry.Size{W: 610, H: 7522}, geometry.Rect{Min: geometry.Pt(-50, -25), Max: geometry.Pt(550, 7487)}}},
		{"one sheet", layout(550, 900), "one sheet", 5, 12, paper.Scale{},
			result{1, 1, false, geometry.Size{W: 560, H: 910}, geometry.Rect{Min: geometry.Pt(-25, -25), Max: geometry.Pt(525, 875)}}},
		{"one sheet, corrected", layout(500, 900), "one sheet", 5, 12, paper.Scale{Across: 1.02, Down: 0.98},
			result{1, 1, false, geometry.Size{W: 520, H: 892}, geometry.Rect{Min: geometry.Pt(-25, -25), Max: geometry.Pt(475, 875)}}},
		{"no overlap", layout(400, 100), "A4", 5, 0, paper.Scale{},
			result{2, 1, false, geometry.Size{W: 210, H: 297}, geometry.Rect{Min: geometry.Pt(-25, -118.5), Max: geometry.Pt(175, 168.5)}}},
	} {
		g, err := Plan(Layout{Bounds: c.layout}, paper.Setup{Stock: stock(t, c.stock), Margin: c.margin, Overlap: c.overlap, Scale: c.scale})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		checkTiling(t, g, c.margin, c.overlap)
		got := result{g.Columns, g.Rows, g.Lying, g.Sheets[0].Page, g.Sheets[0].Area}
		near := cmp.Comparer(func(a, b geometry.Length) bool { return math.Abs(float64(a-b)) < 1e-6 })
		if diff := cmp.Diff(c.want, got, near); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestPlanErrors(t *testing.T) {
	for _, c := range []struct {
		layout          geometry.Rect
		stock           string
		margin, overlap geometry.Length
		says            []string
	}{
		{layout(500, 500), "A6", 52.5, 12, []string{"margin", "52.5 mm", `"A6"`, "larger paper"}},
		{layout(500, 500), "A4", 7, 196, []string{"overlap", "196 mm", `"A4"`}},
		{layout(500, 500), "roll 100 mm", 44, 12, []string{"overlap", "12 mm", `"roll 100 mm"`}},
		{layout(500, 500), "roll 100 mm", 50, 12, []string{"margin", `"roll 100 mm"`}},
		{layout(500, 500), "A4", -1, 12, []string{"margin", "0 mm or more"}},
		{layout(500, 500), "A4", 7, -1, []string{"overlap", "0 mm or more"}},
		{layout(500, 10000), "one sheet", 7, 12, []string{"10014 mm", "roll 610 mm"}},
	} {
		_, err := Plan(Layout{Bounds: c.layout}, paper.Setup{Stock: stock(t, c.stock), Margin: c.margin, Overlap: c.overlap, Scale: paper.Scale{}})
		if err == nil {
			t.Errorf("%v was taken", c)
			continue
		}
		if _, again := CountSheets(Layout{Bounds: c.layout}, paper.Setup{Stock: stock(t, c.stock), Margin: c.margin, Overlap: c.overlap, Scale: paper.Scale{}}); again == nil || again.Error() != err.Error() {
			t.Errorf("CountSheets says %v, Plan says %v", again, err)
		}
		for _, s := range c.says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("the message does not say %s:\n%v", s, err)
			}
		}
	}
}

func TestCountSheetsOfAHugeLayout(t *testing.T) {
	n, err := CountSheets(Layout{Bounds: layout(1e9, 1e9)}, paper.Setup{Stock: stock(t, "A6"), Margin: 7, Overlap: 12, Scale: paper.Scale{}})
	if err != nil || n < 1e13 {
		t.Errorf("%d, %v", n, err)
	}
	if n, err := CountSheets(Layout{Bounds: layout(1e300, 1e300)}, paper.Setup{Stock: stock(t, "A6"), Margin: 7, Overlap: 12, Scale: paper.Scale{}}); err != nil || n < 1e13 {
		t.Errorf("%d, %v", n, err)
	}
}

func TestWithout(t *testing.T) {
	g, err := Plan(Layout{Bounds: layout(550, 800)}, paper.Setup{Stock: stock(t, "A4"), Margin: 7, Overlap: 12, Scale: paper.Scale{}})
	if err != nil || len(g.Sheets) != 9 {
		t.Fatal(len(g.Sheets), err)
	}
	ring := g.Without(func(s paper.Sheet) bool { return s.Name == "2b" })
	type links struct{ Left, Right, Above, Below string }
	got := map[string]links{}
	for _, s := range ring.Sheets {
		got[s.Name] = links{s.Left, s.Right, s.Above, s.Below}
		if s.Name == "1b" && (s.Kept.Max.Y != s.Area.Max.Y || s.Kept.Max.X != s.Area.Max.X-6) {
			t.Errorf("1b shows %v and keeps %v", s.Area, s.Kept)
		}
	}
	if diff := cmp.Diff(map[string]links{
		"1a": {"", "1b", "", "2a"}, "1b": {"1a", "1c", "", ""}, "1c": {"1b", "", "", "2c"},
		"2a": {"", "", "1a", "3a"}, "2c": {"", "", "1c", "3c"},
		"3a": {"", "3b", "2a", ""}, "3b": {"3a", "3c", "", ""}, "3c": {"3b", "", "2c", ""},
	}, got); diff != "" {
		t.Error(diff)
	}
	if len(g.Sheets) != 9 || g.Sheets[1].Below != "2b" {
		t.Error("the whole tiling changed")
	}
}
