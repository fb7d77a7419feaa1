package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// fourSided is the surface of a cover as it really is, four-sided and not square: each side has its
// own border, and patterns are centred where the creases cross.
type fourSided struct{ flatCloth }

// newFourSidedArea draws each side of the cover in by its border. One that is a rectangle is as any
// rectangle.
func newFourSidedArea(item *job.Item) Area {
	a := newClothArea(item)
	if a.upright {
		return a
	}
	c, b := item.Corners, item.Border
	inner := geometry.Polygon(c[:]).DrawnIn([]geometry.Length{b.Top, b.Right, b.Bottom, b.Left})
	a.surface, a.corners = fourSided{}, c
	a.ground, a.edge, a.Rect = geometry.NewGround(geometry.PolygonOutline(inner), 0), inner.Path(), inner.Bounds()
	// Creases join the middles of opposite sides, and cross in the mean of the four corners. What
	// one border is wider than the opposite one moves the pattern, as on a rectangle.
	a.middle = creasesOf(c)[0].Middle().Add(geometry.Pt((b.Left-b.Right)/2, (b.Top-b.Bottom)/2))
	return a
}

func (fourSided) centre(a Area) geometry.Point { return a.middle }

// borders measures square to each side.
func (fourSided) borders(a Area, own *job.Block, sites []Site) geometry.Edges {
	var off [4]geometry.Length
	for i, s := range sidesOf(a.corners) {
		off[i] = s.depth(a.middle)
		for k, site := range sites {
			if d := s.least(site.block(own).Face.Place(site.Origin, site.Turn)); k == 0 || d < off[i] {
				off[i] = d
			}
		}
	}
	return geometry.Edges{Top: off[0], Right: off[1], Bottom: off[2], Left: off[3]}
}

// side4 is one side of a cover: a point of it, and the direction of length 1 inwards.
type side4 struct{ from, in geometry.Point }

// sidesOf returns the sides in the order top, right, bottom, left.
func sidesOf(c [4]geometry.Point) [4]side4 {
	var sides [4]side4
	for i := range c {
		along := c[(i+1)%4].Sub(c[i])
		along = along.Mul(1 / float64(along.Norm()))
		sides[i] = side4{c[i], geometry.Pt(-along.Y, along.X)}
	}
	return sides
}

// depth is how far inwards of the side a point lies.
func (s side4) depth(p geometry.Point) geometry.Length {
	d := p.Sub(s.from)
	return d.X*s.in.X + d.Y*s.in.Y
}

// least is how far inwards all of an outline lies.
func (s side4) least(o geometry.Outline) geometry.Length {
	if c, r, round := o.Round(); round {
		return s.depth(c) - r
	}
	d := geometry.Length(math.Inf(1))
	for _, c := range o.Corners() {
		d = min(d, s.depth(c))
	}
	return d
}

// Crease is a line that the cloth is folded along.
type Crease struct{ From, To geometry.Point }

// Middle returns the point half way along, where the other crease crosses it.
func (c Crease) Middle() geometry.Point { return c.From.Add(c.To).Mul(0.5) }

// Creases returns the level crease, from left to right, and the one from top to bottom; ok: the item
// is flat cloth, and has some.
func (a Area) Creases() (level, upright Crease, ok bool) {
	if a.Flat != nil {
		return level, upright, false
	}
	if a.corners != ([4]geometry.Point{}) {
		c := creasesOf(a.corners)
		return c[0], c[1], true
	}
	c := a.Cloth.Centre()
	return Crease{geometry.Pt(a.Cloth.Min.X, c.Y), geometry.Pt(a.Cloth.Max.X, c.Y)}, Crease{geometry.Pt(c.X, a.Cloth.Min.Y), geometry.Pt(c.X, a.Cloth.Max.Y)}, true
}

// creasesOf joins the middles of opposite sides.
func creasesOf(c [4]geometry.Point) [2]Crease {
	mid := func(i, j int) geometry.Point { return c[i].Add(c[j]).Mul(0.5) }
	return [2]Crease{{mid(0, 3), mid(1, 2)}, {mid(0, 1), mid(3, 2)}}
}

// Crooked says how far a cover is from square.
type Crooked struct {
	// Corners are the angles at the corners: top left, top right, bottom right, bottom left.
	Corners [4]geometry.Angle
	// Field is the largest there may be round the crossing of the creases, level with the crease
	// from left to right, that keeps every border.
	Field geometry.Size
}

// Crooked returns how far the item is from square; ok: it is given by its four sides.
func (ip *ItemPlan) Crooked() (c Crooked, ok bool) {
	if ip.Item.Shape != job.FourSided {
		return c, false
	}
	corners, b := ip.Item.Corners, ip.Item.Border
	for i := range corners {
		u, v := corners[(i+3)%4].Sub(corners[i]), corners[(i+1)%4].Sub(corners[i])
		c.Corners[i] = geometry.Degrees(math.Atan2(math.Abs(float64(u.X*v.Y-u.Y*v.X)), float64(u.X*v.X+u.Y*v.Y)))
	}
	c.Field = largestField(sidesOf(corners), [4]geometry.Length{b.Top, b.Right, b.Bottom, b.Left}, ip.Area.Centre())
	return c, true
}

// largestField is the largest upright rectangle round a point that keeps a border from each side.
// Its half width and half height x and y keep a side's where |nx| x + |ny| y <= d, with n square
// to the side and d what is left of its depth: the area is largest where one side rules alone, x =
// d / 2|nx| and y = d / 2|ny|, or where two do.
func largestField(sides [4]side4, border [4]geometry.Length, centre geometry.Point) geometry.Size {
	type rule struct{ x, y, d float64 }
	var rules []rule
	for i, s := range sides {
		rules = append(rules, rule{math.Abs(float64(s.in.X)), math.Abs(float64(s.in.Y)), float64(s.depth(centre) - border[i])})
	}
	best, most := geometry.Size{}, 0.0
	try := func(x, y float64) {
		for _, r := range rules {
			if !(r.x*x+r.y*y <= r.d+1e-9) {
				return
			}
		}
		if x > 0 && y > 0 && x*y > most {
			best, most = geometry.Size{W: geometry.Length(2 * x), H: geometry.Length(2 * y)}, x*y
		}
	}
	for i, r := range rules {
		try(r.d/(2*r.x), r.d/(2*r.y))
		for _, s := range rules[:i] {
			det := r.x*s.y - r.y*s.x
			try((r.d*s.y-r.y*s.d)/det, (r.x*s.d-r.d*s.x)/det)
		}
	}
	return best
}
