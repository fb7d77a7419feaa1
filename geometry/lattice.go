package geometry

import "math"

// Lattice is the endless pattern of points Origin + i Across + j Down. Straight, brick,
// half-drop, honeycomb and diagonal repeats are lattices that differ in their two steps.
type Lattice struct {
	Origin       Point
	Across, Down Point
}

// Site is one point of a lattice, with its indices.
type Site struct{ I, J int }

// At returns the point with the indices of s.
func (l Lattice) At(s Site) Point {
	return l.Origin.Add(l.Across.Mul(float64(s.I))).Add(l.Down.Mul(float64(s.J)))
}

// In returns the sites whose points lie in r, within Tolerance, ordered by J, then I; none where
// the two steps lie in one line, or r is turned inside out.
func (l Lattice) In(r Rect) []Site {
	det := float64(l.Across.X*l.Down.Y - l.Across.Y*l.Down.X)
	if det == 0 || r.W() < -Tolerance || r.H() < -Tolerance {
		return nil
	}
	// The corners of r in lattice steps bound the indices.
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, c := range r.Grow(Tolerance).Polygon() {
		d := c.Sub(l.Origin)
		s := [2]float64{
			float64(d.X*l.Down.Y-d.Y*l.Down.X) / det,
			float64(l.Across.X*d.Y-l.Across.Y*d.X) / det,
		}
		for k := range s {
			lo[k], hi[k] = math.Min(lo[k], s[k]), math.Max(hi[k], s[k])
		}
	}
	var sites []Site
	for j := int(math.Floor(lo[1])); j <= int(math.Ceil(hi[1])); j++ {
		from, to := l.run(j, r, int(math.Floor(lo[0])), int(math.Ceil(hi[0])))
		for i := from; i <= to; i++ {
			if r.Contains(l.At(Site{i, j})) {
				sites = append(sites, Site{i, j})
			}
		}
	}
	return sites
}

// run narrows the indices i of row j to those near r.
func (l Lattice) run(j int, r Rect, from, to int) (int, int) {
	base := l.Origin.Add(l.Down.Mul(float64(j)))
	narrow := func(step, base, low, high Length) {
		if step.Abs() <= Tolerance {
			return
		}
		a, b := float64((low-base)/step), float64((high-base)/step)
		if a > b {
			a, b = b, a
		}
		from, to = max(from, int(math.Floor(a))-1), min(to, int(math.Ceil(b))+1)
	}
	narrow(l.Across.X, base.X, r.Min.X, r.Max.X)
	narrow(l.Across.Y, base.Y, r.Min.Y, r.Max.Y)
	return from, to
}
