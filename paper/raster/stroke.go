package raster

import "math"

// stroker turns the way of a pen into what it covers: a box along each straight line and a wedge at
// each corner, all round the same way, so that where they overlap they are filled.
type stroker struct {
	to     *outline
	half   float64   // of the pen's width, in pixels
	dashes []float64 // lengths of dashes and gaps in turn, in pixels
}

// mitreLimit is how many times the pen's width the point of a corner may reach, from its inner to its
// outer end (ISO 32000-1, Table 52 and 8.4.3.5).
const mitreLimit = 10

// piece covers a chain of straight lines, the dashes begun phase into themselves. The ends are butt.
func (s *stroker) piece(chain []point, closed bool, phase float64) {
	if closed && len(chain) > 0 && chain[len(chain)-1] != chain[0] {
		chain = append(chain, chain[0])
	}
	if s.dashes == nil {
		s.run(chain, closed)
		return
	}
	s.dash(chain, phase)
}

// run covers a chain without dashes; a closed one ends where it begins, with a corner.
func (s *stroker) run(chain []point, closed bool) {
	var first, last point // directions
	started := false
	for i := 1; i < len(chain); i++ {
		a, b := chain[i-1], chain[i]
		d := point{b.x - a.x, b.y - a.y}
		n := math.Hypot(d.x, d.y)
		if n == 0 {
			continue
		}
		d.x, d.y = d.x/n, d.y/n
		if started {
			s.corner(a, last, d)
		} else {
			first, started = d, true
		}
		s.box(a, b, d)
		last = d
	}
	if closed && started {
		s.corner(chain[0], last, first)
	}
}

// box covers a line from a to b in direction d.
func (s *stroker) box(a, b, d point) {
	x, y := -d.y*s.half, d.x*s.half
	s.to.step(move, point{a.x - x, a.y - y})
	s.to.step(line, point{b.x - x, b.y - y})
	s.to.step(line, point{b.x + x, b.y + y})
	s.to.step(line, point{a.x + x, a.y + y})
}

// corner covers the wedge on the outer side where the way turns from direction d to e.
func (s *stroker) corner(at, d, e point) {
	turn, along := d.x*e.y-d.y*e.x, d.x*e.x+d.y*e.y
	if math.Abs(turn)*s.half < 0.01 && along > 0 {
		return
	}
	// Turning clockwise as seen the wedge is on the left of the way, else on the right.
	side := -1.0
	if turn < 0 {
		side = 1
	}
	p := point{at.x - d.y*s.half*side, at.y + d.x*s.half*side}
	q := point{at.x - e.y*s.half*side, at.y + e.x*s.half*side}
	if side > 0 {
		p, q = q, p
	}
	s.to.step(move, at)
	s.to.step(line, p)
	// The point reaches 1 / sin(inner angle / 2) times the width; its square is 2 / (1 + along).
	if 2 <= mitreLimit*mitreLimit*(1+along) {
		k := s.half * side / (1 + along)
		s.to.step(line, point{at.x - (d.y+e.y)*k, at.y + (d.x+e.x)*k})
	}
	s.to.step(line, q)
}

// dash covers the dashes along a chain.
func (s *stroker) dash(chain []point, phase float64) {
	k := 0
	for phase >= s.dashes[k] {
		phase -= s.dashes[k]
		k = (k + 1) % len(s.dashes)
	}
	left := s.dashes[k] - phase
	var now []point
	for i := 1; i < len(chain); i++ {
		a, b := chain[i-1], chain[i]
		n := math.Hypot(b.x-a.x, b.y-a.y)
		done := 0.0
		at := func() point { return point{a.x + (b.x-a.x)*done/n, a.y + (b.y-a.y)*done/n} }
		for n-done > left {
			if k%2 == 0 {
				if len(now) == 0 {
					now = append(now, at())
				}
				done += left
				s.run(append(now, at()), false)
				now = now[:0]
			} else {
				done += left
			}
			k = (k + 1) % len(s.dashes)
			left = s.dashes[k]
		}
		if k%2 == 0 && n > 0 {
			if len(now) == 0 {
				now = append(now, at())
			}
			now = append(now, b)
		}
		left -= n - done
	}
	s.run(now, false)
}
