package trace

import (
	"math"
	"slices"

	"underlay/geometry"
)

// blur returns how far the edges of the marks are smeared: the standard deviation of a smear that
// follows the normal law, in the mean, and of the mark and in the direction where it is largest.
//
// Across such an edge, from ink 0 to paper 1, the integral of u (1 - u) is the deviation divided by
// the square root of pi; noise, which has no sign, hardly changes it.
func (g *grey) blur(f Frame, v view) (mean, worst geometry.Length) {
	const step = 0.05
	from, to := 0.8*float64(f.MarkRadius), 1.2*float64(f.MarkRadius)
	var most, sum, n float64
	for _, m := range f.Marks {
		p, ok := g.patch(v.ellipse(pt(m.Centre), float64(f.MarkRadius)), 1.1, 1.22)
		if !ok {
			continue
		}
		// A smear that has a direction widens opposite edges alike.
		const directions, each = 6, 8
		var sums [directions]float64
		for i := range 2 * directions * each {
			turn := 2 * math.Pi * float64(i) / (2 * directions * each)
			way := point{math.Cos(turn), math.Sin(turn)}
			for r := from; r < to; r += step {
				u := p.between(v.at(pt(m.Centre).add(way.mul(r))))
				sums[i/each%directions] += u * (1 - u) * step / (2 * each)
			}
		}
		most = max(most, slices.Max(sums[:]))
		for _, s := range sums {
			sum, n = sum+s, n+1
		}
	}
	root := math.Sqrt(math.Pi)
	return geometry.Length(sum / max(n, 1) * root), geometry.Length(most * root)
}

// between returns the value at a point, between pixels in proportion.
func (p *patch) between(q point) float64 {
	w, h := p.r.Dx(), p.r.Dy()
	x := min(max(q.x-0.5-float64(p.r.Min.X), 0), float64(w-1)-1e-9)
	y := min(max(q.y-0.5-float64(p.r.Min.Y), 0), float64(h-1)-1e-9)
	o := int(y)*w + int(x)
	fx, fy := x-math.Floor(x), y-math.Floor(y)
	return (p.of[o]*(1-fx)+p.of[o+1]*fx)*(1-fy) + (p.of[o+w]*(1-fx)+p.of[o+w+1]*fx)*fy
}

// What sharpened takes: the second derivatives over so many deviations, where there is more of the
// print in them than of noise, and so many times as much of them as the first order has, which is
// what brings the tips of triangles and the rims of rings nearest to their places.
const (
	sharpReach = 2
	sharpTimes = 2
)

// sharpened takes a smear of the given deviation, in pixels, back from what is w wide: a smear adds
// half its square times the second derivatives to a picture, to the first order, and they are taken
// off again. Tips that the smear has worn off come back; a straight edge stays where it is.
func sharpened(of []float32, w int, deviation float64) []float32 {
	d := max(int(math.Round(deviation*sharpReach)), 1)
	k := float32(sharpTimes * deviation * deviation / 2 / float64(d*d))
	out := make([]float32, len(of))
	h := len(of) / w
	for y := range h {
		up, down := max(y-d, 0)*w, min(y+d, h-1)*w
		for x := range w {
			left, right := max(x-d, 0), min(x+d, w-1)
			here := of[y*w+x]
			out[y*w+x] = here - k*(of[y*w+left]+of[y*w+right]+of[up+x]+of[down+x]-4*here)
		}
	}
	return out
}
