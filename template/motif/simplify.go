package motif

import (
	"underlay/geometry"
)

// longestRun is the most corners that are looked at together: what it takes grows with their square
// at worst.
const longestRun = 1000

// simplified returns a ring with fewer corners, some of its own: the ring stays within slack of it
// (D. Douglas and T. Peucker, 1973, from memory), so that a point further than that from the edge is
// in it as before. A ring that is no wider comes to less than three.
func simplified(ring []geometry.Point, slack geometry.Length) []geometry.Point {
	if slack <= 0 || len(ring) < 4 {
		return ring
	}
	far := farthest(ring)
	closed := append(ring[:len(ring):len(ring)], ring[0])
	kept := keepCorners(nil, closed[:far+1], slack)
	return keepCorners(kept, closed[far:], slack)
}

// farthest is the corner that is farthest from the first.
func farthest(ring []geometry.Point) int {
	best, most := 0, geometry.Length(-1)
	for i, p := range ring {
		if d := p.Distance(ring[0]); d > most {
			best, most = i, d
		}
	}
	return best
}

// keepCorners appends the corners to keep of a run, but its last.
func keepCorners(kept, run []geometry.Point, slack geometry.Length) []geometry.Point {
	for len(run) > longestRun {
		kept = split(kept, run[:longestRun], slack)
		run = run[longestRun-1:]
	}
	return split(kept, run, slack)
}

func split(kept, run []geometry.Point, slack geometry.Length) []geometry.Point {
	a, b := run[0], run[len(run)-1]
	worst, most := 0, slack*slack
	for i := 1; i < len(run)-1; i++ {
		if d := squareFrom(run[i], a, b); d > most {
			worst, most = i, d
		}
	}
	if worst == 0 {
		return append(kept, a)
	}
	return split(split(kept, run[:worst+1], slack), run[worst:], slack)
}

// squareFrom is the square of the distance of p from the straight piece a to b.
func squareFrom(p, a, b geometry.Point) geometry.Length {
	d, q := b.Sub(a), p.Sub(a)
	if n := d.X*d.X + d.Y*d.Y; n > 0 {
		q = q.Sub(d.Mul(float64(min(max((q.X*d.X+q.Y*d.Y)/n, 0), 1))))
	}
	return q.X*q.X + q.Y*q.Y
}
