package geometry

import "math"

// Quadrilateral returns the corners of a figure of four sides, given as they come round: top, right,
// bottom, left; and the diagonal from its top left corner to its bottom right one, which parts it
// into two triangles (the law of cosines). The corners are top left, top right, bottom right,
// bottom left; the line from the middle of the left side to that of the right one runs level, and
// the top left corner of the bounds is (0, 0). ok is false where a triangle does not close.
func Quadrilateral(sides [4]Length, diagonal Length) (corners [4]Point, ok bool) {
	top, right, bottom, left := sides[0], sides[1], sides[2], sides[3]
	// The diagonal lies along x for now, the top right corner above it.
	x, h, okAbove := apex(diagonal, top, right)
	u, k, okBelow := apex(diagonal, left, bottom)
	if !okAbove || !okBelow {
		return corners, false
	}
	corners = [4]Point{{}, {x, -h}, {diagonal, 0}, {u, k}}
	level := corners[1].Add(corners[2]).Sub(corners[0]).Sub(corners[3])
	turn := Degrees(math.Atan2(float64(level.Y), float64(level.X)))
	for i, c := range corners {
		corners[i] = c.Turn(-turn)
	}
	from := Polygon(corners[:]).Bounds().Min
	for i, c := range corners {
		corners[i] = c.Sub(from)
	}
	return corners, true
}

// apex returns where the third corner of a triangle on a base along x lies, by its sides to the two
// ends of the base: how far along, and how far off. By the law of cosines the angle at the near end
// has the cosine (near^2 + base^2 - far^2) / (2 near base).
func apex(base, near, far Length) (along, off Length, ok bool) {
	if base+near <= far+Tolerance || base+far <= near+Tolerance || near+far <= base+Tolerance {
		return 0, 0, false
	}
	along = (near*near + base*base - far*far) / (2 * base)
	return along, Length(math.Sqrt(math.Max(0, float64((near-along)*(near+along))))), true
}

// DrawnIn returns a convex polygon, its corners clockwise as seen, with each side moved inwards by a
// distance of its own, that of the side from the i-th corner to the next; nil where nothing is left.
func (p Polygon) DrawnIn(by []Length) Polygon {
	q := p
	for i, a := range p {
		along := p[(i+1)%len(p)].Sub(a)
		along = along.Mul(1 / float64(along.Norm()))
		in := Point{-along.Y, along.X}
		depth := func(c Point) Length {
			d := c.Sub(a)
			return d.X*in.X + d.Y*in.Y - by[i]
		}
		var kept Polygon
		for k, c := range q {
			d := q[(k+1)%len(q)]
			dc, dd := depth(c), depth(d)
			if dc >= 0 {
				kept = append(kept, c)
			}
			if dc >= 0 != (dd >= 0) {
				kept = append(kept, c.Add(d.Sub(c).Mul(float64(dc/(dc-dd)))))
			}
		}
		if q = kept; len(q) < 3 {
			return nil
		}
	}
	return q
}
