package motifs

import "math"

// fern is a rising frond: a stem with leaflets to the left and right in turn, each notched like a fern's
// and with its rib cut.
func fern(b *block) {
	w, h := b.w, b.h
	n := 2 * int(math.Round(7.5*math.Sqrt(h/w)))
	stem := spline(point{-0.06 * w, 0.5 * h}, point{0.01 * w, 0.25 * h}, point{0.005 * w, -0.12 * h}, point{0.05 * w, -0.5 * h})
	b.ink(groove(stem, func(t float64) float64 { return 0.045*w*(1-t) + 0.008*w }))
	for i := range n {
		side := 1.0
		if i%2 == 0 {
			side = -1
		}
		share := float64(i) / float64(n)
		foot := along(stem, 0.12+0.78*math.Pow(share, 0.95))
		reach := 0.5 * w * envelope(share)
		tip := point{foot.x + side*reach, foot.y - (0.16+0.62*share)*reach - 0.02*h}
		leaflet(b, foot, tip, 2*0.74*h/float64(n)*(1.02-0.2*share))
	}
	leaflet(b, along(stem, 0.86), along(stem, 1), 0.08*h)
	b.fit()
}

// envelope is how far the leaflets reach, as a share of the most, from the foot of a frond to its tip.
func envelope(t float64) float64 {
	return math.Pow(math.Sin(math.Pi*math.Pow(0.09+0.88*t, 0.55)), 0.75)
}

// leaflet is one leaf of a frond, bent upwards, rounded lobes along its sides.
func leaflet(b *block, foot, tip point, width float64) {
	way := tip.sub(foot)
	n := way.length()
	bend := 0.09 * n
	if way.x < 0 {
		bend = -bend
	}
	if math.Abs(way.x) < 0.3*n {
		bend = 0
	}
	rib := fine(spline(foot, mix(foot, tip, 0.55).sub(way.unit().left().times(bend)), tip), 120)
	lobes := max(3, math.Round(n/(0.62*width)))
	b.ink(groove(rib, func(t float64) float64 {
		body := math.Min(1, 3.2*t+0.35) * math.Pow(math.Max(0, 1-math.Pow(t, 2.2)), 0.75)
		return width * body * (0.66 + 0.34*math.Sqrt(math.Abs(math.Sin(math.Pi*(lobes*t+0.25)))))
	}))
	b.cut(groove(rib[4:96], pointed(0.14*width)))
}
