package paper

import (
	"cmp"
	"slices"

	"underlay/geometry"
)

// Shape is a path in a frame of its own, or a disc round its origin. One that NewShape or Disc
// made is put down in many places of a drawing: a block's outline, an arrow, a dot. Files then
// hold it once.
type Shape struct {
	path   geometry.Path // of a disc: none
	radius geometry.Length
	bounds geometry.Rect
	hull   geometry.Polygon // what bounds it, turned any way
	often  bool
}

// NewShape returns a shape to be put down in many places.
func NewShape(path geometry.Path) *Shape {
	return &Shape{path: path, bounds: path.Bounds(), hull: hull(path), often: true}
}

// Disc returns a disc round the origin.
func Disc(radius geometry.Length) *Shape {
	return &Shape{radius: radius, bounds: geometry.Rect{}.Grow(radius), often: true}
}

// Once returns a shape for one place.
func Once(path geometry.Path) *Shape { return &Shape{path: path, bounds: path.Bounds()} }

// Place is where a shape is put down: turned clockwise round its own origin, and that moved to
// At. The zero Place leaves it where it is.
type Place struct {
	At   geometry.Point
	Turn geometry.Angle
}

// none tells that there is nothing to draw.
func (s *Shape) none() bool {
	for _, piece := range s.path {
		if len(piece.Steps) > 0 {
			return false
		}
	}
	return s.radius <= 0
}

// way returns the path of the shape.
func (s *Shape) way() geometry.Path {
	if s.radius > 0 {
		return geometry.CircleOutline(geometry.Point{}, s.radius).Path()
	}
	return s.path
}

// Turned returns the path of the shape turned round its origin.
func (s *Shape) Turned(turn geometry.Angle) geometry.Path { return s.put(Place{Turn: turn}) }

// put returns the path of the shape at a place.
func (s *Shape) put(p Place) geometry.Path {
	if p == (Place{}) {
		return s.way()
	}
	return s.way().Map(p.mapping())
}

// mapping returns what says where a point of the shape's frame lies.
func (p Place) mapping() func(geometry.Point) geometry.Point {
	if p.Turn == 0 {
		return p.At.Add
	}
	turn := p.Turn.Turner()
	return func(q geometry.Point) geometry.Point { return turn(q).Add(p.At) }
}

// boundsAt returns an upright rectangle that holds the shape at a place.
func (s *Shape) boundsAt(p Place) geometry.Rect {
	if p.Turn == 0 || s.radius > 0 {
		return s.bounds.Move(p.At)
	}
	if s.hull != nil {
		return s.hull.Turn(p.Turn).Bounds().Move(p.At)
	}
	return s.put(p).Bounds()
}

// hull returns the corners of the least polygon without inner corners that holds a path and its
// control points (A. Andrew's chain, 1979, from memory).
func hull(path geometry.Path) geometry.Polygon {
	var all geometry.Polygon
	for _, piece := range path {
		all = append(all, piece.Start)
		for _, step := range piece.Steps {
			all = append(all, step.To)
			if step.Curved {
				all = append(all, step.C1, step.C2)
			}
		}
	}
	slices.SortFunc(all, func(a, b geometry.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	all = slices.Compact(all)
	if len(all) < 3 {
		return all
	}
	var round geometry.Polygon
	for range 2 {
		chain := geometry.Polygon{}
		for _, p := range all {
			for len(chain) > 1 && leftOf(chain[len(chain)-2], chain[len(chain)-1], p) <= 0 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		round = append(round, chain[:len(chain)-1]...)
		slices.Reverse(all)
	}
	return round
}

// leftOf is above 0 where the way from a to b and on to c bends one way, below 0 where the other.
func leftOf(a, b, c geometry.Point) geometry.Length {
	ab, ac := b.Sub(a), c.Sub(a)
	return ab.X*ac.Y - ab.Y*ac.X
}

// Disc returns the radius of a disc; 0 for any other shape.
func (s *Shape) Disc() geometry.Length { return s.radius }

// Often tells whether the shape was made for many places.
func (s *Shape) Often() bool { return s.often }

// Equal tells whether two shapes are the same path or disc, made for as many places.
func (s *Shape) Equal(t *Shape) bool {
	if s == nil || t == nil {
		return s == t
	}
	return s.radius == t.radius && s.often == t.often && slices.EqualFunc(s.path, t.path, func(a, b geometry.Piece) bool {
		return a.Start == b.Start && a.Closed == b.Closed && slices.Equal(a.Steps, b.Steps)
	})
}
