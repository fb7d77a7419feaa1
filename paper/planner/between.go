package planner

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// mostPiece is the most that the shorter side of a piece of a slanted or round edge may be: two
// stand beside each other on a sheet for the desk.
const mostPiece = 95 * geometry.Millimetre

// between cuts pieces along what of the edge runs neither in the strips at the sides nor along
// them.
func (c *cutter) between() bool {
	runs := c.runs()
	made := 0
	for _, run := range runs {
		made += len(c.chunks(run))
	}
	n := 0
	for _, run := range runs {
		var last *piece
		chunks := c.chunks(run)
		for i, points := range chunks {
			p := &piece{Sheet: paper.Sheet{Name: stripName(c.rim.Rest, n, made), Area: c.around(points), Scale: c.setup.Scale.OnPage(false)}}
			n++
			if last != nil {
				c.joinChunks(last, p, points)
			}
			if i == 0 {
				c.joinSide(p, points[0])
			}
			if i == len(chunks)-1 {
				c.joinSide(p, points[len(points)-1])
			}
			c.pieces = append(c.pieces, p)
			last = p
		}
	}
	return true
}

// pad is the paper on both sides of the edge.
func (c *cutter) pad() geometry.Length { return max(8, c.setup.Overlap/2+2) }

// around returns the area of a piece that shows a part of the edge; as far as the overlap into the
// strips at the sides where it runs up to them.
func (c *cutter) around(points []geometry.Point) geometry.Rect {
	r := geometry.Rect{Min: points[0], Max: points[0]}
	for _, p := range points {
		r = r.Union(geometry.Rect{Min: p, Max: p})
	}
	r = r.Grow(c.pad())
	in, v := c.inner, c.setup.Overlap
	for _, p := range []geometry.Point{points[0], points[len(points)-1]} {
		switch c.sideOf(p) {
		case paper.TopSide:
			r.Min.Y = in.Min.Y - v
		case paper.RightSide:
			r.Max.X = in.Max.X + v
		case paper.BottomSide:
			r.Max.Y = in.Max.Y + v
		case paper.LeftSide:
			r.Min.X = in.Min.X - v
		}
	}
	return r
}

// noSide is where a point does not lie on the rim of what the strips leave over.
const noSide = paper.Side(-1)

func (c *cutter) sideOf(p geometry.Point) paper.Side {
	const near = 0.01
	in := c.inner
	switch {
	case (p.Y - in.Min.Y).Abs() < near:
		return paper.TopSide
	case (p.X - in.Max.X).Abs() < near:
		return paper.RightSide
	case (p.Y - in.Max.Y).Abs() < near:
		return paper.BottomSide
	case (p.X - in.Min.X).Abs() < near:
		return paper.LeftSide
	}
	return noSide
}

// joinSide joins a piece to the strip at a side that the edge runs into at p.
func (c *cutter) joinSide(p *piece, at geometry.Point) {
	in, half := c.inner, c.setup.Overlap/2
	switch c.sideOf(at) {
	case paper.TopSide:
		c.corner(p, 0, in.Min.Y-half, paper.TopSide)
	case paper.RightSide:
		c.corner(p, 1, in.Max.X+half, paper.RightSide)
	case paper.BottomSide:
		c.corner(p, 2, in.Max.Y+half, paper.BottomSide)
	case paper.LeftSide:
		c.corner(p, 3, in.Min.X-half, paper.LeftSide)
	}
}

// joinChunks joins two pieces that follow each other, across the way of the edge: the right or
// lower one is cut.
func (c *cutter) joinChunks(a, b *piece, points []geometry.Point) {
	at, next := points[0], points[min(1, len(points)-1)]
	way := next.Sub(at)
	o := a.Area.Intersect(b.Area)
	from, to, e := geometry.Pt(at.X, o.Min.Y), geometry.Pt(at.X, o.Max.Y), paper.LeftSide
	forth := way.X > 0
	if way.Y.Abs() > way.X.Abs() {
		from, to, e = geometry.Pt(o.Min.X, at.Y), geometry.Pt(o.Max.X, at.Y), paper.TopSide
		forth = way.Y > 0
	}
	if forth {
		join(b, a, from, to, e)
	} else {
		join(a, b, from, to, e)
	}
}

// runs returns the parts of the edge within what the strips at the sides leave over, from one of
// them to the next, as points close to each other.
func (c *cutter) runs() [][]geometry.Point {
	var runs [][]geometry.Point
	for _, piece := range c.rim.Edge {
		points := paper.Flatten(piece)
		if piece.Closed {
			points = append(points, piece.Start)
		}
		var run []geometry.Point
		first := -1 // the run that begins where the edge does
		for i, b := range points[1:] {
			a := points[i]
			t, u, ok := paper.ClipLine(a, b, c.inner)
			if ok && u <= t {
				ok = false
			}
			if !ok || t > 0 {
				runs, run = keep(runs, run), nil
			}
			if !ok {
				continue
			}
			from, to := a.Add(b.Sub(a).Mul(t)), a.Add(b.Sub(a).Mul(u))
			if i == 0 && t == 0 {
				first = len(runs)
			}
			n := math.Ceil(float64(from.Distance(to) / 2))
			if len(run) == 0 {
				run = append(run, from)
			}
			for k := 1.0; k <= n; k++ {
				run = append(run, from.Add(to.Sub(from).Mul(k/n)))
			}
			if u < 1 {
				runs, run = keep(runs, run), nil
			}
		}
		// The last run goes on where the first began.
		if len(run) > 0 && first >= 0 && first < len(runs) {
			runs[first] = append(run, runs[first][1:]...)
			run = nil
		}
		runs = keep(runs, run)
	}
	return runs
}

func keep(runs [][]geometry.Point, run []geometry.Point) [][]geometry.Point {
	if len(run) < 2 {
		return runs
	}
	return append(runs, run)
}

// chunks parts a run into as many pieces as it takes, each begun where the one before it ended.
func (c *cutter) chunks(run []geometry.Point) [][]geometry.Point {
	usable := c.setup.Inside(c.setup.Stock.Size, c.setup.Scale.OnPage(false))
	if c.setup.Stock.Roll {
		usable.H = usable.W
	}
	short, long := min(mostPiece, usable.W, usable.H)-2*c.setup.Overlap, min(usable.H, 2*usable.W)-2*c.setup.Overlap-2*c.pad()
	if usable.W < usable.H {
		long = min(long, usable.H-2*c.setup.Overlap-2*c.pad())
	}
	var all [][]geometry.Point
	begin := 0
	box := geometry.Rect{Min: run[0], Max: run[0]}
	for i, p := range run {
		next := box.Union(geometry.Rect{Min: p, Max: p})
		wide := next.W() > min(long, usable.W-2*c.setup.Overlap-2*c.pad()) || next.H() > long
		if i-begin > 1 && (wide || min(next.W(), next.H()) > max(short-2*c.pad(), 20)) {
			all = append(all, run[begin:i])
			begin = i - 1
			next = geometry.Rect{Min: run[begin], Max: run[begin]}.Union(geometry.Rect{Min: p, Max: p})
		}
		box = next
	}
	return append(all, run[begin:])
}
