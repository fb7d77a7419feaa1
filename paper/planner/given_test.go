package planner

import (
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

// stock returns a paper by its name.
func stock(t testing.TB, name string) paper.Stock {
	t.Helper()
	s, err := paper.ParseStock(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// layout is what a guide of a size takes up, round a cloth whose corner is (0, 0).
func layout(w, h geometry.Length) geometry.Rect {
	return geometry.RectAt(geometry.Pt(-25, -25), geometry.Size{W: w, H: h})
}
