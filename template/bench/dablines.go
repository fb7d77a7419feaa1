package bench

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// dabLine is where the line between a part and its name begins and ends.
type dabLine struct {
	part geometry.Point  // of the face
	y    geometry.Length // on the page, in the middle of the colour's name
}

// rows lays n names below each other beside a face, in the order of the dabs or in another if lines are a
// good deal shorter so, and finds for each a point well within its part.
func (d dabbed) rows(n int, s scaled, box geometry.Rect) []dabLine {
	parts := d.points(n)
	best := make([][]dabLine, n) // by name, then row
	cost := make([][]geometry.Length, n)
	for k := range n {
		best[k], cost[k] = make([]dabLine, n), make([]geometry.Length, n)
		depth := make([]geometry.Length, len(parts[k]))
		for i, p := range parts[k] {
			depth[i] = d.depth(p, k, parts, dabDot*1.2/s.K)
		}
		for row := range n {
			y := box.Centre().Y - 2 + dabRow*(geometry.Length(row)-geometry.Length(n-1)/2)
			least := geometry.Length(math.Inf(1))
			for i, p := range parts[k] {
				at := s.At(p)
				c := (at.Y - y).Abs() + (s.At(d.block.Face.Bounds().Max).X-at.X)*0.3 + (slices.Max(depth)-depth[i])*s.K*20
				if c < least {
					least, best[k][row], cost[k][row] = c, dabLine{p, y}, c
				}
			}
		}
	}
	rows := make([]dabLine, n)
	for k, row := range cheapest(cost) {
		rows[k] = best[k][row]
	}
	return rows
}

// points returns points all over a face, by the part that has them: those of the dabs, then of n parts
// the one that none has; one at the least of each, however small it is.
func (d dabbed) points(n int) [][]geometry.Point {
	parts := make([][]geometry.Point, n)
	face := d.block.Face
	bounds := face.Bounds()
	const fine = 40 // points along the whole width, and lines at first
	for lines := geometry.Length(fine); lines < 10_000; lines *= 2 {
		found := make([][]geometry.Point, n)
		for y := bounds.Min.Y + bounds.H()/lines/2; y < bounds.Max.Y; y += bounds.H() / lines {
			left := face.Across(y)
			all := job.DabSpans(d.dabs, face, y)
			for _, spans := range all {
				left = left.Less(spans)
			}
			for k, spans := range append(all, left)[:n] {
				for _, span := range spans {
					along := math.Ceil(float64((span.To - span.From) / bounds.W() * fine))
					for i := range int(along) {
						x := span.From + (span.To-span.From)*geometry.Length((float64(i)+0.5)/along)
						found[k] = append(found[k], geometry.Pt(x, y))
					}
				}
			}
		}
		more := false
		for k := range parts {
			if len(parts[k]) == 0 {
				parts[k] = found[k]
			}
			more = more || len(parts[k]) == 0
		}
		if !more {
			return parts
		}
	}
	for k := range parts { // thinner than can be drawn
		if len(parts[k]) == 0 {
			parts[k] = []geometry.Point{{}}
		}
	}
	return parts
}

// depth is how far a point of one of the parts is from the others and from the edge of the face, at most so
// far.
func (d dabbed) depth(p geometry.Point, part int, parts [][]geometry.Point, most geometry.Length) geometry.Length {
	if centre, r, round := d.block.Face.Round(); round {
		most = min(most, r-p.Distance(centre))
	} else {
		most = min(most, d.block.Face.Corners().EdgeDistance(p))
	}
	for k, others := range parts {
		if k == part {
			continue
		}
		for _, q := range others {
			most = min(most, p.Distance(q))
		}
	}
	return most
}

// cheapest gives each name a row of its own so that the costs, by name and row, come to little: from
// the names in order it changes two while that helps a good deal.
func cheapest(cost [][]geometry.Length) []int {
	order := make([]int, len(cost))
	for i := range order {
		order[i] = i
	}
	for changed := true; changed; {
		changed = false
		for i := range order {
			for k := range i {
				if cost[i][order[k]]+cost[k][order[i]] < cost[i][order[i]]+cost[k][order[k]]-dabSwap {
					order[i], order[k], changed = order[k], order[i], true
				}
			}
		}
	}
	return order
}
