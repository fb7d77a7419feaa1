package motifs

import (
	"math"
	"slices"
)

// pebble is one round stone, its layers carved into it: close together at the top.
func pebble(b *block) {
	b.ink(oval(point{}, 0.5*b.w, 0.5*b.h, 0))
	layers(b, point{}, 0.5*b.w, 0.5*b.h, -0.56, -0.24, 0.2)
	for _, p := range []point{{-0.36, -0.02}, {-0.1, 0.02}, {0.16, -0.02}, {0.42, -0.07}} {
		b.cut(oval(point{p.x * 0.5 * b.w, p.y * 0.5 * b.h}, 0.03*b.w, 0.03*b.h, 0))
	}
	b.fit()
}

// layers cuts lines across a stone, at heights given as shares of half its own.
func layers(b *block, centre point, rx, ry float64, heights ...float64) {
	for i, y := range heights {
		reach := 0.80 * math.Sqrt(1-y*y)
		way := spline(
			point{centre.x - reach*rx, centre.y + (y+0.10)*ry}, point{centre.x - 0.4*reach*rx, centre.y + (y-0.04)*ry},
			point{centre.x + 0.35*reach*rx, centre.y + (y+0.05)*ry}, point{centre.x + reach*rx, centre.y + (y-0.07)*ry})
		b.cut(groove(way, even((0.16-0.02*float64(i))*math.Min(rx, ry))))
	}
}

// pebbles is a handful of stones, the small ones at the top.
func pebbles(b *block) {
	stones := []struct {
		at     point
		rx, ry float64
		turn   float64
		layers []float64
	}{
		{point{-0.20, 0.25}, 0.30, 0.24, -8, []float64{-0.35, 0.12}},
		{point{0.31, 0.29}, 0.19, 0.21, 10, []float64{-0.2}},
		{point{0.24, -0.13}, 0.25, 0.19, -18, []float64{-0.3, 0.2}},
		{point{-0.29, -0.18}, 0.21, 0.17, 14, []float64{-0.15}},
		{point{-0.06, -0.40}, 0.15, 0.10, -4, nil},
		{point{0.30, -0.42}, 0.16, 0.08, 6, nil},
	}
	for _, s := range stones {
		at := point{s.at.x * b.w, s.at.y * b.h}
		b.ink(oval(at, s.rx*b.w, s.ry*b.h, s.turn))
		layers(b, at, s.rx*b.w*0.94, s.ry*b.h, s.layers...)
	}
	b.fit()
}

// flatPebble is a flat stone inside the outline that the example gives, its corners worn off but those
// that reach furthest.
func flatPebble(b *block) {
	outline := loop{{0, 14}, {6, 4}, {18, 0}, {32, 2}, {42, 12}, {40, 24}, {28, 32}, {12, 30}, {3, 24}}
	n := len(outline)
	var worn loop
	furthest := []point{{0, 14}, {18, 0}, {42, 12}, {28, 32}}
	for i, p := range outline {
		if slices.Contains(furthest, p) {
			worn = append(worn, p.sub(point{21, 16}))
			continue
		}
		a, c := mix(p, outline[(i+n-1)%n], 0.3), mix(p, outline[(i+1)%n], 0.3)
		for k := range steps {
			t := float64(k) / (steps - 1)
			worn = append(worn, mix(mix(a, p, t), mix(p, c, t), t).sub(point{21, 16}))
		}
	}
	b.ink(worn)
	layers(b, point{0, 0.5}, 19, 14, -0.62, -0.30, 0.25)
	for _, p := range []point{{-8, 1}, {-2, 1.6}, {4, 1}, {10, -0.2}} {
		b.cut(oval(p, 1, 0.9, 0))
	}
}
