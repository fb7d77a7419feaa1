package paper

import (
	"slices"

	"underlay/geometry"
)

// Subset names some of a drawing's marks by their places in its lists, in rising order.
//
// Names are for a view of the whole drawing: Split leaves them to each sheet (see Name).
type Subset struct{ Fills, Strokes, Labels, Names []int32 }

// Split finds, for each of the areas, the marks of d to be drawn there: fills and strokes
// that touch it, labels that lie wholly in it. The areas of the sheets of one layout make a
// grid: the work grows with the marks and with how many sheets each is on, not with one times
// the other.
func Split(d *Drawing, areas []geometry.Rect) []*Subset {
	subsets := make([]*Subset, len(areas))
	for i := range subsets {
		subsets[i] = &Subset{}
	}
	g := newGrid(areas)
	for i, f := range d.Fills {
		g.touched(f.Bounds(), func(a int) {
			subsets[a].Fills = append(subsets[a].Fills, int32(i))
		})
	}
	for i, s := range d.Strokes {
		g.touched(s.Bounds(), func(a int) {
			subsets[a].Strokes = append(subsets[a].Strokes, int32(i))
		})
	}
	for i, l := range d.Labels {
		box := l.Extent()
		g.touched(box, func(a int) {
			if areas[a].Holds(box) {
				subsets[a].Labels = append(subsets[a].Labels, int32(i))
			}
		})
	}
	return subsets
}

// Lost returns the labels of d, by their places in its list, that none of the subsets names:
// those that lie wholly in none of the areas d was split by.
func Lost(d *Drawing, subsets []*Subset) []int {
	shown := make([]bool, len(d.Labels))
	for _, s := range subsets {
		for _, i := range s.Labels {
			shown[i] = true
		}
	}
	var lost []int
	for i, s := range shown {
		if !s {
			lost = append(lost, i)
		}
	}
	return lost
}

// Everything returns the subset of d that a single area shows.
func Everything(d *Drawing, area geometry.Rect) *Subset {
	all := Split(d, []geometry.Rect{area})[0]
	for i, n := range d.Names {
		if n.Of.Touches(area) {
			all.Names = append(all.Names, int32(i))
		}
	}
	return all
}

// grid finds which of many rectangles another touches. Each is the crossing of a column and
// a row.
type grid struct {
	columns, rows spans
	cells         map[[2]int][]int // column, row: the rectangles
}

func newGrid(areas []geometry.Rect) grid {
	g := grid{cells: map[[2]int][]int{}}
	columns, rows := make([]span, len(areas)), make([]span, len(areas))
	for i, a := range areas {
		columns[i], rows[i] = span{a.Min.X, a.Max.X}, span{a.Min.Y, a.Max.Y}
	}
	g.columns, g.rows = newSpans(columns), newSpans(rows)
	for i := range areas {
		cell := [2]int{g.columns.index(columns[i]), g.rows.index(rows[i])}
		g.cells[cell] = append(g.cells[cell], i)
	}
	return g
}

// touched calls f with the index of every rectangle that r touches.
func (g grid) touched(r geometry.Rect, f func(int)) {
	for c := range g.columns.touched(span{r.Min.X, r.Max.X}) {
		for w := range g.rows.touched(span{r.Min.Y, r.Max.Y}) {
			for _, i := range g.cells[[2]int{c, w}] {
				f(i)
			}
		}
	}
}

// span is a stretch of one axis.
type span struct{ from, to geometry.Length }

// spans is a set of spans in rising order. reach[i] is the farthest end of the first i+1.
type spans struct {
	list  []span
	reach []geometry.Length
}

func compare(a, b span) int {
	switch {
	case a.from < b.from || a.from == b.from && a.to < b.to:
		return -1
	case a == b:
		return 0
	}
	return 1
}

func newSpans(list []span) spans {
	list = slices.Clone(list)
	slices.SortFunc(list, compare)
	s := spans{list: slices.Compact(list)}
	for i, x := range s.list {
		far := x.to
		if i > 0 {
			far = max(far, s.reach[i-1])
		}
		s.reach = append(s.reach, far)
	}
	return s
}

func (s spans) index(x span) int {
	i, _ := slices.BinarySearchFunc(s.list, x, compare)
	return i
}

// touched yields the indices of the spans that share at least a point with x.
func (s spans) touched(x span) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		// No span before the first whose reach comes up to x does.
		first, _ := slices.BinarySearch(s.reach, x.from-geometry.Tolerance)
		for i := first; i < len(s.list) && s.list[i].from <= x.to+geometry.Tolerance; i++ {
			if s.list[i].to >= x.from-geometry.Tolerance && !yield(i) {
				return
			}
		}
	}
}
