package paper

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
)

// TestBoundsOfStamps: a shape put down turned has the bounds of its path as it lies there.
func TestBoundsOfStamps(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	at := func() geometry.Point {
		return geometry.Pt(geometry.Length(r.NormFloat64()*20), geometry.Length(r.NormFloat64()*9))
	}
	for i := range 300 {
		var path geometry.Path
		for range 1 + r.IntN(3) {
			piece := geometry.Piece{Start: at(), Closed: true}
			for range r.IntN(12) {
				piece.Steps = append(piece.Steps, geometry.Step{To: at(), C1: at(), C2: at(), Curved: r.IntN(2) == 0})
			}
			path = append(path, piece)
		}
		if i%3 == 0 { // in a row, or one place
			path = path.Map(func(p geometry.Point) geometry.Point { return geometry.Pt(p.X, p.X*geometry.Length(i%2)) })
		}
		shape := NewShape(path)
		place := Place{At: at(), Turn: geometry.Angle(r.IntN(8) * 45)}
		if i%2 == 0 {
			place.Turn = geometry.Angle(r.Float64() * 360)
		}
		for _, piece := range path { // control points of straight steps bound nothing
			for k, s := range piece.Steps {
				if !s.Curved {
					piece.Steps[k] = geometry.Step{To: s.To}
				}
			}
		}
		want := path.Map(func(p geometry.Point) geometry.Point { return p.Turn(place.Turn).Add(place.At) }).Bounds()
		got := Fill{Shape: shape, Place: place}.Bounds()
		if !got.Grow(1e-9).Holds(want) || !want.Grow(1e-9).Holds(got) {
			t.Fatalf("bounds %v of a path with %v", got, want)
		}
	}
}
