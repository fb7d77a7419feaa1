package geometry

import "math"

// A Path is a pen's way over the plane: pieces, each a run of straight lines and curves.
type Path []Piece

// Piece is one run of the pen. It starts at Start; Closed joins its end to its start.
type Piece struct {
	Start  Point
	Steps  []Step
	Closed bool
}

// Step goes on from where the pen is: straight to To, or, where Curved, along the cubic
// Bezier curve with the two control points.
type Step struct {
	To     Point
	C1, C2 Point
	Curved bool
}

// Line returns the straight path from a to b.
func Line(a, b Point) Path { return Path{{Start: a, Steps: []Step{{To: b}}}} }

// Chain returns the open path through the points; none through no point.
func Chain(p ...Point) Path {
	if len(p) == 0 {
		return nil
	}
	piece := Piece{Start: p[0], Steps: make([]Step, len(p)-1)}
	for i, q := range p[1:] {
		piece.Steps[i].To = q
	}
	return Path{piece}
}

// Path returns the closed path round p.
func (p Polygon) Path() Path {
	path := Chain(p...)
	for i := range path {
		path[i].Closed = true
	}
	return path
}

// circleSteps curves make a circle: with eight the curve leaves the true circle by less
// than 5 millionths of the radius.
const circleSteps = 8

// Path returns the closed path along o.
func (o Outline) Path() Path {
	if o.radius == 0 {
		return o.corners.Path()
	}
	p := Arc(o.centre, o.radius, -90, 360)
	p[0].Closed = true
	return p
}

// Arc returns the path along a circle from the direction from through the angle sweep,
// clockwise as seen where sweep is positive; direction 0 is to the right.
func Arc(centre Point, radius Length, from, sweep Angle) Path {
	n := int(math.Abs(float64(sweep))/(360/circleSteps) + 0.999999)
	n = max(n, 1)
	step := sweep / Angle(n)
	// Control points of a cubic that meets the arc at its ends and its middle.
	k := 4.0 / 3 * math.Tan(step.Radians()/4)
	at := func(a Angle) (p, t Point) {
		u := Point{1, 0}.Turn(a)
		return centre.Add(u.Mul(float64(radius))), Point{-u.Y, u.X}.Mul(float64(radius) * k)
	}
	p, t := at(from)
	piece := Piece{Start: p}
	for i := 1; i <= n; i++ {
		q, u := at(from + step*Angle(i))
		piece.Steps = append(piece.Steps, Step{To: q, C1: p.Add(t), C2: q.Sub(u), Curved: true})
		p, t = q, u
	}
	return Path{piece}
}

// Bounds returns an upright rectangle that holds the path (control points included).
func (p Path) Bounds() Rect {
	var r Rect
	for i, piece := range p {
		if i == 0 {
			r = Rect{piece.Start, piece.Start}
		}
		r = r.Union(Rect{piece.Start, piece.Start})
		for _, s := range piece.Steps {
			r = r.Union(Rect{s.To, s.To})
			if s.Curved {
				r = r.Union(Rect{s.C1, s.C1}).Union(Rect{s.C2, s.C2})
			}
		}
	}
	return r
}

// Map returns the path with f applied to every point of it.
func (p Path) Map(f func(Point) Point) Path {
	q := make(Path, len(p))
	for i, piece := range p {
		steps := make([]Step, len(piece.Steps))
		for j, s := range piece.Steps {
			steps[j] = Step{To: f(s.To), Curved: s.Curved}
			if s.Curved {
				steps[j].C1, steps[j].C2 = f(s.C1), f(s.C2)
			}
		}
		q[i] = Piece{Start: f(piece.Start), Steps: steps, Closed: piece.Closed}
	}
	return q
}
