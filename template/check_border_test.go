package template

import (
	"testing"

	"underlay/geometry"
)

// TestDeeperThan checks figures whose deepest point is known: a rectangle is half its
// shorter side deep, a triangle as deep as its inscribed circle, of radius 2 area /
// perimeter (Euclid, Elements IV.4).
func TestDeeperThan(t *testing.T) {
	pt := geometry.Pt
	for _, c := range []struct {
		name  string
		p     geometry.Polygon
		depth geometry.Length
	}{
		{"square", geometry.Polygon{pt(0, 0), pt(100, 0), pt(100, 100), pt(0, 100)}, 50},
		{"strip", geometry.Polygon{pt(0, 0), pt(500, 0), pt(500, 20), pt(0, 20)}, 10},
		{"triangle 3 4 5", geometry.Polygon{pt(0, 0), pt(300, 0), pt(0, 400)}, 100},
		{"a narrow L", geometry.Polygon{pt(0, 0), pt(1000, 0), pt(1000, 100), pt(100, 100), pt(100, 1000), pt(0, 1000)}, 58.579},
	} {
		if !deeperThan(c.p, c.depth-0.3) {
			t.Errorf("%s: not deeper than %v", c.name, c.depth-0.3)
		}
		if deeperThan(c.p, c.depth) {
			t.Errorf("%s: deeper than %v", c.name, c.depth)
		}
	}
}
