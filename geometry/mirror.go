package geometry

import "slices"

// Mirror returns o with left and right changed over: x becomes width - x.
func (o Outline) Mirror(width Length) Outline {
	if r, ok := o.Upright(); ok {
		return RectOutline(r.Mirror(width))
	}
	m := Outline{radius: o.radius}
	if o.radius > 0 {
		m.centre = o.centre.Mirror(width)
	}
	for _, c := range o.corners {
		m.corners = append(m.corners, c.Mirror(width))
	}
	// Corners keep coming round the same way.
	slices.Reverse(m.corners)
	return m
}

// Mirror returns r with left and right changed over: x becomes width - x.
func (r Rect) Mirror(width Length) Rect {
	return Rect{Point{width - r.Max.X, r.Min.Y}, Point{width - r.Min.X, r.Max.Y}}
}

// Mirror returns p with left and right changed over: x becomes width - x.
func (p Point) Mirror(width Length) Point { return Point{width - p.X, p.Y} }

// Mirror returns e with left and right changed over.
func (e Edges) Mirror() Edges {
	return Edges{Top: e.Top, Right: e.Left, Bottom: e.Bottom, Left: e.Right}
}

// Near tells whether two outlines run round alike, each corner within Tolerance, wherever they
// begin.
func (o Outline) Near(p Outline) bool {
	n := len(o.corners)
	if n != len(p.corners) || (o.radius-p.radius).Abs() > Tolerance || !o.centre.Near(p.centre) {
		return false
	}
	for first := range n {
		same := true
		for i := range n {
			same = same && o.corners[i].Near(p.corners[(first+i)%n])
		}
		if same {
			return true
		}
	}
	return n == 0
}
