package paper

import (
	"math"

	"underlay/geometry"
)

// flatness is how far the straight pieces that stand for a curve may leave it, in millimetres.
const flatness = 0.001

// Run is a part of a path that lies wholly in an area, and how far along its piece of the
// path it begins, in millimetres on paper.
type Run struct {
	Piece geometry.Piece
	Along float64
}

// clip returns the parts of a path in an area. A piece wholly in it stays as it is; of others
// the curves become straight steps. Closed pieces that are cut become open ones; with whole,
// the last part of such a piece and the first are one where they meet at its start, so that
// they join there with a corner: a dash pattern would not begin anew there.
func clip(path geometry.Path, area geometry.Rect, s Scale, whole bool) []Run {
	var runs []Run
	for i, piece := range path {
		bounds := path[i : i+1].Bounds()
		switch {
		case len(piece.Steps) == 0 || !bounds.Touches(area):
		case area.Holds(bounds):
			runs = append(runs, Run{Piece: piece})
		default:
			runs = append(runs, clipPiece(piece, area, s, whole)...)
		}
	}
	return runs
}

func clipPiece(piece geometry.Piece, area geometry.Rect, s Scale, whole bool) []Run {
	points := Flatten(piece)
	if piece.Closed {
		points = append(points, piece.Start)
	}
	var runs []Run
	var along float64
	open := false // the last run ends where the next step begins
	for i, b := range points[1:] {
		a := points[i]
		length := s.distance(a, b)
		t, u, ok := ClipLine(a, b, area)
		if ok && length > 0 {
			if !open || t > 0 {
				runs = append(runs, Run{
					Piece: geometry.Piece{Start: Between(a, b, t, area)},
					Along: along + t*length,
				})
			}
			last := &runs[len(runs)-1].Piece
			last.Steps = append(last.Steps, geometry.Step{To: Between(a, b, u, area)})
			open = u == 1
		} else if length > 0 {
			open = false
		}
		along += length
	}
	n := len(runs)
	if n == 0 || !piece.Closed || !open || runs[0].Along > 0 {
		return runs
	}
	first, last := &runs[0].Piece, &runs[n-1].Piece
	switch {
	case n == 1: // all of it, though the curves' control points lie outside
		first.Steps = first.Steps[:len(first.Steps)-1]
		first.Closed = true
	case whole:
		last.Steps = append(last.Steps, first.Steps...)
		runs = runs[1:]
	}
	return runs
}

// clipFill returns the parts of closed pieces in an area (Sutherland and Hodgman's way: cut
// off what lies beyond one side after another).
func clipFill(path geometry.Path, area geometry.Rect) geometry.Path {
	var kept geometry.Path
	for i, piece := range path {
		bounds := path[i : i+1].Bounds()
		switch {
		case len(piece.Steps) == 0 || !bounds.Touches(area):
			continue
		case area.Holds(bounds):
			kept = append(kept, piece)
			continue
		}
		points := Flatten(piece)
		for side := range 4 {
			points = cutOff(points, area, side)
		}
		if len(points) > 2 {
			kept = append(kept, geometry.Polygon(points).Path()...)
		}
	}
	return kept
}

// cutOff returns the part of a polygon that is on the inner side of one side of area.
func cutOff(points []geometry.Point, area geometry.Rect, side int) []geometry.Point {
	depth := func(p geometry.Point) geometry.Length {
		switch side {
		case 0:
			return p.X - area.Min.X
		case 1:
			return area.Max.X - p.X
		case 2:
			return p.Y - area.Min.Y
		}
		return area.Max.Y - p.Y
	}
	var kept []geometry.Point
	for i, b := range points {
		a := points[(i+len(points)-1)%len(points)]
		da, db := depth(a), depth(b)
		if (da < 0) != (db < 0) {
			p := a.Add(b.Sub(a).Mul(float64(da / (da - db))))
			switch side {
			case 0:
				p.X = area.Min.X
			case 1:
				p.X = area.Max.X
			case 2:
				p.Y = area.Min.Y
			default:
				p.Y = area.Max.Y
			}
			kept = append(kept, p)
		}
		if db >= 0 {
			kept = append(kept, b)
		}
	}
	return kept
}

// ClipLine returns where the way from a to b enters and leaves area, as shares of the way
// (Liang and Barsky's way).
func ClipLine(a, b geometry.Point, area geometry.Rect) (t, u float64, ok bool) {
	d := b.Sub(a)
	t, u = 0, 1
	for _, side := range [4][2]geometry.Length{
		{-d.X, a.X - area.Min.X}, {d.X, area.Max.X - a.X},
		{-d.Y, a.Y - area.Min.Y}, {d.Y, area.Max.Y - a.Y},
	} {
		outwards, depth := side[0], side[1]
		switch {
		case outwards == 0:
			if depth < 0 {
				return 0, 0, false
			}
		case outwards < 0:
			t = max(t, float64(depth/outwards))
		default:
			u = min(u, float64(depth/outwards))
		}
	}
	return t, u, t < u
}

// Between returns the point a share t of the way from a to b, held in area against rounding.
func Between(a, b geometry.Point, t float64, area geometry.Rect) geometry.Point {
	p := a.Add(b.Sub(a).Mul(t))
	if t == 1 {
		p = b
	}
	return geometry.Pt(min(max(p.X, area.Min.X), area.Max.X), min(max(p.Y, area.Min.Y), area.Max.Y))
}

// Flatten returns the corners of straight steps along a piece, nowhere a thousandth of a millimetre
// off it.
func Flatten(piece geometry.Piece) []geometry.Point { return FlattenWithin(piece, flatness) }

// FlattenWithin returns the corners of straight steps along a piece that leave it by no more than off.
func FlattenWithin(piece geometry.Piece, off geometry.Length) []geometry.Point {
	points := []geometry.Point{piece.Start}
	for _, s := range piece.Steps {
		if s.Curved {
			points = flattenCurve(points, s, float64(off))
		}
		points = append(points, s.To)
	}
	return points
}

// flattenCurve adds points along the curve, without its end. A curve leaves a chord over a
// share h of it by no more than h^2/8 of its second derivative, which for a cubic is at most
// six times the larger second difference of its control points.
func flattenCurve(points []geometry.Point, s geometry.Step, off float64) []geometry.Point {
	p := points[len(points)-1]
	second := func(a, b, c geometry.Point) float64 {
		return float64(a.Sub(b.Mul(2)).Add(c).Norm())
	}
	bend := 6 * max(second(p, s.C1, s.C2), second(s.C1, s.C2, s.To))
	n := math.Ceil(math.Sqrt(bend / 8 / off))
	for i := 1.0; i < n; i++ {
		t := i / n
		v := 1 - t
		points = append(points, p.Mul(v*v*v).Add(s.C1.Mul(3*v*v*t)).Add(s.C2.Mul(3*v*t*t)).Add(s.To.Mul(t*t*t)))
	}
	return points
}
