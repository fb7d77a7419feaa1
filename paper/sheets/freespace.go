package sheets

import (
	"math"
	"math/bits"
	"slices"

	"underlay/geometry"
)

// breath is the plain paper kept round what is put in a free place.
const breath = 1 * geometry.Millimetre

// space finds places on a page for signs: free ones, or such as cross few lines.
type space struct {
	raster
	signs []geometry.Rect // what was set down here since
	wrote []geometry.Rect // text and signs that were marked
	// What follows is worked out when it is asked for: the marks are all there by then.
	scratch bitmap
	sums    []int32 // how many cells with lines are above and to the left, (w+1) x (h+1)
	summed  bool
}

// newSpace returns the space of a part of a page, nothing on it.
func newSpace(area geometry.Rect) *space {
	r := newRaster(area)
	return &space{raster: r, scratch: newBitmap(r.w, r.h)}
}

// clear takes everything off.
func (s *space) clear() {
	clear(s.lines.bits)
	clear(s.texts.bits)
	s.signs, s.wrote, s.summed = s.signs[:0], s.wrote[:0], false
}

// markText marks the cells that text in r lies on, and keeps where it is.
func (s *space) markText(r geometry.Rect) {
	s.raster.markText(r)
	if r.Touches(s.area) {
		s.wrote = append(s.wrote, r)
	}
}

// findOn looks for the place of the given size nearest to what is wished, where it meets no sign
// set down before, and of text none that reaches beyond the lip.
func (s *space) findOn(lip geometry.Rect, size geometry.Size, w wish) (best geometry.Point, ok bool) {
	within := w.within
	if within.W() < size.W-geometry.Tolerance || within.H() < size.H-geometry.Tolerance {
		return best, false
	}
	var shut []geometry.Rect
	for _, r := range s.wrote {
		if r.Overlaps(within) && !lip.Holds(r) {
			shut = append(shut, r)
		}
	}
	for _, r := range s.signs {
		if r.Overlaps(within) {
			shut = append(shut, r)
		}
	}
	xs := s.stops(within.Min.X, within.Max.X, size.W, w.near.X, s.area.Min.X, 0, s.w)
	ys := s.stops(within.Min.Y, within.Max.Y, size.H, w.near.Y, s.area.Min.Y, 0, s.h)
	least := geometry.Length(math.Inf(1))
	for _, y := range ys {
		for _, x := range xs {
			r := geometry.RectAt(geometry.Point{X: x.at, Y: y.at}, size)
			if far := x.far + y.far; far < least && !slices.ContainsFunc(shut, r.Overlaps) {
				best, least, ok = r.Min, far, true
			}
		}
	}
	return best, ok
}

// taken returns, until it is called again, the rows of cells from y0 up to, not including, y1
// that hold text or, unless they may be crossed, lines.
func (s *space) taken(y0, y1 int, across bool) bitmap {
	m := s.scratch.rows(0, y1-y0)
	copy(m.bits, s.texts.rows(y0, y1).bits)
	if !across {
		for i, b := range s.lines.rows(y0, y1).bits {
			m.bits[i] |= b
		}
	}
	return m
}

// sum makes the sums.
func (s *space) sum() {
	if s.summed {
		return
	}
	w := s.w + 1
	if s.sums == nil {
		s.sums = make([]int32, w*(s.h+1))
	}
	for y := range s.h {
		row, up, here := s.lines.row(y), s.sums[y*w+1:(y+1)*w], s.sums[(y+1)*w+1:(y+2)*w]
		var n int32
		for x := range here {
			n += int32(row[x/64] >> (x % 64) & 1)
			here[x] = up[x] + n
		}
	}
	s.summed = true
}

// crossed returns how many cells of r hold lines; ok is false where r meets text, or a sign
// set down before.
func (s *space) crossed(r geometry.Rect) (n int, ok bool) {
	c := s.reach(r)
	_, met := s.signOn(r)
	return s.lines.count(c), s.texts.count(c) == 0 && !met
}

