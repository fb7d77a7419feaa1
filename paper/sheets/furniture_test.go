package sheets

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
)

func furnitureOf(p paper.Page) *paper.Drawing { return p.Views[1].Drawing }

// guideTexts returns where the guide's own labels stand on the page.
func guideTexts(p paper.Page, s paper.Sheet) []geometry.Rect {
	v := p.Views[0]
	var all []geometry.Rect
	for _, i := range v.Marks.Labels {
		all = append(all, rectOnPage(s, v.Drawing.Labels[i].Extent()))
	}
	return all
}

func TestTextNeverStandsOnText(t *testing.T) {
	for _, inches := range []bool{false, true} {
		panel := samplePanel()
		panel.Inches = inches
		for _, c := range layAll(t, panel) {
			for i, p := range c.pages {
				s := c.sheets[i]
				guide := guideTexts(p, s)
				for k, f := range p.Views[0].Drawing.Fills {
					if slices.Contains(p.Views[0].Marks.Fills, int32(k)) {
						guide = append(guide, rectOnPage(s, f.Bounds()))
					}
				}
				var texts []geometry.Rect
				for _, l := range furnitureOf(p).Labels {
					box := l.Extent()
					for _, other := range append(guide, texts...) {
						if box.Overlaps(other) {
							t.Errorf("%s, %s: %q at %v stands on %v", c.name, s.Name, l.Text, box, other)
						}
					}
					texts = append(texts, box)
				}
				// A white ground hides no text either.
				for _, f := range furnitureOf(p).Fills {
					for _, other := range guide {
						if f.Bounds().Overlaps(other) {
							t.Errorf("%s, %s: what is filled at %v hides %v", c.name, s.Name, f.Bounds(), other)
						}
					}
				}
			}
		}
	}
}

func TestFurnitureKeepsInsideTheMargin(t *testing.T) {
	for _, c := range layAll(t, samplePanel()) {
		for i, p := range c.pages {
			s := c.sheets[i]
			inside := geometry.RectAt(geometry.Point{}, p.Size).Grow(-c.margin)
			d := furnitureOf(p)
			for _, l := range d.Labels {
				if !inside.Holds(l.Extent()) {
					t.Errorf("%s, %s: %q at %v, printable %v", c.name, s.Name, l.Text, l.Extent(), inside)
				}
			}
			for _, k := range d.Strokes {
				if !inside.Holds(k.Bounds()) {
					t.Errorf("%s, %s: a line at %v, printable %v", c.name, s.Name, k.Bounds(), inside)
				}
			}
			for _, f := range d.Fills {
				if !inside.Holds(f.Bounds()) {
					t.Errorf("%s, %s: filled at %v, printable %v", c.name, s.Name, f.Bounds(), inside)
				}
			}
			if v := p.Views[1]; v.Area != s.Usable() || v.At != v.Area.Min || v.Scale != (paper.Scale{}) {
				t.Errorf("%s, %s: the furniture is shown as %v", c.name, s.Name, v)
			}
			if v := p.Views[0]; v.Area != s.Area || v.At != s.At || v.Scale != s.Scale ||
				v.Place(s.Area.Max) != s.OnPage(s.Area.Max) {
				t.Errorf("%s, %s: the guide is shown as %v", c.name, s.Name, v)
			}
		}
	}
}

func TestEverySheetIsNamed(t *testing.T) {
	for _, c := range layAll(t, samplePanel()) {
		for i, p := range c.pages {
			s := c.sheets[i]
			bold := 0
			for _, l := range furnitureOf(p).Labels {
				if l.Bold && l.Text == s.Name {
					bold++
				}
			}
			if bold != 1 {
				t.Errorf("%s: %s is named %d times", c.name, s.Name, bold)
			}
		}
	}
}

// What a white ground hides, the neighbour shows; on what is kept it hides lines alone.
func TestWhiteGroundsLoseNothing(t *testing.T) {
	kept, lips := 0, 0
	for _, c := range layAll(t, samplePanel()) {
		shown := map[int32]bool{}
		for i, p := range c.pages {
			s, v := c.sheets[i], p.Views[0]
			for _, k := range v.Marks.Labels {
				shown[k] = true
			}
			whole := paper.Everything(v.Drawing, s.Area)
			if len(whole.Labels) > len(v.Marks.Labels) || len(whole.Fills) > len(v.Marks.Fills) {
				lips++
			}
			for _, f := range furnitureOf(p).Fills {
				if f.Ink != paper.Grey(255) || !f.Bounds().Overlaps(rectOnPage(s, s.Kept)) {
					continue
				}
				kept++
				for _, k := range whole.Labels {
					if box := rectOnPage(s, v.Drawing.Labels[k].Extent()); box.Overlaps(f.Bounds()) {
						t.Errorf("%s, %s: a ground at %v on what is kept hides %q", c.name, s.Name, f.Bounds(), v.Drawing.Labels[k].Text)
					}
				}
				for _, k := range whole.Fills {
					if b := rectOnPage(s, v.Drawing.Fills[k].Bounds()); b.Overlaps(f.Bounds()) {
						t.Errorf("%s, %s: a ground at %v on what is kept hides a sign at %v", c.name, s.Name, f.Bounds(), b)
					}
				}
			}
			for _, k := range whole.Labels {
				l := v.Drawing.Labels[k]
				if !slices.Contains(v.Marks.Labels, k) && rectOnPage(s, s.Kept).Overlaps(rectOnPage(s, l.Extent())) {
					t.Errorf("%s, %s: %q is hidden on what is kept", c.name, s.Name, l.Text)
				}
			}
		}
		for k, l := range c.pages[0].Views[0].Drawing.Labels {
			if !shown[int32(k)] {
				t.Errorf("%s: %q at %v is on no sheet", c.name, l.Text, l.At)
			}
		}
	}
	if kept == 0 || lips == 0 {
		t.Errorf("%d grounds on what is kept, %d sheets with something hidden: the drawings are too easy to try this", kept, lips)
	}
}

