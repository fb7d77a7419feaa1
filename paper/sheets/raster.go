package sheets

import (
	"math"
	"math/bits"

	"underlay/geometry"
	"underlay/paper"
)

// mostCells bounds the raster of a page; larger pages get coarser cells.
const mostCells = 200_000

// raster knows which small cells of a page are taken: by lines, which may be crossed where
// there is no other place, and by text, which may not.
type raster struct {
	area         geometry.Rect // of the page
	cell         geometry.Length
	w, h         int // with rim on every side, of cells beyond the area that nothing is on
	lines, texts bitmap
}

// rim is how many cells more there are on each side of the area: room for the plain paper
// round a sign that stands at the edge.
const rim = 2

// newRaster returns the raster of a part of a page, nothing on it.
func newRaster(area geometry.Rect) raster {
	cell := max(1, geometry.Length(math.Sqrt(float64(area.W()*area.H())/mostCells)))
	w, h := 2*rim+max(1, int(math.Ceil(float64(area.W()/cell)))), 2*rim+max(1, int(math.Ceil(float64(area.H()/cell))))
	return raster{area: area, cell: cell, w: w, h: h, lines: newBitmap(w, h), texts: newBitmap(w, h)}
}

// cells is a rectangle of cells: from x0, y0 up to, not including, x1, y1.
type cells struct{ x0, y0, x1, y1 int }

// reach returns the cells that r lies on, at least one.
func (s *raster) reach(r geometry.Rect) (c cells) {
	c.x0, c.x1 = s.along(r.Min.X-s.area.Min.X, r.Max.X-s.area.Min.X, s.w)
	c.y0, c.y1 = s.along(r.Min.Y-s.area.Min.Y, r.Max.Y-s.area.Min.Y, s.h)
	return c
}

// along returns the first of n cells that a length from the edge of the page lies on, and the
// one after the last.
func (s *raster) along(from, to geometry.Length, n int) (int, int) {
	const hair = 1e-6
	a := rim + int(math.Floor(float64(from/s.cell)+hair))
	b := rim + int(math.Ceil(float64(to/s.cell)-hair))
	a = min(max(a, 0), n-1)
	return a, min(max(b, a+1), n)
}

// markText marks the cells that text in r lies on.
func (s *raster) markText(r geometry.Rect) {
	if !r.Touches(s.area) {
		return
	}
	c := s.reach(r.Intersect(s.area))
	for y := c.y0; y < c.y1; y++ {
		s.texts.setRun(y, c.x0, c.x1)
	}
}

// markPath marks the cells a path runs over, each point of it put on the page by place.
func (s *raster) markPath(p geometry.Path, place func(geometry.Point) geometry.Point) {
	for _, piece := range p {
		points := paper.Flatten(piece)
		if piece.Closed {
			points = append(points, piece.Start)
		}
		for i, q := range points[1:] {
			s.markLine(place(points[i]), place(q))
		}
	}
}

// markLine marks the cells the straight line from a to b runs over.
func (s *raster) markLine(a, b geometry.Point) {
	t, u, ok := paper.ClipLine(a, b, s.area)
	if !ok {
		return
	}
	from, to := paper.Between(a, b, t, s.area), paper.Between(a, b, u, s.area)
	x0, y0 := s.cellOf(from)
	x1, y1 := s.cellOf(to)
	switch {
	case y0 == y1:
		s.lines.setRun(y0, min(x0, x1), max(x0, x1)+1)
		return
	case x0 == x1:
		for y := min(y0, y1); y <= max(y0, y1); y++ {
			s.lines.set(y, x0)
		}
		return
	}
	n := int(math.Ceil(float64(from.Distance(to) / (s.cell / 2))))
	for i := range n + 1 {
		x, y := s.cellOf(from.Add(to.Sub(from).Mul(float64(i) / float64(n))))
		s.lines.set(y, x)
	}
}

// cellOf returns the cell that a point of the area is in.
func (s *raster) cellOf(p geometry.Point) (x, y int) {
	x = min(max(rim+int((p.X-s.area.Min.X)/s.cell), rim), s.w-rim-1)
	y = min(max(rim+int((p.Y-s.area.Min.Y)/s.cell), rim), s.h-rim-1)
	return x, y
}

// bitmap is a bit for each cell, by rows; each row begins a new word, and has a bit to spare.
type bitmap struct {
	words int // of a row
	bits  []uint64
}

func newBitmap(w, h int) bitmap {
	words := w/64 + 1
	return bitmap{words, make([]uint64, words*h)}
}

func (m bitmap) row(y int) []uint64 { return m.bits[y*m.words : (y+1)*m.words] }

func (m bitmap) set(y, x int) { m.bits[y*m.words+x/64] |= 1 << (x % 64) }

// setRun sets the bits of a row from x0 up to, not including, x1.
func (m bitmap) setRun(y, x0, x1 int) {
	row := m.row(y)
	for i := x0 / 64; i*64 < x1; i++ {
		row[i] |= mask(i, x0, x1)
	}
}

// count returns how many bits in c are set.
func (m bitmap) count(c cells) int {
	n := 0
	for y := c.y0; y < c.y1; y++ {
		row := m.row(y)
		for i := c.x0 / 64; i*64 < c.x1; i++ {
			n += bits.OnesCount64(row[i] & mask(i, c.x0, c.x1))
		}
	}
	return n
}

// mask has the bits of a row's word i that lie from x0 up to, not including, x1.
func mask(i, x0, x1 int) uint64 {
	m := ^uint64(0)
	if low := x0 - i*64; low > 0 {
		m &= m << low
	}
	if high := x1 - i*64; high < 64 {
		m &= 1<<max(high, 0) - 1
	}
	return m
}

// rows returns the rows from y0 up to, not including, y1.
func (m bitmap) rows(y0, y1 int) bitmap { return bitmap{m.words, m.bits[y0*m.words : y1*m.words]} }

// narrowDown leaves of the bits those that are set in so many rows from theirs on downwards, or down
// to the last.
func (m bitmap) narrowDown(n int) {
	for done := 1; done < n; {
		step := min(done, n-done)
		done += step
		if step*m.words >= len(m.bits) {
			return
		}
		for i, b := range m.bits[step*m.words:] {
			m.bits[i] &= b
		}
	}
}

// narrowAcross leaves of a row's bits those from which on so many are set; it tells whether there are
// any.
func narrowAcross(row []uint64, n int) bool {
	last := len(row) - 1
	for done := 1; ; {
		var any uint64
		for _, b := range row {
			any |= b
		}
		if any == 0 || done == n {
			return any != 0
		}
		step := min(done, n-done, 63)
		done += step
		for i := range last {
			row[i] &= row[i]>>step | row[i+1]<<(64-step)
		}
		row[last] &= row[last] >> step
	}
}
