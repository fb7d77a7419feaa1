package geometry

// Place returns the outline a face leaves on the cloth: given in the block's own frame with its
// centre at (0, 0), it is turned clockwise and laid with its centre at origin.
func (o Outline) Place(origin Point, turn Angle) Outline { return o.Turn(turn).Move(origin) }

// Rim returns the points a printer can put down first: the corners that jut out, or for a round
// face the point of its edge in the direction of p; of a p in its middle the one below.
func (o Outline) Rim(p Point) []Point {
	centre, radius, round := o.Round()
	if !round {
		return o.Corners().Jutting()
	}
	d := p.Sub(centre)
	if d.Norm() <= Tolerance {
		return []Point{{centre.X, centre.Y + radius}}
	}
	return []Point{centre.Add(d.Mul(float64(radius / d.Norm())))}
}

// UpArrow returns the edge of a wedge of the given length, middle at p, that points to the top of
// the block as turned: 3/5 as wide as long, notched at its foot, so that it keeps its way even
// where ink runs.
func UpArrow(p Point, length Length, turn Angle) Path {
	at := func(x, y float64) Point {
		return Point{length * Length(x), length * Length(y)}.Turn(turn).Add(p)
	}
	return Polygon{at(0, -0.5), at(0.3, 0.5), at(0, 0.3), at(-0.3, 0.5)}.Path()
}
