package plan

import (
	"cmp"
	"container/heap"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// Quarter is one quarter of the printable area as the printer stands before it.
type Quarter int

// The quarters; far is away from the printer.
const (
	FarLeft Quarter = iota
	FarRight
	NearLeft
	NearRight
)

// String returns the quarter in words.
func (q Quarter) String() string {
	return [...]string{"far left", "far right", "near left", "near right"}[q]
}

// quarters returns the order in which a printer does them: a right-handed one the far left
// first, then far right, near left, near right, so that the arm does not cross wet paint; a
// left-handed one mirrored.
func quarters(h job.Hand) []Quarter {
	if h == job.LeftHand {
		return []Quarter{FarRight, FarLeft, NearRight, NearLeft}
	}
	return []Quarter{FarLeft, FarRight, NearLeft, NearRight}
}

// quarterOf returns the first quarter, in the printer's order, that a print belongs to; one
// on a centre line belongs to those on both sides of it.
func quarterOf(p, centre geometry.Point, hand job.Hand) Quarter {
	d := p.Sub(centre)
	for _, q := range quarters(hand) {
		left, far := q == FarLeft || q == NearLeft, q == FarLeft || q == FarRight
		if (left && d.X <= geometry.Tolerance || !left && d.X >= -geometry.Tolerance) &&
			(far && d.Y <= geometry.Tolerance || !far && d.Y >= -geometry.Tolerance) {
			return q
		}
	}
	return NearRight
}

// centreOut returns the order of printing from the middle outwards: first the sites nearest
// the centre, then one quarter of the area at a time. Every site after the first stands next
// to one before it; where that cannot be, it is the nearest to one before it.
func centreOut(sites []Site, near [][]int32, centre geometry.Point, hand job.Hand) []int {
	if len(sites) == 0 {
		return nil
	}
	w := &walk{sites: sites, near: near, done: make([]bool, len(sites)), queued: make([]bool, len(sites)),
		far: make([]geometry.Length, len(sites)), quarter: make([]Quarter, len(sites))}
	least := geometry.Length(math.Inf(1))
	for i, s := range sites {
		w.far[i], w.quarter[i] = s.Origin.Distance(centre), quarterOf(s.Origin, centre, hand)
		least = min(least, w.far[i])
	}
	turn := quarters(hand)
	var first []int
	for i := range sites {
		if w.far[i] <= least+geometry.Tolerance {
			first = append(first, i)
		}
	}
	slices.SortStableFunc(first, func(a, b int) int {
		return cmp.Compare(slices.Index(turn, w.quarter[a]), slices.Index(turn, w.quarter[b]))
	})
	w.print(first[0])
	for _, i := range first[1:] {
		if w.queued[i] {
			w.print(i)
		}
	}
	for len(w.order) < len(sites) {
		before := len(w.order)
		for _, q := range turn {
			w.finish(q)
		}
		if len(w.order) == before {
			w.print(w.nearest())
		}
	}
	return w.order
}

// walk is a printing order under way.
type walk struct {
	sites   []Site
	near    [][]int32
	far     []geometry.Length // from the centre
	quarter []Quarter
	done    []bool
	queued  []bool   // next to one that is done
	edge    [4]queue // those queued, by quarter
	order   []int
}

func (w *walk) print(i int) {
	w.done[i] = true
	w.order = append(w.order, i)
	for _, n := range w.near[i] {
		if !w.done[n] && !w.queued[n] {
			w.queued[n] = true
			heap.Push(&w.edge[w.quarter[n]], ranked{int(n), w.far[n]})
		}
	}
}

// finish prints what can be reached of a quarter, nearest the centre first.
func (w *walk) finish(q Quarter) {
	for w.edge[q].Len() > 0 {
		if i := heap.Pop(&w.edge[q]).(ranked).site; !w.done[i] {
			w.print(i)
		}
	}
}

// nearest returns the site left that is nearest to one printed.
func (w *walk) nearest() int {
	printed := make([]geometry.Point, len(w.order))
	for i, s := range w.order {
		printed[i] = w.sites[s].Origin
	}
	best, distance := -1, geometry.Length(math.Inf(1))
	near := newNearestPoint(printed)
	for i, s := range w.sites {
		if !w.done[i] {
			if d := near.distance(s.Origin, distance-geometry.Tolerance); d < distance-geometry.Tolerance {
				best, distance = i, d
			}
		}
	}
	return best
}

// queue is a heap of sites, the nearest to the centre on top; of two as near, the one listed
// first.
type queue []ranked

type ranked struct {
	site int
	far  geometry.Length
}

func (q queue) Len() int { return len(q) }

func (q queue) Less(i, j int) bool {
	if d := q[i].far - q[j].far; math.Abs(float64(d)) > float64(geometry.Tolerance) {
		return d < 0
	}
	return q[i].site < q[j].site
}

func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }

func (q *queue) Push(x any) { *q = append(*q, x.(ranked)) }

func (q *queue) Pop() any {
	last := len(*q) - 1
	x := (*q)[last]
	*q = (*q)[:last]
	return x
}

// rowByRow returns the order of printing from the near edge: row by row, each from the left,
// the far row last. By height, a row is what lies at one height.
func rowByRow(sites []Site, byHeight bool) []int {
	order := make([]int, len(sites))
	for i := range order {
		order[i] = i
	}
	if !byHeight {
		slices.SortStableFunc(order, func(a, b int) int {
			p, q := sites[a], sites[b]
			return cmp.Or(cmp.Compare(q.Row, p.Row), cmp.Compare(p.Column, q.Column))
		})
		return order
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sites[b].Origin.Y, sites[a].Origin.Y) })
	row := make([]int, len(sites))
	for i, s := range order[1:] {
		before := order[i]
		row[s] = row[before]
		if sites[before].Origin.Y-sites[s].Origin.Y > geometry.Tolerance {
			row[s]++
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(row[a], row[b]), cmp.Compare(sites[a].Origin.X, sites[b].Origin.X))
	})
	return order
}

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
