package geometry

// Overlaps tells whether two outlines share area that is more than Tolerance deep. What only
// touches, edge along edge or at a corner, does not overlap. No outline overlaps nothing.
func (o Outline) Overlaps(p Outline) bool {
	switch {
	case o.None() || p.None() || !o.Bounds().Overlaps(p.Bounds()):
		return false
	case o.radius > 0 && p.radius > 0:
		return o.centre.Distance(p.centre) < o.radius+p.radius-Tolerance
	case p.radius > 0:
		return p.Overlaps(o)
	case o.radius > 0:
		return p.Distance(CircleOutline(o.centre, max(o.radius-2*Tolerance, Tolerance))) == 0
	}
	// A corner on the other's edge says nothing, so that one of the two is drawn in by a hair.
	in := o.corners.drawnInAHair()
	return p.corners.Contains(in[0]) || in.Contains(p.corners[0]) || in.meets(p.corners)
}

// drawnInAHair returns p with every side moved inwards by twice Tolerance.
func (p Polygon) drawnInAHair() Polygon {
	sides := p.sides()
	in := make(Polygon, len(sides))
	for i, s := range sides {
		n, m := sides[(i+len(sides)-1)%len(sides)].normal(), s.normal()
		// Where two moved sides meet: p + d (n + m) / (1 + n m); at a spike no farther than 20 d.
		open := max(0.005, 1+float64(n.X*m.X+n.Y*m.Y))
		in[i] = s.a.Add(n.Add(m).Mul(2 * float64(Tolerance) / open))
	}
	return in
}

// meets tells whether a side of p and a side of q share a point.
func (p Polygon) meets(q Polygon) bool {
	box := p.Bounds().Intersect(q.Bounds())
	near := func(p Polygon) []piece {
		var all []piece
		for i, a := range p {
			if s := (piece{a, p[(i+1)%len(p)]}); s.box().Touches(box) {
				all = append(all, s)
			}
		}
		return all
	}
	others := near(q)
	for _, s := range near(p) {
		for _, t := range others {
			if meet(s.a, s.b, t.a, t.b) {
				return true
			}
		}
	}
	return false
}
