package plan

import (
	"math"

	"underlay/geometry"
)

// nearestPoint finds the nearest of many points, through a grid of square cells over them.
type nearestPoint struct {
	corner  geometry.Point // top left of the grid
	cell    geometry.Length
	columns int
	rows    int
	cells   [][]geometry.Point // row by row
}

// newNearestPoint makes the grid, of about as many cells as there are points.
func newNearestPoint(points []geometry.Point) nearestPoint {
	b := geometry.Rect{Min: points[0], Max: points[0]}
	for _, p := range points {
		b = b.Union(geometry.Rect{Min: p, Max: p})
	}
	area := math.Max(1, float64(b.W())) * math.Max(1, float64(b.H()))
	n := nearestPoint{corner: b.Min, cell: geometry.Length(math.Sqrt(area / float64(len(points))))}
	n.columns, n.rows = int(b.W()/n.cell)+1, int(b.H()/n.cell)+1
	n.cells = make([][]geometry.Point, n.columns*n.rows)
	for _, p := range points {
		x, y := n.at(p)
		k := min(y, n.rows-1)*n.columns + min(x, n.columns-1)
		n.cells[k] = append(n.cells[k], p)
	}
	return n
}

// at returns the column and row of the cell a point lies in, on the grid or off it.
func (n nearestPoint) at(p geometry.Point) (x, y int) {
	d := p.Sub(n.corner)
	return int(math.Floor(float64(d.X / n.cell))), int(math.Floor(float64(d.Y / n.cell)))
}

// distance returns how far the nearest point is from p; where none is nearer than limit, it
// may return limit.
func (n nearestPoint) distance(p geometry.Point, limit geometry.Length) geometry.Length {
	best := limit
	x, y := n.at(p)
	last := max(x, n.columns-1-x, y, n.rows-1-y)
	// Cells come ring by ring, from the first that reaches the grid. A point in ring r is at
	// least r - 1 cells away.
	for r := max(0, -x, x-n.columns+1, -y, y-n.rows+1); r <= last && geometry.Length(r-1)*n.cell < best; r++ {
		for row := max(0, y-r); row <= min(n.rows-1, y+r); row++ {
			from, to, step := max(0, x-r), min(n.columns-1, x+r), 1
			if row != y-r && row != y+r {
				from, to, step = x-r, x+r, max(1, 2*r) // only the rim of the ring is new
			}
			for column := from; column <= to; column += step {
				if column < 0 || column >= n.columns {
					continue
				}
				for _, q := range n.cells[row*n.columns+column] {
					best = min(best, p.Distance(q))
				}
			}
		}
	}
	return best
}
