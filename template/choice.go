package template

import (
	"math"

	"underlay/geometry"
)

// Spacing is one length across and one down.
type Spacing struct{ Across, Down geometry.Length }

// Choice is one way of setting out a pass: what sits on the centre lines, and what that gives.
type Choice struct {
	Across, Down  Centring // "" where the repeat has no such choice
	Count         int
	Columns, Rows int // 0 where the repeat has no single count of them
	RowCounts     []int
	Gap, Pitch    Spacing
	Border        geometry.Edges // plain cloth left inside the bounds of the item
}

// better tells whether c is to be preferred to d: more whole prints, then the more even
// opposite borders, then the larger smallest border.
func (c Choice) better(d Choice) bool {
	if c.Count != d.Count {
		return c.Count > d.Count
	}
	if u, v := c.unevenness(), d.unevenness(); math.Abs(float64(u-v)) > float64(geometry.Tolerance) {
		return u < v
	}
	return c.Border.Least() > d.Border.Least()+geometry.Tolerance
}

// unevenness is how far opposite borders differ, both pairs together.
func (c Choice) unevenness() geometry.Length {
	b := c.Border
	return geometry.Length(math.Abs(float64(b.Left-b.Right)) + math.Abs(float64(b.Top-b.Bottom)))
}

// allowed tells whether the job's wishes for the centre lines leave room for c.
func (c Choice) allowed(p *Pass) bool {
	return (p.CentreAcross == OnBest || c.Across == "" || c.Across == p.CentreAcross) &&
		(p.CentreDown == OnBest || c.Down == "" || c.Down == p.CentreDown)
}

// take returns the index of the best of the choices allowed, or -1 where none is.
func take(choices []Choice, p *Pass) int {
	taken := -1
	for i, c := range choices {
		if c.allowed(p) && (taken < 0 || c.better(choices[taken])) {
			taken = i
		}
	}
	return taken
}
