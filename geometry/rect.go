package geometry

// Size is a width and a height.
type Size struct{ W, H Length }

// Swap returns the size of the thing after a quarter turn.
func (s Size) Swap() Size { return Size{s.H, s.W} }

// Rect is an upright rectangle from its top left corner Min to its bottom right corner Max.
type Rect struct{ Min, Max Point }

// RectAt returns the rectangle of the given size with its top left corner at p.
func RectAt(p Point, s Size) Rect { return Rect{p, Point{p.X + s.W, p.Y + s.H}} }

// RectAround returns the rectangle of the given size with its centre at p.
func RectAround(p Point, s Size) Rect {
	return Rect{Point{p.X - s.W/2, p.Y - s.H/2}, Point{p.X + s.W/2, p.Y + s.H/2}}
}

// W returns the width.
func (r Rect) W() Length { return r.Max.X - r.Min.X }

// H returns the height.
func (r Rect) H() Length { return r.Max.Y - r.Min.Y }

// Size returns width and height.
func (r Rect) Size() Size { return Size{r.W(), r.H()} }

// Empty tells whether r holds no area.
func (r Rect) Empty() bool { return r.W() <= 0 || r.H() <= 0 }

// Centre returns the middle of r.
func (r Rect) Centre() Point { return Point{(r.Min.X + r.Max.X) / 2, (r.Min.Y + r.Max.Y) / 2} }

// Move returns r moved by d.
func (r Rect) Move(d Point) Rect { return Rect{r.Min.Add(d), r.Max.Add(d)} }

// Grow returns r with every side moved outwards by d; a negative d draws it in.
func (r Rect) Grow(d Length) Rect {
	return Rect{Point{r.Min.X - d, r.Min.Y - d}, Point{r.Max.X + d, r.Max.Y + d}}
}

// In returns r with each side drawn in by a distance of its own.
func (r Rect) In(e Edges) Rect {
	return Rect{Point{r.Min.X + e.Left, r.Min.Y + e.Top}, Point{r.Max.X - e.Right, r.Max.Y - e.Bottom}}
}

// Union returns the least rectangle that holds both.
func (r Rect) Union(s Rect) Rect {
	return Rect{
		Point{min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)},
		Point{max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)},
	}
}

// Intersect returns what r and s share; Empty where they share nothing.
func (r Rect) Intersect(s Rect) Rect {
	return Rect{
		Point{max(r.Min.X, s.Min.X), max(r.Min.Y, s.Min.Y)},
		Point{min(r.Max.X, s.Max.X), min(r.Max.Y, s.Max.Y)},
	}
}

// Overlaps tells whether r and s share more than an edge.
func (r Rect) Overlaps(s Rect) bool {
	i := r.Intersect(s)
	return i.W() > Tolerance && i.H() > Tolerance
}

// Touches tells whether r and s share at least a point.
func (r Rect) Touches(s Rect) bool {
	i := r.Intersect(s)
	return i.W() >= -Tolerance && i.H() >= -Tolerance
}

// Contains tells whether p lies in r or on its edge, within Tolerance.
func (r Rect) Contains(p Point) bool {
	return p.X >= r.Min.X-Tolerance && p.X <= r.Max.X+Tolerance &&
		p.Y >= r.Min.Y-Tolerance && p.Y <= r.Max.Y+Tolerance
}

// Holds tells whether s lies wholly in r, edges allowed, within Tolerance.
func (r Rect) Holds(s Rect) bool { return r.Contains(s.Min) && r.Contains(s.Max) }

// Polygon returns the four corners, clockwise as seen from the top left.
func (r Rect) Polygon() Polygon {
	return Polygon{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}}
}

// Edges is one length for each side of a thing: a border, say.
type Edges struct{ Top, Right, Bottom, Left Length }

// EvenEdges returns the same length on every side.
func EvenEdges(l Length) Edges { return Edges{l, l, l, l} }

// Least returns the smallest of the four.
func (e Edges) Least() Length { return min(e.Top, e.Right, e.Bottom, e.Left) }

// Even tells whether all four are the same within Tolerance.
func (e Edges) Even() bool {
	return max(e.Top, e.Right, e.Bottom, e.Left)-e.Least() <= Tolerance
}
