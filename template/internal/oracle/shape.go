package oracle

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
)

// What follows knows a print only as corners, or as a circle, and asks github.com/paulmach/orb
// where points lie. It shares no code with what it checks.

// Shape is a print's edge: corners, or a centre and a radius.
type Shape struct {
	Ring   orb.Ring // closed: its last point is its first
	Centre orb.Point
	radius float64
}

// OutlineAt sets a block's face down at an origin, turned clockwise as seen.
func OutlineAt(b *job.Block, at geometry.Point, turn geometry.Angle) Shape {
	s := Shape{Centre: orb.Point{float64(at.X), float64(at.Y)}}
	if b.Shape == job.RoundFace {
		s.radius = float64(b.Size.W) / 2
		return s
	}
	sin, cos := math.Sincos(float64(turn) * math.Pi / 180)
	for _, c := range b.Face.Corners() {
		x, y := float64(c.X), float64(c.Y)
		s.Ring = append(s.Ring, orb.Point{s.Centre[0] + x*cos - y*sin, s.Centre[1] + x*sin + y*cos})
	}
	s.Ring = append(s.Ring, s.Ring[0])
	return s
}

// Far and nearest tell how far the shape lies from a point, at most and at least.
func (s Shape) Far(p orb.Point) float64 {
	if s.Ring == nil {
		return planar.Distance(s.Centre, p) + s.radius
	}
	most := 0.0
	for _, c := range s.Ring {
		most = math.Max(most, planar.Distance(c, p))
	}
	return most
}

func (s Shape) Nearest(p orb.Point) float64 {
	if s.Ring == nil {
		return math.Max(0, planar.Distance(s.Centre, p)-s.radius)
	}
	if planar.RingContains(s.Ring, p) {
		return 0
	}
	return sides(s.Ring, p)
}

// sides is the distance of a point from the edge of a ring.
func sides(r orb.Ring, p orb.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(r); i++ {
		least = math.Min(least, planar.DistanceFromSegment(r[i-1], r[i], p))
	}
	return least
}

// Apart is the plain cloth between two shapes; negative: how deep the one lies in the other,
// as far as their corners and sides tell.
func (s Shape) Apart(t Shape) float64 {
	switch {
	case s.Ring == nil && t.Ring == nil:
		return planar.Distance(s.Centre, t.Centre) - s.radius - t.radius
	case s.Ring == nil:
		if planar.RingContains(t.Ring, s.Centre) {
			return -s.radius
		}
		return sides(t.Ring, s.Centre) - s.radius
	case t.Ring == nil:
		return t.Apart(s)
	}
	if d := s.axes(t); d < 0 {
		return d
	}
	least := math.Inf(1)
	for _, c := range s.Ring {
		least = math.Min(least, sides(t.Ring, c))
	}
	for _, c := range t.Ring {
		least = math.Min(least, sides(s.Ring, c))
	}
	return least
}

// axes tells how deep two convex shapes lie in each other, negative, by the widths of both
// square to every side (separating axes); 0 where they do not.
func (s Shape) axes(t Shape) float64 {
	depth := math.Inf(1)
	for _, r := range []orb.Ring{s.Ring, t.Ring} {
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
			a, b := reach(s.Ring)
			c, d := reach(t.Ring)
			depth = math.Min(depth, math.Min(b, d)-math.Max(a, c))
		}
	}
	return math.Min(0, -depth)
}

// Slack is what the oracle lets pass; spare is what it wants to be sure that a print fits.
const (
	Slack = 1e-5
	Spare = -1e-7
)

