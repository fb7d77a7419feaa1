package sheets

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
)

// rimOf is a cloth, its edge and ticks outside it drawn, as a layout and its rim.
func rimOf(edge geometry.Path, reach geometry.Length) (*paper.Drawing, planner.Layout, planner.Rim) {
	b := edge.Bounds()
	d := &paper.Drawing{Bounds: b.Grow(reach)}
	d.Stroke(edge, paper.Pen{Type: paper.Continuous, Width: 0.5, Ink: paper.Ink{}})
	for x := b.Min.X + 10; x < b.Max.X; x += 37 {
		for _, y := range []geometry.Length{b.Min.Y - 6, b.Max.Y + 1} {
			d.Stroke(geometry.Line(geometry.Pt(x, y), geometry.Pt(x, y+5)), paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}})
			d.Write(paper.Label{Text: fmt.Sprint(int(x)), At: geometry.Pt(x+1, y+3), Anchor: paper.AnchorLeft, Height: 2.5})
		}
	}
	return d, planner.Layout{Bounds: d.Bounds, Marks: planner.Boxes(d)}, planner.Rim{Edge: edge, Sides: [4]string{"far", "right", "near", "left"}, Rest: "edge"}
}

// Strips show all there is, lie on their pages without covering each other, and hang together.
func TestStripsShowTheWholeEdge(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 9))
	cut := 0
	for i := range 60 {
		size := geometry.Size{W: geometry.Length(300 + r.Float64()*1300), H: geometry.Length(300 + r.Float64()*1300)}
		cloth := geometry.RectAt(geometry.Point{}, size)
		edge := cloth.Polygon().Path()
		switch i % 3 {
		case 1:
			edge = geometry.CircleOutline(geometry.Pt(size.W/2, size.W/2), size.W/2).Path()
		case 2:
			edge = geometry.Polygon{{X: 0, Y: 0}, {X: size.W, Y: 0}, {X: size.W * 0.6, Y: size.H}}.Path()
		}
		d, l, rim := rimOf(edge, geometry.Length(15+r.IntN(25)))
		name := []string{"A4", "A3", "Letter", "A5", "roll 610 mm"}[r.IntN(5)]
		s := paper.Setup{Stock: stock(t, name), Margin: 7, Overlap: geometry.Length(r.IntN(16)), Scale: paper.Scale{Across: 0.98 + 0.04*r.Float64(), Down: 0.98 + 0.04*r.Float64()}}
		g, ok := planner.PlanStrips(l, rim, s)
		if !ok {
			continue
		}
		cut++
		label := fmt.Sprintf("job %d, %v, kind %d on %s", i, size, i%3, name)
		byName := map[string]paper.Sheet{}
		for _, a := range g.Sheets {
			if _, twice := byName[a.Name]; twice {
				t.Errorf("%s: two strips are called %s", label, a.Name)
			}
			byName[a.Name] = a
			page := geometry.RectAt(geometry.Point{}, a.Page).Grow(1e-4 - s.Margin)
			if !page.Holds(a.Usable()) {
				t.Errorf("%s: %s at %v is not on its page, %v", label, a.Name, a.Usable(), page)
			}
			if a.Scale != s.Scale.OnPage(a.Page.W > a.Page.H) && name != "roll 610 mm" {
				t.Errorf("%s: %s on a page of %v is drawn at %v", label, a.Name, a.Page, a.Scale)
			}
			for _, b := range g.Sheets {
				if a.Name < b.Name && a.Leaf == b.Leaf && a.Usable().Grow(-1e-4).Overlaps(b.Usable()) {
					t.Errorf("%s: %s and %s lie on each other", label, a.Name, b.Name)
				}
			}
		}
		for _, a := range g.Sheets {
			for _, j := range a.Joined {
				b := byName[j.Name]
				line := geometry.Rect{Min: j.From, Max: j.To}
				if !a.Area.Grow(1e-6).Holds(line) || !b.Area.Grow(1e-6).Holds(line) {
					t.Errorf("%s: %s and %s join along %v", label, a.Name, b.Name, line)
				}
				back := 0
				for _, k := range b.Joined {
					if k.Name == a.Name && k.From == j.From && k.Cut != j.Cut {
						back++
					}
				}
				if back != 1 {
					t.Errorf("%s: %s joins %s, which joins it %d times", label, a.Name, b.Name, back)
				}
			}
		}
		if n := together(g.Sheets); n != len(g.Sheets) {
			t.Errorf("%s: %d of %d strips hang together", label, n, len(g.Sheets))
		}
		for _, stroke := range d.Strokes {
			for _, piece := range stroke.Path() {
				points := paper.Flatten(piece)
				if piece.Closed {
					points = append(points, piece.Start)
				}
				for k, q := range points[1:] {
					for n := 0.0; n <= 200; n++ {
						p := points[k].Add(q.Sub(points[k]).Mul(n / 200))
						shown := false
						for _, a := range g.Sheets {
							shown = shown || a.Area.Contains(p)
						}
						if !shown {
							t.Fatalf("%s: %v is on no strip", label, p)
						}
					}
				}
			}
		}
		sheets, pages := Furnish(d, g, samplePanel())
		if len(pages) != g.Leaves() || len(sheets) != len(g.Sheets) {
			t.Errorf("%s: %d pages for %d", label, len(pages), g.Leaves())
		}
	}
	if cut < 30 {
		t.Errorf("only %d rims were cut into strips", cut)
	}
}

// together returns how many strips hang together with the first.
func together(sheets []paper.Sheet) int {
	byName := map[string]paper.Sheet{}
	for _, s := range sheets {
		byName[s.Name] = s
	}
	met, queue := map[string]bool{sheets[0].Name: true}, []paper.Sheet{sheets[0]}
	for len(queue) > 0 {
		s := queue[0]
		queue = queue[1:]
		for _, j := range s.Joined {
			if !met[j.Name] {
				met[j.Name] = true
				queue = append(queue, byName[j.Name])
			}
		}
	}
	return len(met)
}

// A floor cushion of 50 x 50 cm takes four sheets for the desk at the most.
func TestStripsOfACushion(t *testing.T) {
	_, l, rim := rimOf(geometry.RectAt(geometry.Point{}, geometry.Size{W: 500, H: 500}).Polygon().Path(), 25)
	g, ok := planner.PlanStrips(l, rim, paper.Setup{Stock: stock(t, "A4"), Margin: 7, Overlap: 12, Scale: paper.Scale{}})
	if !ok || g.Leaves() > 4 {
		t.Errorf("%d pages, %v", g.Leaves(), ok)
	}
	for _, s := range g.Sheets {
		if w := min(s.Area.W(), s.Area.H()); w < 45 || w > 55 {
			t.Errorf("%s is %v wide", s.Name, w)
		}
	}
	if _, ok := planner.PlanStrips(l, rim, paper.Setup{Stock: stock(t, "one sheet"), Margin: 7, Overlap: 12, Scale: paper.Scale{}}); ok {
		t.Error("one sheet is cut into strips")
	}
}
