package template

import (
	"math"

	"underlay/geometry"
)

// crowd remembers what stands on a drawing, so that no text is put on text.
type crowd struct {
	cell  geometry.Length
	boxes map[[2]int][]geometry.Rect
}

func newCrowd() *crowd {
	return &crowd{cell: 4 * geometry.Millimetre, boxes: map[[2]int][]geometry.Rect{}}
}

// cells calls visit for each cell that r touches, until it returns false.
func (c *crowd) cells(r geometry.Rect, visit func(k [2]int) bool) {
	at := func(l geometry.Length) int { return int(math.Floor(float64(l / c.cell))) }
	for x := at(r.Min.X); x <= at(r.Max.X); x++ {
		for y := at(r.Min.Y); y <= at(r.Max.Y); y++ {
			if !visit([2]int{x, y}) {
				return
			}
		}
	}
}

// free tells whether nothing stands in r.
func (c *crowd) free(r geometry.Rect) bool {
	free := true
	c.cells(r, func(k [2]int) bool {
		for _, b := range c.boxes[k] {
			free = free && !b.Overlaps(r)
		}
		return free
	})
	return free
}

// take marks r as taken.
func (c *crowd) take(r geometry.Rect) {
	c.cells(r, func(k [2]int) bool {
		c.boxes[k] = append(c.boxes[k], r)
		return true
	})
}
