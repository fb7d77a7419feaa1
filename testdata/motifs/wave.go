package motifs

import "math"

// wave is bands of water that lean as they roll, a finer line under each. They run on from print to
// print: they leave at the right edge where they come in at the left.
func wave(b *block) {
	w, h := b.w, b.h
	crests := math.Round(w / 30)
	bands := math.Round(h / 13)
	apart, pitch := w/crests, h/bands
	// swell returns points along a wave line, between two shares of the way from crest to crest.
	swell := func(y, height, from, to float64) []point {
		const n = 100
		var way []point
		for i := range int((to-from)*n) + 1 {
			u := from + float64(i)/n
			sin, cos := math.Sincos(2 * math.Pi * u)
			way = append(way, point{apart*(u+0.5+0.08*cos-0.045*sin) - w/2, y - height*cos})
		}
		return way
	}
	band := func(upper, lower []point) {
		l := loop(upper)
		for i := range lower {
			l = append(l, lower[len(lower)-1-i])
		}
		for i, p := range l {
			l[i].x = min(max(p.x, -w/2), w/2)
		}
		b.ink(l)
	}
	for i := range int(bands) {
		y := (float64(i)+0.5)*pitch - 0.5*h
		band(swell(y-0.10*pitch, 0.36*pitch, -1.5, crests+0.5), swell(y+0.26*pitch, 0.20*pitch, -1.5, crests+0.5))
		band(swell(y+0.42*pitch, 0.18*pitch, -1.5, crests+0.5), swell(y+0.55*pitch, 0.15*pitch, -1.5, crests+0.5))
		for c := range int(crests) {
			b.cut(groove(swell(y+0.10*pitch, 0.28*pitch, float64(c)-0.24, float64(c)+0.16), even(0.12*pitch)))
		}
	}
	b.fit()
}