// signOn returns a sign that r lies on, if there is one.
func (s *space) signOn(r geometry.Rect) (sign geometry.Rect, met bool) {
	for _, t := range s.signs {
		if r.Overlaps(t) {
			return t, true
		}
	}
	return geometry.Rect{}, false
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

// better tells whether a is better than b: it crosses fewer lines, or is nearer.
func (a spot) better(b spot) bool {
	return a.lines < b.lines || a.lines == b.lines && a.far < b.far
}

// find looks for a place of the given size, with room round it, that has no text and, unless
// it may go across them, no lines: of those the one with fewest lines, then the nearest to
// what is wished.
func (s *space) find(size geometry.Size, w wish, room geometry.Length, across bool) (best spot, ok bool) {
	within := w.within.Intersect(s.area)
	if within.W() < size.W-geometry.Tolerance || within.H() < size.H-geometry.Tolerance {
		return spot{}, false
	}
	q := placing{
		space: s, size: size, room: room, across: across,
		xs: s.stops(within.Min.X, within.Max.X, size.W, w.near.X, s.area.Min.X, room, s.w),
	}
	ys := s.stops(within.Min.Y, within.Max.Y, size.H, w.near.Y, s.area.Min.Y, room, s.h)
	q.w, q.h = q.xs[0].to-q.xs[0].from, ys[0].to-ys[0].from
	if across {
		s.sum()
	}
	top := ys[0].from
	shut := s.taken(top, ys[len(ys)-1].to, across)
	shut.smearDown(q.h)
	shut.smearAcross(q.w)
	for _, y := range ys {
		if q.found && q.best.lines == 0 && y.far >= q.best.far {
			continue
		}
		row := shut.row(y.from - top)
		for i := 0; i < len(q.xs); {
			i += q.try(i, y, row)
		}
	}
	return q.best, q.found
}

// placing is the search for a place of some size, with room round it, under way.
type placing struct {
	*space
	size   geometry.Size
	room   geometry.Length
	across bool // it may go across lines
	xs     []stop
	// w and h are how many cells a place lies on; at the last of the places a row or column more
	// or less.
	w, h  int
	best  spot
	found bool
}

// try looks at the place at the i-th stop across and one down, and keeps it if it is the best so
// far. It returns how many stops on the next place is that may be better. Shut is the row of cells
// at the top of which no place of the usual size may begin.
func (q *placing) try(i int, y stop, shut []uint64) int {
	x := q.xs[i]
	left := len(q.xs) - i
	usual := x.to-x.from == q.w && y.to-y.from == q.h
	if word := shut[x.from/64] >> (x.from % 64); usual && word&1 != 0 {
		// On to the next cell that is open, or beyond this word.
		return max(1, min(bits.TrailingZeros64(^word), 64-x.from%64, left-1))
	}
	c := cells{x.from, y.from, x.to, y.to}
	here := spot{geometry.Point{X: x.at, Y: y.at}, 0, x.far + y.far}
	if q.across {
		if here.lines = q.linesIn(c); q.found && here.lines > q.best.lines {
			return 1 + max(0, min(q.surplus(c, q.best.lines)-x.from, left-2))
		}
	}
	if q.found && !here.better(q.best) || !usual && !q.open(c, q.across) {
		return 1
	}
	if sign, met := q.signOn(geometry.RectAt(here.at, q.size).Grow(q.room)); met {
		// On to the next place to the right of that.
		return max(1, min(int((sign.Max.X+q.room-x.at)/q.cell), left-1))
	}
	q.best, q.found = here, true
	return 1
}

// surplus returns the last column of c from which on more than limit cells of it hold lines,
// as do more than that from its first.
func (s *space) surplus(c cells, limit int) int {
	low, high := c.x0, c.x1 // from low on there are more, from high on there are not
	for high-low > 1 {
		c.x0 = (low + high) / 2
		if s.linesIn(c) > limit {
			low = c.x0
		} else {
			high = c.x0
		}
	}
	return low
}

// linesIn returns how many cells of c hold lines.
func (s *space) linesIn(c cells) int {
	top, bottom := s.sums[c.y0*(s.w+1):], s.sums[c.y1*(s.w+1):]
	return int(bottom[c.x1] - bottom[c.x0] - top[c.x1] + top[c.x0])
}

// open tells whether no cell of c holds text or, unless they may be crossed, lines.
func (s *space) open(c cells, across bool) bool {
	return s.texts.count(c) == 0 && (across || s.lines.count(c) == 0)
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
