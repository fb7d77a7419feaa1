package paper

import (
	"math"

	"underlay/geometry"
)

// breath is the plain paper kept round what is put in a free place.
const breath = 1 * geometry.Millimetre

// mostCells bounds the raster of a page; larger pages get coarser cells.
const mostCells = 200_000

// space knows which places of a page are taken, on a raster of small cells: by lines, which
// may be crossed where there is no other place, and by text, which may not.
type space struct {
	area  geometry.Rect // of the page
	cell  geometry.Length
	w, h  int
	marks []mark
	// Summed-area tables, (w+1) x (h+1): how many cells above and to the left are taken.
	lines, texts []int32
	signs        []geometry.Rect // what was set down here since
}

type mark uint8

const (
	lineMark mark = 1 << iota
	textMark
)

// newSpace returns the raster of a part of a page, nothing on it.
func newSpace(area geometry.Rect) *space {
	cell := max(1, geometry.Length(math.Sqrt(float64(area.W()*area.H())/mostCells)))
	w, h := max(1, int(math.Ceil(float64(area.W()/cell)))), max(1, int(math.Ceil(float64(area.H()/cell))))
	table := (w + 1) * (h + 1)
	return &space{
		area: area, cell: cell, w: w, h: h,
		marks: make([]mark, w*h), lines: make([]int32, table), texts: make([]int32, table),
	}
}

// clear takes everything off.
func (s *space) clear() {
	clear(s.marks)
	s.signs = s.signs[:0]
}

// markRect marks the cells r lies on, and tells whether there are any.
func (s *space) markRect(r geometry.Rect, m mark) bool {
	if !r.Touches(s.area) {
		return false
	}
	c := s.reach(r)
	for y := c.y0; y < c.y1; y++ {
		for x := c.x0; x < c.x1; x++ {
			s.marks[y*s.w+x] |= m
		}
	}
	return true
}

// reach returns the cells that r lies on, at least one.
func (s *space) reach(r geometry.Rect) (c cells) {
	c.x0, c.x1 = s.along(r.Min.X-s.area.Min.X, r.Max.X-s.area.Min.X, s.w)
	c.y0, c.y1 = s.along(r.Min.Y-s.area.Min.Y, r.Max.Y-s.area.Min.Y, s.h)
	return c
}

// along returns the first of n cells that a length from the edge of the page lies on, and the
// one after the last.
func (s *space) along(from, to geometry.Length, n int) (int, int) {
	const hair = 1e-6
	a := int(math.Floor(float64(from/s.cell) + hair))
	b := int(math.Ceil(float64(to/s.cell) - hair))
	a = min(max(a, 0), n-1)
	return a, min(max(b, a+1), n)
}

// markPath marks the cells a path runs over, each point of it put on the page by place, and
// tells whether there are any.
func (s *space) markPath(p geometry.Path, place func(geometry.Point) geometry.Point) bool {
	met := false
	for _, piece := range p {
		points := flatten(piece)
		if piece.Closed {
			points = append(points, piece.Start)
		}
		for i, q := range points[1:] {
			met = s.markLine(place(points[i]), place(q)) || met
		}
	}
	return met
}

// markLine marks the cells the straight line from a to b runs over.
func (s *space) markLine(a, b geometry.Point) bool {
	t, u, ok := clipLine(a, b, s.area)
	if !ok {
		return false
	}
	from, to := between(a, b, t, s.area), between(a, b, u, s.area)
	n := int(math.Ceil(float64(from.Distance(to) / (s.cell / 2))))
	for i := range n + 1 {
		p := from
		if n > 0 {
			p = from.Add(to.Sub(from).Mul(float64(i) / float64(n)))
		}
		x := min(max(int((p.X-s.area.Min.X)/s.cell), 0), s.w-1)
		y := min(max(int((p.Y-s.area.Min.Y)/s.cell), 0), s.h-1)
		s.marks[y*s.w+x] |= lineMark
	}
	return true
}

// sum makes the tables; it goes after the marking and before the asking.
func (s *space) sum() {
	w := s.w + 1
	for y := range s.h {
		marks := s.marks[y*s.w : (y+1)*s.w]
		up, here := s.lines[y*w+1:(y+1)*w], s.lines[(y+1)*w+1:(y+2)*w]
		textUp, textHere := s.texts[y*w+1:(y+1)*w], s.texts[(y+1)*w+1:(y+2)*w]
		var line, text int32
		for x, m := range marks {
			line += int32(m & lineMark)
			text += int32(m & textMark / textMark)
			here[x] = up[x] + line
			textHere[x] = textUp[x] + text
		}
	}
}

