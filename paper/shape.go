package paper

import (
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
	often  bool
}

// NewShape returns a shape to be put down in many places.
func NewShape(path geometry.Path) *Shape {
	return &Shape{path: path, bounds: path.Bounds(), often: true}
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
	var r geometry.Rect
	first, place := true, p.mapping()
	hold := func(q geometry.Point) {
		q = place(q)
		if first {
			r, first = geometry.Rect{Min: q, Max: q}, false
		}
		r = r.Union(geometry.Rect{Min: q, Max: q})
	}
	for _, piece := range s.path {
		hold(piece.Start)
		for _, step := range piece.Steps {
			hold(step.To)
			if step.Curved {
				hold(step.C1)
				hold(step.C2)
			}
		}
	}
	return r
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
