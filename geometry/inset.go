package geometry

// Inset returns the edge of the set of points inside o at distance >= d from its edge.
func (o Outline) Inset(d Length) (path Path, bounds Rect, ok bool) {
	if o.radius > 0 {
		c := CircleOutline(o.centre, o.radius-d)
		return c.Path(), c.Bounds(), o.radius > d
	}
	r, _ := o.Upright()
	r = r.Grow(-d)
	return r.Polygon().Path(), r, !r.Empty()
}