// cells is a rectangle of cells: from x0, y0 up to, not including, x1, y1.
type cells struct{ x0, y0, x1, y1 int }

func (s *space) count(table []int32, c cells) int32 {
	w := s.w + 1
	return table[c.y1*w+c.x1] - table[c.y0*w+c.x1] - table[c.y1*w+c.x0] + table[c.y0*w+c.x0]
}

// crossed returns how many cells of r hold lines; ok is false where r meets text, or a sign
// set down before.
func (s *space) crossed(r geometry.Rect) (n int, ok bool) {
	c := s.reach(r)
	return int(s.count(s.lines, c)), s.count(s.texts, c) == 0 && !s.onSign(r)
}

func (s *space) onSign(r geometry.Rect) bool {
	for _, t := range s.signs {
		if r.Overlaps(t) {
			return true
		}
	}
	return false
}

// wish is where a sign is wanted: in a part of the page, as close to a point of it as can be.
type wish struct {
	within geometry.Rect
	near   geometry.Point
}

// spot is somewhere a sign can stand.
type spot struct {
	at    geometry.Point // its top left corner
	lines int            // cells with lines that it crosses
	far   geometry.Length
}

// find looks for a place of the given size, with room round it, that has no text and at most
// so many cells with lines; of those the one with fewest, then the nearest to what is wished.
func (s *space) find(size geometry.Size, w wish, room geometry.Length, most int) (best spot, ok bool) {
	within := w.within.Intersect(s.area)
	if within.W() < size.W-geometry.Tolerance || within.H() < size.H-geometry.Tolerance {
		return spot{}, false
	}
	xs := s.stops(within.Min.X, within.Max.X, size.W, w.near.X, s.area.Min.X, room, s.w)
	ys := s.stops(within.Min.Y, within.Max.Y, size.H, w.near.Y, s.area.Min.Y, room, s.h)
	for _, y := range ys {
		if ok && best.lines == 0 && y.far >= best.far {
			continue
		}
		for i := 0; i < len(xs); i++ {
			x := xs[i]
			far := x.far + y.far
			if ok && best.lines == 0 && far >= best.far {
				continue
			}
			c := cells{x.from, y.from, x.to, y.to}
			lines, texts := s.count(s.lines, c), s.count(s.texts, c)
			limit := most
			if ok {
				limit = min(most, best.lines)
			}
			if int(lines) > limit || texts > 0 {
				// Every place that takes in the cells from here on has too much as well.
				last := s.blocked(c, limit)
				for i+1 < len(xs) && xs[i+1].from <= last {
					i++
				}
				continue
			}
			if ok && int(lines) == best.lines && far >= best.far {
				continue
			}
			at := geometry.Point{X: x.at, Y: y.at}
			if !s.onSign(geometry.RectAt(at, size).Grow(room)) {
				best, ok = spot{at, int(lines), far}, true
			}
		}
	}
	return best, ok
}

// blocked returns the last column of c from which on c holds text, or more than limit cells
// with lines. It holds so many in all.
func (s *space) blocked(c cells, limit int) int {
	low, high := c.x0, c.x1 // from low on it is too much, from high on it is not
	for high-low > 1 {
		c.x0 = (low + high) / 2
		if int(s.count(s.lines, c)) > limit || s.count(s.texts, c) > 0 {
			low = c.x0
		} else {
			high = c.x0
		}
	}
	return low
}

// stop is a place to try along one axis: where the sign would begin, the cells it would lie
// on with its room, and how far it would be from what is wished.
type stop struct {
	at       geometry.Length
	from, to int
	far      geometry.Length
}

// stops returns the places to try for a sign so long between low and high, a cell apart, both
// ends among them. The point of the sign that should come to near lies in it as near lies
// between low and high: end at end, middle at middle.
func (s *space) stops(low, high, length, near, origin, room geometry.Length, n int) []stop {
	hold := length * share(near, low, high)
	all := make([]stop, 0, 2+int(max(0, high-length-low)/s.cell))
	add := func(at geometry.Length) {
		from, to := s.along(at-room-origin, at+length+room-origin, n)
		far := at + hold - near
		if far < 0 {
			far = -far
		}
		all = append(all, stop{at, from, to, far})
	}
	last := high - length
	for at := low; at < last; at += s.cell {
		add(at)
	}
	add(last)
	return all
}

// share returns where v lies between from and to, as a share of the way.
func share(v, from, to geometry.Length) geometry.Length {
	if to <= from {
		return 0
	}
	return min(max((v-from)/(to-from), 0), 1)
}
