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
	signs  []geometry.Rect // what was set down here since
	wrote  []geometry.Rect // text and signs that were marked
	xs, ys stops           // of the search under way
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
	s.lay(size, wish{within, w.near}, 0)
	least := geometry.Length(math.Inf(1))
	for k, y := range s.ys.at {
		away := s.ys.far(k)
		for i, x := range s.xs.at {
			if far := s.xs.far(i) + away; far < least {
				if r := geometry.RectAt(geometry.Point{X: x, Y: y}, size); !slices.ContainsFunc(shut, r.Overlaps) {
					best, least, ok = r.Min, far, true
				}
			}
		}
	}
	return best, ok
}

// openings returns, until it is called again, the rows of cells that the stops down lie on, and of
// them the cells that the stops across lie on and that hold no text nor, unless they may be crossed,
// lines.
func (s *space) openings(across bool) bitmap {
	m := s.scratch.rows(0, s.ys.lastTo-s.ys.from)
	texts, lines := s.texts.rows(s.ys.from, s.ys.lastTo).bits, s.lines.rows(s.ys.from, s.ys.lastTo).bits
	to := s.xs.lastTo
	for i := range m.words {
		within, beyond := mask(i, s.xs.from, to), uint64(0)
		if to-s.xs.last < s.xs.wide {
			beyond = mask(i, to, to+1) // the last place is a cell less wide than the others: as if it were not
		}
		for k := i; k < len(m.bits); k += m.words {
			taken := texts[k]
			if !across {
				taken |= lines[k]
			}
			m.bits[k] = within&^taken | beyond
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
	s.lay(size, wish{within, w.near}, room)
	q := placing{space: s, size: size, room: room, across: across}
	open := s.openings(across)
	open.narrowDown(s.ys.wide)
	if across {
		s.sum()
	}
	turn := s.xs.nearest()
	narrowed, any := -1, false
	for k, y := range s.ys.at {
		from, to := s.ys.cells(k)
		q.row = row{at: y, far: s.ys.far(k), from: from, to: to, open: open.row(from - s.ys.from)}
		if q.settled(s.xs.far(turn)) {
			continue
		}
		if from != narrowed { // the last row may begin in the same cells as the one before
			narrowed, any = from, narrowAcross(q.row.open, s.xs.wide)
		}
		if !any {
			continue
		}
		if across {
			for i := 0; i < len(s.xs.at) && !q.settled(0); {
				i += q.try(i, 1)
			}
			continue
		}
		// The nearest to what is wished are looked at first, so that most need not be.
		for i := turn; i >= 0 && !q.settled(s.xs.far(i)); {
			i -= q.try(i, -1)
		}
		for i := turn + 1; i < len(s.xs.at) && !q.settled(s.xs.far(i)); {
			i += q.try(i, 1)
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
	row    row
	best   spot
	found  bool
}

// row is the places at one stop down.
type row struct {
	at, far  geometry.Length
	from, to int
	open     []uint64 // the cells at the top of the row at which a place may begin
}

// settled tells that no place of the row so far from what is wished, or farther, is better than the
// best.
func (q *placing) settled(far geometry.Length) bool {
	return q.found && q.best.lines == 0 && far+q.row.far >= q.best.far
}

// try looks at the place at the i-th stop across, and keeps it if it is the best so far. It returns
// how many stops on, to the right or to the left, the next place is that may be better.
func (q *placing) try(i, way int) int {
	at := q.xs.at[i]
	from, to := q.xs.cells(i)
	if word := q.row.open[from/64]; word>>(from%64)&1 == 0 {
		// On to the next cell that is open, or beyond this word.
		if way < 0 {
			return min(bits.LeadingZeros64(word<<(63-from%64)), from%64+1)
		}
		return max(1, min(bits.TrailingZeros64(word>>(from%64)), 64-from%64, len(q.xs.at)-i-1))
	}
	c := cells{from, q.row.from, to, q.row.to}
	here := spot{geometry.Point{X: at, Y: q.row.at}, 0, q.xs.far(i) + q.row.far}
	if q.across {
		if here.lines = q.linesIn(c); q.found && here.lines > q.best.lines {
			return 1 + max(0, min(q.surplus(c, q.best.lines)-from, len(q.xs.at)-i-2))
		}
	}
	if q.found && !here.better(q.best) {
		return 1
	}
	if larger := to-from > q.xs.wide || q.row.to-q.row.from > q.ys.wide; larger && !q.open(c, q.across) {
		return 1
	}
	if sign, met := q.signOn(geometry.RectAt(here.at, q.size).Grow(q.room)); met {
		// On to the next place beyond that.
		if way < 0 {
			return max(1, int((at+q.size.W+q.room-sign.Min.X)/q.cell))
		}
		return max(1, min(int((sign.Max.X+q.room-at)/q.cell), len(q.xs.at)-i-1))
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

// lay lays the stops of a search.
func (s *space) lay(size geometry.Size, w wish, room geometry.Length) {
	s.xs.lay(s, w.within.Min.X, w.within.Max.X, size.W, w.near.X, s.area.Min.X, room, s.w)
	s.ys.lay(s, w.within.Min.Y, w.within.Max.Y, size.H, w.near.Y, s.area.Min.Y, room, s.h)
}

// stops are the places to try along one axis for a sign between two ends, a cell apart, the last at
// the far end.
type stops struct {
	at           []geometry.Length // where the sign would begin
	from, wide   int               // the cells the first lies on, with its room; the others so many further on
	last, lastTo int               // the cells that the last lies on
	hold, near   geometry.Length   // the point of the sign, from where it begins, that should come to near
}

// lay lays the stops for a sign so long between low and high. The point of the sign that should come
// to near lies in it as near lies between low and high: end at end, middle at middle.
func (t *stops) lay(s *space, low, high, length, near, origin, room geometry.Length, n int) {
	t.hold, t.near = length*share(near, low, high), near
	t.at = t.at[:0]
	last := high - length
	for at := low; at < last; at += s.cell {
		t.at = append(t.at, at)
	}
	t.at = append(t.at, last)
	to := 0
	t.from, to = s.along(t.at[0]-room-origin, t.at[0]+length+room-origin, n)
	t.wide = to - t.from
	t.last, t.lastTo = s.along(last-room-origin, last+length+room-origin, n)
}

// cells returns the first cell of the i-th place and the one after the last.
func (t *stops) cells(i int) (from, to int) {
	if i == len(t.at)-1 {
		return t.last, t.lastTo
	}
	return t.from + i, t.from + i + t.wide
}

// far returns how far the i-th place is from what is wished.
func (t *stops) far(i int) geometry.Length {
	far := t.at[i] + t.hold - t.near
	if far < 0 {
		far = -far
	}
	return far
}

// nearest returns the place nearest to what is wished: from there on to both sides they are farther.
func (t *stops) nearest() int {
	low, high := 0, len(t.at)-1
	for low < high {
		if middle := (low + high) / 2; t.far(middle) <= t.far(middle+1) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}

// share returns where v lies between from and to, as a share of the way.
func share(v, from, to geometry.Length) geometry.Length {
	if to <= from {
		return 0
	}
	return min(max((v-from)/(to-from), 0), 1)
}
