package sheets

import (
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
)

// TestNamesOnEverySheet names parts of a drawing that lie on several sheets: each sheet that shows
// some of one has its name, all of its words, once, within what it shows, on white ground, and no
// other text on it; a part too small for its name has it beside it, joined by a leader.
func TestNamesOnEverySheet(t *testing.T) {
	d := &paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: 700, H: 500})}
	d.Stroke(d.Bounds.Polygon().Path(), paper.Pen{Width: 0.5})
	parts := map[string]geometry.Rect{
		"pocket":                           geometry.RectAt(geometry.Pt(150, 200), geometry.Size{W: 400, H: 120}),
		"the channel for the cord on top":  geometry.RectAt(geometry.Pt(20, 30), geometry.Size{W: 660, H: 15}),
		"button":                           geometry.RectAt(geometry.Pt(30, 400), geometry.Size{W: 4, H: 3}),
		"a handle sewn on with long words": geometry.RectAt(geometry.Pt(600, 100), geometry.Size{W: 24, H: 60}),
	}
	for name, r := range parts {
		d.Stroke(r.Polygon().Path(), paper.Pen{Width: 0.25})
		d.Stroke(geometry.Line(r.Min, r.Max), paper.Pen{Width: 0.25})
		d.Name(paper.Name{Text: name, Of: r})
	}
	tiling, err := planner.Plan(planner.Layout{Bounds: d.Bounds}, paper.Setup{Stock: stock(t, "A4"), Margin: 7, Overlap: 12})
	if err != nil {
		t.Fatal(err)
	}
	sheets, pages := Furnish(d, tiling, Panel{Lines: []string{"nook"}, Mark: "K7R4"})
	named := 0
	for i, s := range sheets {
		furniture := pages[i].Views[1].Drawing
		for name, r := range parts {
			shown := rectOnPage(s, r.Intersect(s.Area))
			var box geometry.Rect
			var said []string
			for _, l := range furniture.Labels {
				if l.Ground && strings.Contains(" "+name+" ", " "+l.Text+" ") {
					if said == nil {
						box = l.Extent()
					}
					said, box = append(said, l.Text), box.Union(l.Extent())
				}
			}
			if shows := r.Intersect(s.Area); min(shows.W(), shows.H()) < leastNamed {
				if said != nil {
					t.Errorf("sheet %s names %s, which it does not show", s.Name, name)
				}
				continue
			}
			named++
			if got := strings.Join(said, " "); got != name {
				t.Errorf("sheet %s calls %s %q", s.Name, name, got)
				continue
			}
			for _, l := range furniture.Labels {
				if e := l.Extent(); e.Overlaps(box) && !box.Holds(e) {
					t.Errorf("sheet %s: %s stands on %q", s.Name, name, l.Text)
				}
			}
			if name != "button" {
				if !shown.Holds(box) {
					t.Errorf("sheet %s: %s stands at %v, shown %v", s.Name, name, box, shown)
				}
				continue
			}
			led := false
			for _, st := range furniture.Strokes {
				path := st.Path()
				if len(path) == 1 && len(path[0].Steps) == 1 && box.Grow(0.5).Contains(path[0].Start) && shown.Contains(path[0].Steps[0].To) {
					led = true
				}
			}
			if !led {
				t.Errorf("sheet %s: no leader from %q to its place", s.Name, name)
			}
		}
	}
	if named < 9 {
		t.Errorf("%d names were looked for", named)
	}
	// The whole drawing names each once, in its middle.
	for _, n := range d.Names {
		labels := n.Whole()
		box := labels[0].Box()
		for _, l := range labels {
			box = box.Union(l.Box())
		}
		if c := box.Centre(); c.Distance(n.Of.Centre()) > 0.01 {
			t.Errorf("%s is named at %v, its middle is %v", n.Text, c, n.Of.Centre())
		}
	}
}
