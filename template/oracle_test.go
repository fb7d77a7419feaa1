package template

import (
	"math"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"underlay/geometry"
)

// What follows knows a print only as corners, or as a circle, and asks github.com/paulmach/orb
// where points lie. It shares no code with what it checks.

// printShape is a print's edge: corners, or a centre and a radius.
type printShape struct {
	ring   orb.Ring // closed: its last point is its first
	centre orb.Point
	radius float64
}

// outlineAt sets a block's face down at an origin, turned clockwise as seen.
func outlineAt(b *Block, at geometry.Point, turn geometry.Angle) printShape {
	s := printShape{centre: orb.Point{float64(at.X), float64(at.Y)}}
	if b.Shape == "round" {
		s.radius = float64(b.Size.W) / 2
		return s
	}
	sin, cos := math.Sincos(float64(turn) * math.Pi / 180)
	for _, c := range b.Face.Corners() {
		x, y := float64(c.X), float64(c.Y)
		s.ring = append(s.ring, orb.Point{s.centre[0] + x*cos - y*sin, s.centre[1] + x*sin + y*cos})
	}
	s.ring = append(s.ring, s.ring[0])
	return s
}

// far and nearest tell how far the shape lies from a point, at most and at least.
func (s printShape) far(p orb.Point) float64 {
	if s.ring == nil {
		return planar.Distance(s.centre, p) + s.radius
	}
	most := 0.0
	for _, c := range s.ring {
		most = math.Max(most, planar.Distance(c, p))
	}
	return most
}

func (s printShape) nearest(p orb.Point) float64 {
	if s.ring == nil {
		return math.Max(0, planar.Distance(s.centre, p)-s.radius)
	}
	if planar.RingContains(s.ring, p) {
		return 0
	}
	return sides(s.ring, p)
}

// sides is the distance of a point from the edge of a ring.
func sides(r orb.Ring, p orb.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(r); i++ {
		least = math.Min(least, planar.DistanceFromSegment(r[i-1], r[i], p))
	}
	return least
}

// apart is the plain cloth between two shapes; negative: how deep the one lies in the other,
// as far as their corners and sides tell.
func (s printShape) apart(t printShape) float64 {
	switch {
	case s.ring == nil && t.ring == nil:
		return planar.Distance(s.centre, t.centre) - s.radius - t.radius
	case s.ring == nil:
		if planar.RingContains(t.ring, s.centre) {
			return -s.radius
		}
		return sides(t.ring, s.centre) - s.radius
	case t.ring == nil:
		return t.apart(s)
	}
	if d := s.axes(t); d < 0 {
		return d
	}
	least := math.Inf(1)
	for _, c := range s.ring {
		least = math.Min(least, sides(t.ring, c))
	}
	for _, c := range t.ring {
		least = math.Min(least, sides(s.ring, c))
	}
	return least
}

// axes tells how deep two convex shapes lie in each other, negative, by the widths of both
// square to every side (separating axes); 0 where they do not.
func (s printShape) axes(t printShape) float64 {
	depth := math.Inf(1)
	for _, r := range []orb.Ring{s.ring, t.ring} {
		for i := 1; i < len(r); i++ {
			nx, ny := r[i][1]-r[i-1][1], r[i-1][0]-r[i][0]
			n := math.Hypot(nx, ny)
			reach := func(q orb.Ring) (low, high float64) {
				low, high = math.Inf(1), math.Inf(-1)
				for _, c := range q {
					d := (c[0]*nx + c[1]*ny) / n
					low, high = math.Min(low, d), math.Max(high, d)
				}
				return low, high
			}
			a, b := reach(s.ring)
			c, d := reach(t.ring)
			depth = math.Min(depth, math.Min(b, d)-math.Max(a, c))
		}
	}
	return math.Min(0, -depth)
}

// slack is what the oracle lets pass; spare is what it wants to be sure that a print fits.
const (
	slack = 1e-5
	spare = -1e-7
)

// fits tells whether a shape lies on the printable area of an item, and clear of its zones,
// but for a slack.
func (s printShape) fits(item *Item, slack float64) bool {
	b := item.Border
	cloth := geometry.RectAt(geometry.Point{}, item.Size)
	switch item.Shape {
	case "rectangle", "drum":
		left, right := float64(cloth.Min.X+b.Left), float64(cloth.Max.X-b.Right)
		if item.Shape == "drum" {
			left, right = math.Inf(-1), math.Inf(1)
		}
		low, high := s.bounds()
		if low[0] < left-slack || high[0] > right+slack || low[1] < float64(cloth.Min.Y+b.Top)-slack || high[1] > float64(cloth.Max.Y-b.Bottom)+slack {
			return false
		}
	case "round":
		r := float64(item.Size.W) / 2
		if s.far(orb.Point{r, r}) > r-float64(b.Top)+slack {
			return false
		}
	case "outline":
		var edge orb.Ring
		for _, c := range item.Outline.Corners() {
			edge = append(edge, orb.Point{float64(c.X), float64(c.Y)})
		}
		edge = append(edge, edge[0])
		if !planar.RingContains(edge, s.centre) {
			return false
		}
		clear := math.Inf(1)
		if s.ring == nil {
			clear = sides(edge, s.centre) - s.radius
		}
		for _, c := range s.ring {
			if d := sides(edge, c); planar.RingContains(edge, c) {
				clear = math.Min(clear, d)
			} else {
				clear = math.Min(clear, -d)
			}
		}
		for _, c := range edge {
			if s.ring != nil && planar.RingContains(s.ring, c) {
				return false
			} else if s.ring != nil {
				clear = math.Min(clear, sides(s.ring, c))
			}
		}
		if clear < float64(b.Top)-slack {
			return false
		}
	}
	for _, z := range item.Zones {
		r := z.Rect
		zone := printShape{ring: orb.Ring{
			{float64(r.Min.X), float64(r.Min.Y)}, {float64(r.Max.X), float64(r.Min.Y)},
			{float64(r.Max.X), float64(r.Max.Y)}, {float64(r.Min.X), float64(r.Max.Y)}, {float64(r.Min.X), float64(r.Min.Y)},
		}}
		for _, copy := range s.copies(item) {
			if copy.apart(zone) < -slack {
				return false
			}
		}
	}
	return true
}

// bounds returns the least and the greatest coordinates.
func (s printShape) bounds() (low, high orb.Point) {
	if s.ring == nil {
		return orb.Point{s.centre[0] - s.radius, s.centre[1] - s.radius}, orb.Point{s.centre[0] + s.radius, s.centre[1] + s.radius}
	}
	b := s.ring.Bound()
	return b.Min, b.Max
}

// copies returns the shape as it lies on the cloth: round a drum also one way round farther,
// both ways.
func (s printShape) copies(item *Item) []printShape {
	if item.Shape != "drum" {
		return []printShape{s}
	}
	all := []printShape{s}
	for _, x := range []float64{-float64(item.Size.W), float64(item.Size.W)} {
		m := printShape{centre: orb.Point{s.centre[0] + x, s.centre[1]}, radius: s.radius}
		for _, c := range s.ring {
			m.ring = append(m.ring, orb.Point{c[0] + x, c[1]})
		}
		all = append(all, m)
	}
	return all
}
