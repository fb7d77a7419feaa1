package paper

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
)

func TestCountShownIsWhatSheetsMakes(t *testing.T) {
	for _, c := range layAll(t, sampleStrip()) {
		g, err := Plan(Layout{Bounds: c.drawing.Bounds}, Setup{stock(t, c.stock), c.margin, c.overlap, c.scale})
		if err != nil {
			t.Fatal(err)
		}
		if n := CountShown(c.drawing, g); n != len(c.sheets) {
			t.Errorf("%s: %d sheets are counted, %d made", c.name, n, len(c.sheets))
		}
	}
}

// Few marks on many sheets: most sheets stay empty, and lines pass by the corners of others.
func TestCountShownOfFewMarks(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 2))
	bounds := geometry.Rect{Max: geometry.Pt(500, 500)}
	point := func() geometry.Point {
		return geometry.Pt(geometry.Length(500*random.Float64()), geometry.Length(500*random.Float64()))
	}
	few := false
	for range 20 {
		d := &Drawing{Bounds: bounds}
		d.Stroke(geometry.Chain(point(), point(), point()), Pen{Continuous, 0.25, Ink{}})
		d.Stroke(geometry.CircleOutline(point(), 60).Path(), Pen{Continuous, 0.25, Ink{}})
		d.Fill(geometry.CircleOutline(point(), 1).Path(), Ink{})
		d.Write(Label{Text: "fern", At: point(), Height: 5})
		g, err := Plan(Layout{Bounds: bounds}, Setup{stock(t, "A6"), 5, 10, Scale{}})
		if err != nil {
			t.Fatal(err)
		}
		sheets, _ := Sheets(d, g, Strip{})
		if n := CountShown(d, g); n != len(sheets) {
			t.Errorf("%d sheets are counted, %d made", n, len(sheets))
		}
		few = few || len(sheets) < len(g.Sheets)
	}
	if !few {
		t.Error("no sheet was empty")
	}
}