// Fits tells whether a shape lies on the printable area of an item, and clear of its zones,
// but for a slack.
func (s Shape) Fits(item *job.Item, slack float64) bool {
	b := item.Border
	cloth := geometry.RectAt(geometry.Point{}, item.Size)
	switch item.Shape {
	case job.Rectangle, job.Drum:
		left, right := float64(cloth.Min.X+b.Left), float64(cloth.Max.X-b.Right)
		if item.Shape == job.Drum {
			left, right = math.Inf(-1), math.Inf(1)
		}
		low, high := s.Bounds()
		if low[0] < left-slack || high[0] > right+slack || low[1] < float64(cloth.Min.Y+b.Top)-slack || high[1] > float64(cloth.Max.Y-b.Bottom)+slack {
			return false
		}
	case job.Round:
		r := float64(item.Size.W) / 2
		if s.Far(orb.Point{r, r}) > r-float64(b.Top)+slack {
			return false
		}
	case job.FourSided:
		for i, clear := range []geometry.Length{b.Top, b.Right, b.Bottom, b.Left} {
			c, d := item.Corners[i], item.Corners[(i+1)%4]
			from, to := orb.Point{float64(c.X), float64(c.Y)}, orb.Point{float64(d.X), float64(d.Y)}
			least := beyond(from, to, s.Centre) - s.radius
			if s.Ring != nil {
				least = math.Inf(1)
				for _, p := range s.Ring {
					least = math.Min(least, beyond(from, to, p))
				}
			}
			if least < float64(clear)-slack {
				return false
			}
		}
	case job.Outline:
		var edge orb.Ring
		for _, c := range item.Outline.Corners() {
			edge = append(edge, orb.Point{float64(c.X), float64(c.Y)})
		}
		edge = append(edge, edge[0])
		if !planar.RingContains(edge, s.Centre) {
			return false
		}
		clear := math.Inf(1)
		if s.Ring == nil {
			clear = sides(edge, s.Centre) - s.radius
		}
		for _, c := range s.Ring {
			if d := sides(edge, c); planar.RingContains(edge, c) {
				clear = math.Min(clear, d)
			} else {
				clear = math.Min(clear, -d)
			}
		}
		for _, c := range edge {
			if s.Ring != nil && planar.RingContains(s.Ring, c) {
				return false
			} else if s.Ring != nil {
				clear = math.Min(clear, sides(s.Ring, c))
			}
		}
		if clear < float64(b.Top)-slack {
			return false
		}
	}
	for _, z := range item.Zones {
		r := z.Rect
		zone := Shape{Ring: orb.Ring{
			{float64(r.Min.X), float64(r.Min.Y)}, {float64(r.Max.X), float64(r.Min.Y)},
			{float64(r.Max.X), float64(r.Max.Y)}, {float64(r.Min.X), float64(r.Max.Y)}, {float64(r.Min.X), float64(r.Min.Y)},
		}}
		for _, copy := range s.Copies(item) {
			if copy.Apart(zone) < -slack {
				return false
			}
		}
	}
	return true
}

// Bounds returns the least and the greatest coordinates.
func (s Shape) Bounds() (low, high orb.Point) {
	if s.Ring == nil {
		return orb.Point{s.Centre[0] - s.radius, s.Centre[1] - s.radius}, orb.Point{s.Centre[0] + s.radius, s.Centre[1] + s.radius}
	}
	b := s.Ring.Bound()
	return b.Min, b.Max
}

// Copies returns the shape as it lies on the cloth: round a drum also one way round farther,
// both ways.
func (s Shape) Copies(item *job.Item) []Shape {
	if item.Shape != job.Drum {
		return []Shape{s}
	}
	all := []Shape{s}
	for _, x := range []float64{-float64(item.Size.W), float64(item.Size.W)} {
		m := Shape{Centre: orb.Point{s.Centre[0] + x, s.Centre[1]}, radius: s.radius}
		for _, c := range s.Ring {
			m.Ring = append(m.Ring, orb.Point{c[0] + x, c[1]})
		}
		all = append(all, m)
	}
	return all
}

// Covers tells whether a point lies on the print.
func (s Shape) Covers(x, y float64) bool { return s.Nearest([2]float64{x, y}) == 0 }
