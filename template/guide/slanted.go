package guide

import (
	"math"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// slant is the slanted rows or columns of a diagonal pass. Its stripes lie across the direction
// along, measured from the item's (0, 0).
type slant struct {
	along, across geometry.Point // of length 1
	stripes       []stripe
	pass          string // "" where the face has one pass
	depth, length geometry.Length
}

// slants returns the slanted rows and columns of the face's diagonal passes, each pass in a
// track of its own.
func (g *guide) slants() []slant {
	var all []slant
	depth := tickClear
	for _, p := range g.face.Passes {
		if !p.Pass.Slanted() {
			continue
		}
		if g.face.Item.Item.Pieces.Several() {
			continue // slanted rows of one piece run between those of the next, as the papers say
		}
		pass := ""
		if len(g.face.Passes) > 1 {
			pass = p.Pass.Name
		}
		turn := p.Pass.GridTurn
		for _, word := range []string{"row", "column"} {
			s := slant{along: geometry.Pt(1, 0).Turn(turn), across: geometry.Pt(0, 1).Turn(turn), pass: pass, depth: depth}
			if word == "column" {
				s.along, s.across = s.across, s.along
			}
			s.length = min(tickLength, g.reach-edgeAir-depth)
			if s.length < leastTick {
				g.leave(p.Pass.Name)
				continue
			}
			s.stripes = slantedStripes(p, turn, word)
			all = append(all, s)
		}
		depth += tickLength + trackAir
	}
	return all
}

// slantedStripes returns rows or columns of prints turned together, counted from the far end or
// from the left.
func slantedStripes(p plan.FacePass, turn geometry.Angle, word string) []stripe {
	extents := make([]extent, len(p.Prints))
	for i, print := range p.Prints {
		b := print.Outline.Turn(-turn).Bounds()
		extents[i] = extent{b.Min.Y, b.Max.Y}
		if word == "column" {
			extents[i] = extent{b.Min.X, b.Max.X}
		}
	}
	groups := together(extents)
	// Rows turned upside down count from the other end.
	sin, cos := turn.SinCos()
	backwards := cos < -1e-9 || word == "row" && cos < 1e-9 && sin < 0
	var stripes []stripe
	for i, group := range groups {
		n := i + 1
		if backwards {
			n = len(groups) - i
		}
		s := stripe{middle: group[0].middle(), number: n, name: word + " " + strconv.Itoa(n)}
		for _, e := range group {
			s.edges = append(s.edges, e.lo, e.hi)
		}
		s.edges = apartLines(s.edges)
		stripes = append(stripes, s)
	}
	return stripes
}

// drawSlant draws the ticks of slanted lines: where they leave the cloth, along the line itself,
// so that a tape or a rule laid from one to its twin is the line.
func (g *guide) drawSlant(s slant) {
	for _, stripe := range s.stripes {
		for _, edge := range stripe.edges {
			at := geometry.Point{}.Add(s.across.Mul(float64(edge)))
			from, some := exits(g.cloth.Grow(s.depth), at, s.along)
			to, more := exits(g.cloth.Grow(s.depth+s.length), at, s.along)
			if !some || !more {
				continue
			}
			for end := range from {
				g.mark(geometry.Line(from[end], to[end]), g.pens.Tick, paper.Role{Kind: RoleTick, Number: stripe.number})
				g.slantLines = append(g.slantLines, [2]geometry.Point{from[end], to[end]})
				g.takeSlant(from[end], to[end])
			}
		}
	}
}

// takeSlant takes the place of a slanted tick, in pieces: the box of the whole would take what the
// line leaves free.
func (g *guide) takeSlant(a, b geometry.Point) {
	const pieces = 6
	step := b.Sub(a).Mul(1.0 / pieces)
	for range pieces {
		g.crowd.Take(geometry.Line(a, a.Add(step)).Bounds().Grow(g.pens.Tick.Width / 2))
		a = a.Add(step)
	}
}

// clearOfSlants tells whether no slanted tick runs through a box.
func (g *guide) clearOfSlants(box geometry.Rect) bool {
	for _, l := range g.slantLines {
		if cut, some := exits(box, l[0], l[1].Sub(l[0])); some {
			// As shares of the tick.
			whole := l[1].Sub(l[0])
			share := func(p geometry.Point) float64 {
				d := p.Sub(l[0])
				return float64(d.X*whole.X+d.Y*whole.Y) / float64(whole.X*whole.X+whole.Y*whole.Y)
			}
			if share(cut[0]) < 1 && share(cut[1]) > 0 {
				return false
			}
		}
	}
	return true
}

// nameSlant writes the names of slanted rows or columns at both ends of their middles, beyond the
// ticks: of all that have room at both.
func (g *guide) nameSlant(s slant) {
	named := false
	for _, stripe := range s.stripes {
		name := stripe.name
		if s.pass != "" {
			name = short(s.pass) + ", " + name
		}
		at := geometry.Point{}.Add(s.across.Mul(float64(stripe.middle)))
		var labels []paper.Label
		for end := range 2 {
			// As near the ticks as there is room.
			for away := endAir + tickText/2; away < g.reach; away += textAir {
				ends, _ := exits(g.cloth.Grow(s.depth+s.length+away), at, s.along)
				l := paper.Label{Text: name, At: ends[end], Height: tickText, Bold: true, Role: paper.Role{Kind: RoleName, Number: stripe.number}}
				if box := l.Extent().Grow(textAir); g.Bounds.Holds(box) && g.crowd.Free(box) && !g.cloth.Grow(textAir).Overlaps(box) {
					labels = append(labels, l)
					break
				}
			}
		}
		if len(labels) < 2 {
			continue
		}
		g.put(labels...)
		named = true
	}
	if !named && len(s.stripes) > 0 {
		g.leave(s.stripes[0].name)
	}
}

// exits returns where a line, through p and along a direction, enters a rectangle and where it
// leaves it; none where it passes by.
func exits(r geometry.Rect, p, along geometry.Point) (ends [2]geometry.Point, some bool) {
	from, to := math.Inf(-1), math.Inf(1)
	for _, axis := range [2][4]geometry.Length{{r.Min.X, r.Max.X, p.X, along.X}, {r.Min.Y, r.Max.Y, p.Y, along.Y}} {
		low, high, at, step := axis[0], axis[1], axis[2], axis[3]
		if step.Abs() < geometry.Tolerance {
			if at < low || at > high {
				return ends, false
			}
			continue
		}
		a, b := float64((low-at)/step), float64((high-at)/step)
		from, to = max(from, min(a, b)), min(to, max(a, b))
	}
	if from > to {
		return ends, false
	}
	return [2]geometry.Point{p.Add(along.Mul(from)), p.Add(along.Mul(to))}, true
}
