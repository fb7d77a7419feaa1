package sheets

import (
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

func TestOverview(t *testing.T) {
	box := geometry.RectAt(geometry.Pt(20, 30), geometry.Size{W: 170, H: 200})
	for _, c := range layAll(t, samplePanel()) {
		views := Overview(c.drawing, c.sheets, box)
		if len(views) != 2 {
			t.Fatalf("%d views", len(views))
		}
		picture, over := views[0].Drawing, views[1].Drawing
		all := geometry.Rect{Min: box.Centre(), Max: box.Centre()}
		for _, d := range []*paper.Drawing{picture, over} {
			for _, s := range d.Strokes {
				all = all.Union(s.Bounds())
			}
		}
		if !box.Holds(all) {
			t.Errorf("%s: the picture takes %v of %v", c.name, all, box)
		}
		// As large as goes in: it reaches both edges one way.
		if all.W() < box.W()-1e-6 && all.H() < box.H()-1e-6 {
			t.Errorf("%s: the picture takes only %v of %v", c.name, all, box)
		}
		if len(over.Strokes) != len(c.sheets) || len(over.Labels) != len(c.sheets) || len(over.Fills) != len(c.sheets) {
			t.Fatalf("%s: %d sheets, %d outlines, %d names", c.name, len(c.sheets), len(over.Strokes), len(over.Labels))
		}
		for i, s := range c.sheets {
			cell, l := over.Strokes[i].Bounds(), over.Labels[i]
			if l.Text != s.Name || !l.Bold || !cell.Holds(l.Extent()) || !over.Fills[i].Bounds().Holds(l.Box()) {
				t.Errorf("%s: %s is named %q at %v in %v", c.name, s.Name, l.Text, l.Extent(), cell)
			}
			// One scale both ways, the same for all.
			k := cell.W() / s.Kept.W()
			k1 := over.Strokes[0].Bounds().W() / c.sheets[0].Kept.W()
			if d := cell.H() - k*s.Kept.H(); d > 1e-6 || d < -1e-6 || k-k1 > 1e-9 || k1-k > 1e-9 {
				t.Errorf("%s: %s, %v, is shown as %v", c.name, s.Name, s.Kept.Size(), cell.Size())
			}
			for j, other := range over.Strokes[:i] {
				if cell.Grow(-1e-6).Overlaps(other.Bounds().Grow(-1e-6)) {
					t.Errorf("%s: %s and %s overlap", c.name, s.Name, c.sheets[j].Name)
				}
			}
		}
	}
}

func TestOverviewLeavesOutWhatIsTooSmall(t *testing.T) {
	d := &paper.Drawing{Bounds: layout(10000, 10000)}
	pen := paper.Pen{Type: paper.Chain, Width: 0.7, Ink: paper.Ink{}}
	d.Stroke(geometry.Line(geometry.Pt(0, 0), geometry.Pt(10, 0)), pen)
	d.Stroke(geometry.Line(geometry.Pt(0, 0), geometry.Pt(0, 100)), pen)
	d.Write(paper.Label{Text: "fern", Height: 20})
	views := Overview(d, nil, geometry.RectAt(geometry.Point{}, geometry.Size{W: 100, H: 100}))
	picture := views[0].Drawing
	if len(picture.Strokes) != 1 || len(picture.Labels) != 0 {
		t.Fatalf("%d lines, %d labels", len(picture.Strokes), len(picture.Labels))
	}
	if p := picture.Strokes[0].Pen; p.Width != 0.13 || p.Type != paper.Chain {
		t.Errorf("drawn with %v", p)
	}
}
