package template

import "underlay/geometry"

// straight sets prints out in rows and columns. Along an axis of length A, with face w, gap g
// and pitch p = w + g, the most prints is floor((A + g) / p).
func straight() repeat {
	t := lattice{
		steps: func(_ layout, pitch Spacing) (across, down geometry.Point) {
			return geometry.Pt(pitch.Across, 0), geometry.Pt(0, pitch.Down)
		},
		pitch: facePitch,
		index: func(_ layout, s geometry.Site) (column, row int) { return s.I, s.J },
	}
	return repeat{ways: t.ways, place: t.place, next: []geometry.Site{{I: 1}, {J: 1}}, grid: true}
}
