package paper_test

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
)

// A cushion of 50 x 50 cm on sheets of A4.
func ExamplePlan() {
	a4, err := paper.ParseStock("A4")
	if err != nil {
		fmt.Println(err)
		return
	}
	layout := geometry.Rect{Max: geometry.Pt(500, 500)}
	t, err := planner.Plan(planner.Layout{Bounds: layout}, paper.Setup{Stock: a4, Margin: 7, Overlap: 12})
	if err != nil {
		fmt.Println(err)
		return
	}
	covered := t.Sheets[0].Area
	for _, s := range t.Sheets {
		covered = covered.Union(s.Area)
	}
	fmt.Println(t.Rows, "by", t.Columns, "sheets hold it all:", covered.Holds(layout))
	// Output: 2 by 3 sheets hold it all: true
}

// A shape is made once and put down at each place.
func ExampleDrawing_Stamp() {
	fern := paper.NewShape(geometry.RectAround(geometry.Point{}, geometry.Size{W: 90, H: 60}).Polygon().Path())
	var d paper.Drawing
	for i := range 3 {
		at := paper.Place{At: geometry.Pt(geometry.Length(i)*91, 100), Turn: 90}
		d.Stamp(fern, at, paper.Pen{Width: 0.35}, paper.Role{Kind: "edge", Number: i + 1})
	}
	last := d.Strokes[2]
	fmt.Println(last.Role.Kind, last.Role.Number, "is", last.Bounds().W(), "mm wide, in the middle of", last.Bounds().Centre())
	// Output: edge 3 is 60 mm wide, in the middle of {182 100}
}

// What a printer makes 0.8 mm too short is drawn that much longer.
func ExampleCorrection() {
	s := paper.Correction(179.2, 0)
	fmt.Printf("%.4f across, %g down\n", s.Across, s.Down)
	// Output: 1.0045 across, 1 down
}
