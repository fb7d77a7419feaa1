package geometry

import "math"

// curve is a straight line from a to b or, where radius is above 0, an arc about centre that
// starts in the direction start, in radians, and turns by sweep, clockwise as seen. A place
// on it is named by a number from 0 at its start to 1 at its end.
type curve struct {
	a, b         Point
	centre       Point
	radius       Length
	start, sweep float64
}

func line(a, b Point) curve { return curve{a: a, b: b} }

func arc(centre Point, radius Length, start, sweep float64) curve {
	c := curve{centre: centre, radius: radius, start: start, sweep: sweep}
	c.a, c.b = c.on(start), c.on(start+sweep)
	return c
}

// on returns the point of the arc's circle in a direction.
func (c curve) on(direction float64) Point {
	sin, cos := math.Sincos(direction)
	return c.centre.Add(Point{Length(cos), Length(sin)}.Mul(float64(c.radius)))
}

func (c curve) straight() bool { return c.radius == 0 }

func (c curve) at(t float64) Point {
	if c.straight() {
		return c.a.Add(c.b.Sub(c.a).Mul(t))
	}
	return c.on(c.start + c.sweep*t)
}

func (c curve) part(from, to float64) curve {
	if c.straight() {
		return line(c.at(from), c.at(to))
	}
	return arc(c.centre, c.radius, c.start+c.sweep*from, c.sweep*(to-from))
}

func (c curve) length() Length {
	if c.straight() {
		return c.a.Distance(c.b)
	}
	return c.radius * Length(math.Abs(c.sweep))
}

// bounds returns the least upright rectangle that holds c.
func (c curve) bounds() Rect {
	r := Rect{c.a, c.a}.Union(Rect{c.b, c.b})
	if c.straight() {
		return r
	}
	for k := range 4 {
		if direction := float64(k) * math.Pi / 2; c.place(direction) <= 1 {
			p := c.on(direction)
			r = r.Union(Rect{p, p})
		}
	}
	return r
}

// place returns where on the arc a direction lies; above 1 where beyond its end.
func (c curve) place(direction float64) float64 {
	turn := math.Mod((direction-c.start)*math.Copysign(1, c.sweep), 2*math.Pi)
	if turn < 0 {
		turn += 2 * math.Pi
	}
	return turn / math.Abs(c.sweep)
}

// under returns the area between c and the lines from origin to its ends: positive where c
// runs clockwise about origin as seen.
func (c curve) under(origin Point) float64 {
	a, b := c.a.Sub(origin), c.b.Sub(origin)
	area := float64(a.X*b.Y-a.Y*b.X) / 2
	if !c.straight() {
		area += float64(c.radius*c.radius) * (c.sweep - math.Sin(c.sweep)) / 2
	}
	return area
}

// steps returns the way of the pen along c from its start.
func (c curve) steps() []Step {
	if c.straight() {
		return []Step{{To: c.b}}
	}
	return Arc(c.centre, c.radius, Degrees(c.start), Degrees(c.sweep))[0].Steps
}

// meetLine appends to places where c, or what it is a part of, meets the line through p in
// the direction u, of length 1 where c is an arc.
func (c curve) meetLine(places []float64, p, u Point) []float64 {
	off := func(q Point) float64 { return float64(u.X*(q.Y-p.Y) - u.Y*(q.X-p.X)) }
	if c.straight() {
		from, to := off(c.a), off(c.b)
		if from == to {
			return places
		}
		return append(places, from/(from-to))
	}
	// On the circle the distance from the line is off(centre) + radius sin(direction - u's).
	sin := -off(c.centre) / float64(c.radius)
	if math.Abs(sin) > 1 {
		return places
	}
	along := math.Atan2(float64(u.Y), float64(u.X))
	turn := math.Asin(sin)
	return append(places, c.place(along+turn), c.place(along+math.Pi-turn))
}

// meetCircle appends to places where c, or what it is a part of, meets a circle.
func (c curve) meetCircle(places []float64, centre Point, radius Length) []float64 {
	if c.straight() {
		d, q := c.b.Sub(c.a), c.a.Sub(centre)
		l := d.Norm()
		if l == 0 {
			return places
		}
		foot := -(q.X*d.X + q.Y*d.Y) / l
		away := (q.X*d.Y - q.Y*d.X).Abs() / l
		if away > radius {
			return places
		}
		half := Length(math.Sqrt(float64((radius - away) * (radius + away))))
		return append(places, float64((foot-half)/l), float64((foot+half)/l))
	}
	q := centre.Sub(c.centre)
	apart := q.Norm()
	if apart == 0 {
		return places
	}
	// The law of cosines in the triangle of the two centres and a shared point.
	cos := float64((apart*apart + c.radius*c.radius - radius*radius) / (2 * apart * c.radius))
	if math.Abs(cos) > 1 {
		return places
	}
	towards, turn := math.Atan2(float64(q.Y), float64(q.X)), math.Acos(cos)
	return append(places, c.place(towards-turn), c.place(towards+turn))
}
