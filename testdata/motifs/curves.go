package motifs

import "math"

// oval returns an ellipse, turned clockwise by so many degrees.
func oval(centre point, rx, ry, turn float64) loop {
	const n = 96
	l := make(loop, n)
	for i := range l {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		l[i] = centre.add(point{rx * cos, ry * sin}.turned(turn))
	}
	return l
}

// steps is how many points a curve has between two that it is given.
const steps = 14

// spline returns points along a smooth curve through those given (Catmull and Rom's way).
func spline(p ...point) []point {
	at := func(i int) point { return p[min(max(i, 0), len(p)-1)] }
	var out []point
	for i := range len(p) - 1 {
		for k := range steps {
			out = append(out, between(at(i-1), at(i), at(i+1), at(i+2), float64(k)/steps))
		}
	}
	return append(out, p[len(p)-1])
}

// between returns the point a share t of the way from b to c on a curve that comes from a and goes on
// to d.
func between(a, b, c, d point, t float64) point {
	f := func(a, b, c, d float64) float64 {
		return b + t/2*((c-a)+t*((2*a-5*b+4*c-d)+t*(3*(b-c)+d-a)))
	}
	return point{f(a.x, b.x, c.x, d.x), f(a.y, b.y, c.y, d.y)}
}

// groove returns what a gouge leaves along a curve: width says how wide it is a share t along.
func groove(way []point, width func(t float64) float64) loop {
	n := len(way)
	l := make(loop, 2*n)
	for i, p := range way {
		d := way[min(i+1, n-1)].sub(way[max(i-1, 0)]).unit().left().times(width(float64(i)/float64(n-1)) / 2)
		l[i], l[2*n-1-i] = p.add(d), p.sub(d)
	}
	return l
}

// even is the width of a groove with ends that run out.
func even(width float64) func(float64) float64 {
	return func(t float64) float64 { return width * math.Sqrt(math.Max(0, math.Min(1, 8*math.Min(t, 1-t)))) }
}

// pointed is the width of a groove that begins at its widest and ends in a point.
func pointed(width float64) func(float64) float64 {
	return func(t float64) float64 { return width * (1 - t*t) }
}

// along returns the point a share t of the way along a curve.
func along(way []point, t float64) point {
	i := t * float64(len(way)-1)
	k := min(int(i), len(way)-2)
	return mix(way[k], way[k+1], i-float64(k))
}

// fine returns so many points along a curve.
func fine(way []point, n int) []point {
	out := make([]point, n)
	for i := range out {
		out[i] = along(way, float64(i)/float64(n-1))
	}
	return out
}
