package sheets

import (
	"fmt"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
)

// cushion is a guide of square prints with their wood, arrows, dots, numbers and ticks.
func cushion(cover, block geometry.Length) *paper.Drawing {
	const gap, reach = 1, 25
	c := geometry.RectAt(geometry.Point{}, geometry.Size{W: cover, H: cover})
	d := &paper.Drawing{Bounds: c.Grow(reach)}
	d.Stroke(c.Polygon().Path(), paper.Pen{Type: paper.Continuous, Width: 0.5, Ink: paper.Ink{}})
	m := cover / 2
	d.Stroke(geometry.Line(geometry.Pt(m, -reach), geometry.Pt(m, cover+reach)), paper.Pen{Type: paper.Chain, Width: 0.25, Ink: paper.Ink{}})
	d.Stroke(geometry.Line(geometry.Pt(-reach, m), geometry.Pt(cover+reach, m)), paper.Pen{Type: paper.Chain, Width: 0.25, Ink: paper.Ink{}})
	n := int((cover - 2*reach + gap) / (block + gap))
	first := m - (geometry.Length(n)*(block+gap)-gap)/2
	for row := range n {
		y := first + geometry.Length(row)*(block+gap)
		d.Stroke(geometry.Line(geometry.Pt(-20, y), geometry.Pt(-3, y)), paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}})
		d.Write(paper.Label{Text: fmt.Sprint("row ", row+1), At: geometry.Pt(-20, y+2), Anchor: paper.AnchorTopLeft, Height: 2.5})
		for column := range n {
			x := first + geometry.Length(column)*(block+gap)
			r := geometry.RectAt(geometry.Pt(x, y), geometry.Size{W: block, H: block})
			d.Stroke(r.Polygon().Path(), paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}})
			d.Stroke(r.Grow(3).Polygon().Path(), paper.Pen{Type: paper.Dashed, Width: 0.25, Ink: paper.Ink{}})
			d.Stroke(geometry.UpArrow(r.Centre(), block/4, 0), paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}})
			d.Fill(geometry.CircleOutline(geometry.Pt(r.Min.X+3, r.Max.Y-3), 1).Path(), paper.Ink{})
			d.Write(paper.Label{Text: fmt.Sprint(row*n + column + 1), At: r.Centre().Add(geometry.Pt(block/4, 0)), Height: 2.5})
		}
	}
	return d
}

// squares is squared paper: a line every 10 mm both ways, and a word here and there; with
// text, a word in every square.
func squares(w, h geometry.Length, text bool) *paper.Drawing {
	d := &paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: w, H: h})}
	pen := paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}}
	for x := geometry.Length(0); x <= w; x += 10 {
		d.Stroke(geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, h)), pen)
	}
	for y := geometry.Length(0); y <= h; y += 10 {
		d.Stroke(geometry.Line(geometry.Pt(0, y), geometry.Pt(w, y)), pen)
		for x := geometry.Length(5); x < w && y < h; x += 10 {
			if text || math.Mod(float64(x+3*y), 70) == 5 {
				d.Write(paper.Label{Text: "leaf", At: geometry.Pt(x, y+5), Height: 2.5})
			}
		}
	}
	return d
}

// rounds are overlapping circles, all curves.
func rounds(w, h geometry.Length) *paper.Drawing {
	d := &paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: w, H: h})}
	for x := geometry.Length(20); x <= w-20; x += 25 {
		for y := geometry.Length(20); y <= h-20; y += 25 {
			d.Stroke(geometry.CircleOutline(geometry.Pt(x, y), 20).Path(), paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}})
		}
	}
	return d
}

type setting struct {
	name    string
	drawing *paper.Drawing
	stock   string
	margin  geometry.Length
	overlap geometry.Length
	scale   paper.Scale
}

func settings() []setting {
	none := paper.Scale{}
	off := paper.Correction(179.2, 252)
	return []setting{
		{"cushion", cushion(500, 90), "A4", 7, 12, none},
		{"cushion, corrected", cushion(500, 90), "A4", 7, 12, off},
		{"small blocks on Letter", cushion(400, 30), "Letter", 8, 12, none},
		{"lying and corrected", squares(770, 270, false), "A3", 7, 12, off},
		{"small sheets", cushion(300, 60), "A6", 5, 10, none},
		{"tiny sheets", cushion(200, 60), "50 x 60 mm", 3, 8, off},
		{"narrow overlap", cushion(400, 90), "A4", 7, 4, none},
		{"no overlap", cushion(400, 90), "A4", 7, 0, none},
		{"squared paper", squares(600, 500, false), "A4", 7, 12, none},
		{"text everywhere", squares(500, 400, true), "A4", 7, 12, none},
		{"rounds", rounds(500, 500), "A4", 7, 12, none},
		{"roll", cushion(800, 90), "roll 610 mm", 5, 20, off},
		{"one sheet", cushion(500, 90), "one sheet", 10, 12, none},
	}
}

// laid is a spread laid out on its sheets.
type laid struct {
	setting
	sheets []paper.Sheet
	pages  []paper.Page
}

func layAll(t *testing.T, panel Panel) []laid {
	t.Helper()
	var all []laid
	for _, c := range settings() {
		g, err := planner.Plan(planner.Layout{Bounds: c.drawing.Bounds}, paper.Setup{Stock: stock(t, c.stock), Margin: c.margin, Overlap: c.overlap, Scale: c.scale})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		sheets, pages := Furnish(c.drawing, g, panel)
		if len(sheets) == 0 || len(pages) != len(sheets) {
			t.Fatalf("%s: %d sheets, %d pages", c.name, len(sheets), len(pages))
		}
		all = append(all, laid{c, sheets, pages})
	}
	return all
}

func samplePanel() Panel {
	var dot paper.Drawing
	dot.StampFill(paper.Disc(1.1), paper.Place{}, paper.Ink{}, paper.Role{})
	return Panel{
		Title: "floor cushion, front", Lines: []string{"fern 90 × 90 mm, gap 1 mm", "border 23 mm"}, Mark: "K7R4",
		Key: []KeyLine{{Text: "number = order"}, {Sign: dot, Text: "this corner first"}},
		Far: "far edge", Near: "you stand here",
	}
}
