package guide

import (
	"math"

	"underlay/geometry"
)

// Crowd remembers what stands on a drawing, so that no text is put on text. What stands in it
// is found by squares of the area it is made for; what lies beyond it counts to the squares
// along its edge.
type Crowd struct {
	area          geometry.Rect
	side          geometry.Length // of a square
	columns, rows int
	squares       []int32 // by rows: the first of its boxes, counted from 1; 0: none
	boxes         []crowdBox
}

// crowdBox is a box in a square, and which is the next there.
type crowdBox struct {
	box  geometry.Rect
	next int32
}

// NewCrowd returns a crowd of nobody yet.
func NewCrowd(area geometry.Rect) *Crowd {
	const least, most = 4 * geometry.Millimetre, 1 << 16 // of a square's side, of squares
	side := max(least, geometry.Length(math.Sqrt(float64(area.W()*area.H())/most)))
	c := &Crowd{area: area, side: side}
	c.columns, c.rows = int(area.W()/side)+1, int(area.H()/side)+1
	c.squares = make([]int32, c.columns*c.rows)
	return c
}

// near calls visit for each square that r touches, until it returns false.
func (c *Crowd) near(r geometry.Rect, visit func(square *int32) bool) {
	at := func(l geometry.Length, n int) int { return min(max(int(l/c.side), 0), n-1) }
	x0, x1 := at(r.Min.X-c.area.Min.X, c.columns), at(r.Max.X-c.area.Min.X, c.columns)
	y0, y1 := at(r.Min.Y-c.area.Min.Y, c.rows), at(r.Max.Y-c.area.Min.Y, c.rows)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if !visit(&c.squares[y*c.columns+x]) {
				return
			}
		}
	}
}

// Free tells whether nothing stands in r.
func (c *Crowd) Free(r geometry.Rect) bool {
	free := true
	c.near(r, func(square *int32) bool {
		for i := *square; i > 0 && free; i = c.boxes[i-1].next {
			free = !c.boxes[i-1].box.Overlaps(r)
		}
		return free
	})
	return free
}

// Take marks r as taken.
func (c *Crowd) Take(r geometry.Rect) {
	c.near(r, func(square *int32) bool {
		c.boxes = append(c.boxes, crowdBox{r, *square})
		*square = int32(len(c.boxes))
		return true
	})
}