func TestRoomyGuideHasEverything(t *testing.T) {
	panel := samplePanel()
	panel.Inches = true
	for _, c := range layAll(t, panel) {
		if c.name != "cushion" && c.name != "one sheet" {
			continue
		}
		for i, p := range c.pages {
			s := c.sheets[i]
			var all []string
			for _, l := range furnitureOf(p).Labels {
				all = append(all, l.Text)
				if said := l.Text == s.Name && l.Bold || strings.Contains(l.Text, "floor cushion"); said &&
					!rectOnPage(s, s.Kept).Holds(l.Extent()) {
					t.Errorf("%s, %s: %q is on what a join cuts away or covers", c.name, s.Name, l.Text)
				}
				if !slices.Contains([]geometry.Length{1.8, 2.5, 3.5, 5, 7, 10, 14, 20}, l.Height) {
					t.Errorf("%q is %g high, not a height of ISO 3098", l.Text, l.Height)
				}
			}
			for _, k := range furnitureOf(p).Strokes {
				if !slices.Contains([]geometry.Length{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2}, k.Pen.Width) {
					t.Errorf("a line %g wide, not a width of ISO 128-2", k.Pen.Width)
				}
			}
			text := strings.Join(all, "\n")
			number := fmt.Sprintf("sheet %s of %d", s.Name, len(c.sheets))
			if len(c.sheets) == 1 {
				number = "the only sheet"
			}
			want := append([]string{s.Name, "K7R4", "50 mm", "2 in", number, "same mark, same guide", "far edge", "you stand here", "number = order"}, panel.Lines...)
			for _, e := range []paper.Side{paper.LeftSide, paper.TopSide, paper.RightSide, paper.BottomSide} {
				want = append(want, neighbour(s, e))
			}
			if s.Left != "" || s.Above != "" {
				want = append(want, "cut")
			}
			for _, w := range want {
				if !strings.Contains(text, w) {
					t.Errorf("%s, %s does not say %q:\n%s", c.name, s.Name, w, text)
				}
			}
		}
	}
}

func TestEmptySheetsAreLeftOut(t *testing.T) {
	// A ring of marks round a cover: nothing on the sheets in the middle.
	ring := &paper.Drawing{Bounds: layout(900, 1200)}
	ring.Stroke(ring.Bounds.Grow(-10).Polygon().Path(), paper.Pen{Type: paper.Continuous, Width: 0.5, Ink: paper.Ink{}})
	g, err := planner.Plan(planner.Layout{Bounds: ring.Bounds}, paper.Setup{Stock: stock(t, "A4"), Margin: 7, Overlap: 12, Scale: paper.Scale{}})
	if err != nil {
		t.Fatal(err)
	}
	sheets, _ := Furnish(ring, g, Panel{})
	if want := 2*(g.Columns+g.Rows) - 4; len(sheets) != want || len(g.Sheets) <= want {
		t.Errorf("%d of %d sheets, want %d", len(sheets), len(g.Sheets), want)
	}
	for _, s := range sheets {
		if s.Row > 1 && s.Row < g.Rows && s.Column > 1 && s.Column < g.Columns {
			t.Errorf("%s shows nothing", s.Name)
		}
	}
	if sheets, pages := Furnish(&paper.Drawing{}, g, Panel{}); len(sheets)+len(pages) != 0 {
		t.Errorf("nothing to print, %d sheets", len(sheets))
	}
	for _, d := range []paper.Drawing{
		{Labels: []paper.Label{{Text: "fern", At: geometry.Pt(400, 500), Height: 5}}},
		{Fills: []paper.Fill{{Shape: paper.Disc(2), Place: paper.Place{At: geometry.Pt(400, 500)}}}},
		{Fills: []paper.Fill{{Shape: paper.Once(geometry.CircleOutline(geometry.Pt(400, 500), 50).Path())}}},
	} {
		if sheets, _ := Furnish(&d, g, Panel{}); len(sheets) == 0 {
			t.Errorf("%v is left out", d)
		}
	}
}
