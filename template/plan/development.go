package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// Development is a cone laid flat: a ring sector about Apex, symmetric about the upright line
// through it, the wide end of the shade down. Its frame has the top left corner of its bounds
// at (0, 0).
type Development struct {
	Apex         geometry.Point
	Outer, Inner geometry.Length // radii: of the wide end, of the narrow end
	Angle        geometry.Angle  // of the whole sector, less than 360
	size         geometry.Size   // of its bounds
}

// newDevelopment lays a cone flat. With ends D and d across and the slant
// s = sqrt(height^2 + ((D - d)/2)^2) the outer radius is s D / (D - d), the inner one less by
// s, and the angle pi D / R, so that the arcs are as long as the ends are round.
func newDevelopment(shade job.Shade) Development {
	wide, narrow := shade.Bottom, shade.Top
	slant := geometry.Pt((wide-narrow)/2, shade.Height).Norm()
	outer := slant * wide / (wide - narrow)
	d := Development{Outer: outer, Inner: outer - slant, Angle: geometry.Degrees(math.Pi * float64(wide/outer))}
	b := d.bounds(d.Inner, d.Outer)
	d.Apex = geometry.Point{}.Sub(b.Min)
	d.size = b.Size()
	return d
}

// At returns the point at a radius, and at an angle from the middle line, to the right where
// positive.
func (d Development) At(r geometry.Length, a geometry.Angle) geometry.Point {
	return d.Apex.Add(geometry.Pt(0, r).Turn(-a))
}

// angleOf is the angle of a point from the middle line, to the right where positive.
func (d Development) angleOf(p geometry.Point) geometry.Angle {
	at := p.Sub(d.Apex)
	return geometry.Degrees(math.Atan2(float64(at.X), float64(at.Y)))
}

// OffEdge is how far outside the nearer of the two straight edges a point lies, square to it;
// less than 0 for a point between them.
func (d Development) OffEdge(p geometry.Point) geometry.Length {
	at := p.Sub(d.Apex)
	if at.X < 0 {
		at.X = -at.X
	}
	sin, cos := (d.Angle / 2).SinCos()
	return at.X*geometry.Length(cos) - at.Y*geometry.Length(sin)
}

// bounds returns the bounds of the part of the sector between two radii.
func (d Development) bounds(inner, outer geometry.Length) geometry.Rect {
	half := d.Angle / 2
	var r geometry.Rect
	for i, p := range []geometry.Point{
		d.At(inner, -half), d.At(outer, -half), d.At(inner, half), d.At(outer, half), d.At(outer, 0),
		d.At(outer, -min(half, 90)), d.At(outer, min(half, 90)),
	} {
		if i == 0 {
			r = geometry.Rect{Min: p, Max: p}
		}
		r = r.Union(geometry.Rect{Min: p, Max: p})
	}
	return r
}

// band returns the edge of the part of the sector between two radii, clockwise as seen.
func (d Development) band(inner, outer geometry.Length) geometry.Path {
	piece := geometry.Arc(d.Apex, inner, 90+d.Angle/2, -d.Angle)[0]
	back := geometry.Arc(d.Apex, outer, 90-d.Angle/2, d.Angle)[0]
	piece.Steps = append(append(piece.Steps, geometry.Step{To: back.Start}), back.Steps...)
	piece.Closed = true
	return geometry.Path{piece}
}

// holds tells whether an outline lies between two radii, within geometry.Tolerance. Where it
// lies round the shade does not matter, as the pattern runs on over the seam.
func (d Development) holds(f geometry.Outline, radii [2]geometry.Length) bool {
	if apart(f, d.Apex) < radii[0]-geometry.Tolerance {
		return false
	}
	limit := radii[1] + geometry.Tolerance
	if c, r, round := f.Round(); round {
		return c.Distance(d.Apex)+r <= limit
	}
	for _, c := range f.Corners() {
		if c.Distance(d.Apex) > limit {
			return false
		}
	}
	return true
}

// turned returns an outline turned about the apex.
func (d Development) turned(f geometry.Outline, a geometry.Angle) geometry.Outline {
	return f.Move(geometry.Point{}.Sub(d.Apex)).Turn(a).Move(d.Apex)
}

// turnedSite returns a site turned about the apex, block and all.
func (d Development) turnedSite(s Site, a geometry.Angle) Site {
	s.Origin = s.Origin.Sub(d.Apex).Turn(a).Add(d.Apex)
	s.Turn = (s.Turn + a).Normal()
	return s
}

// crossesSeam tells whether an outline leaves the sector on its left or right.
func (d Development) crossesSeam(f geometry.Outline) bool {
	half := d.Angle / 2
	if c, r, round := f.Round(); round {
		to := half - max(d.angleOf(c), -d.angleOf(c))
		sin, _ := min(to, 90).SinCos()
		return c.Distance(d.Apex)*geometry.Length(sin) < r-geometry.Tolerance
	}
	// Corners lie less than half a turn from the middle, which tells apart those on either
	// side of straight up.
	middle := d.angleOf(f.Bounds().Centre())
	for _, c := range f.Corners() {
		a := middle + geometry.Angle(math.Remainder(float64(d.angleOf(c)-middle), 360))
		if geometry.Length((max(a, -a)-half).Radians())*c.Distance(d.Apex) > geometry.Tolerance {
			return true
		}
	}
	return false
}
