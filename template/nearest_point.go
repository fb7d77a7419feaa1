package template

import (
	"math"

	"underlay/geometry"
)

// nearestPoint finds the nearest of many points, through a grid of square cells.
type nearestPoint struct {
	cell  geometry.Length
	cells map[[2]int][]geometry.Point
}

func newNearest(points []geometry.Point) nearestPoint {
	b := geometry.Rect{Min: points[0], Max: points[0]}
	for _, p := range points {
		b = b.Union(geometry.Rect{Min: p, Max: p})
	}
	side := max(b.W(), b.H())
	n := nearestPoint{cell: max(1, side/geometry.Length(math.Sqrt(float64(len(points))))), cells: map[[2]int][]geometry.Point{}}
	for _, p := range points {
		k := n.at(p)
		n.cells[k] = append(n.cells[k], p)
	}
	return n
}

func (n nearestPoint) at(p geometry.Point) [2]int {
	return [2]int{int(math.Floor(float64(p.X / n.cell))), int(math.Floor(float64(p.Y / n.cell)))}
}

// distance returns how far the nearest point is from p; where none is nearer than limit, it
// may return limit.
func (n nearestPoint) distance(p geometry.Point, limit geometry.Length) geometry.Length {
	best := limit
	at := n.at(p)
	// A point in ring r of cells is at least r - 1 cells away.
	for r := 0; geometry.Length(r-1)*n.cell < best; r++ {
		for dx := -r; dx <= r; dx++ {
			step := 1
			if dx != -r && dx != r {
				step = 2 * r // only the rim of the ring is new
			}
			for dy := -r; dy <= r; dy += step {
				for _, q := range n.cells[[2]int{at[0] + dx, at[1] + dy}] {
					best = min(best, p.Distance(q))
				}
			}
		}
	}
	return best
}
