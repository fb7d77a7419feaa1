package template

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"underlay/geometry"
)

// What follows judges prints of any outline, dented ones too, by nothing but their corners
// and where github.com/paulmach/orb says that points lie.

// beyond tells on which side of the line from a to b a point lies, and how far.
func beyond(a, b, p orb.Point) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	return (dx*(p[1]-a[1]) - dy*(p[0]-a[0])) / math.Hypot(dx, dy)
}

// cut tells whether a side of one ring runs through a side of the other, and not only along
// it or up to it.
func cut(r, q orb.Ring) bool {
	across := func(a, b, c, d orb.Point) bool {
		u, v := beyond(a, b, c), beyond(a, b, d)
		return u > slack && v < -slack || u < -slack && v > slack
	}
	for i := 1; i < len(r); i++ {
		for j := 1; j < len(q); j++ {
			if across(r[i-1], r[i], q[j-1], q[j]) && across(q[j-1], q[j], r[i-1], r[i]) {
				return true
			}
		}
	}
	return false
}

// inside tells whether a point lies in a ring, and not only on its edge.
func inside(r orb.Ring, p orb.Point) bool {
	return r.Bound().Contains(p) && planar.RingContains(r, p) && sides(r, p) > slack
}

// middles lists points inside a ring: halfway between where lines across it, at five heights,
// go in and out.
func middles(r orb.Ring) []orb.Point {
	var points []orb.Point
	b := r.Bound()
	for _, share := range []float64{0.09, 0.31, 0.52, 0.73, 0.94} {
		y := b.Min[1] + share*(b.Max[1]-b.Min[1])
		var meets []float64
		for i := 1; i < len(r); i++ {
			if u, v := r[i-1], r[i]; (u[1] > y) != (v[1] > y) {
				meets = append(meets, u[0]+(y-u[1])/(v[1]-u[1])*(v[0]-u[0]))
			}
		}
		for i, x := range meets {
			for _, z := range meets[:i] {
				if p := (orb.Point{(x + z) / 2, y}); inside(r, p) {
					points = append(points, p)
				}
			}
		}
	}
	return points
}

// plain is the cloth left between two prints of any outline; below 0 where they overlap.
func (s printShape) plain(t printShape) float64 {
	if s.ring == nil || t.ring == nil {
		return s.apart(t)
	}
	if cut(s.ring, t.ring) {
		return -1
	}
	least := math.Inf(1)
	for _, two := range [][2]orb.Ring{{s.ring, t.ring}, {t.ring, s.ring}} {
		for _, p := range middles(two[0]) {
			if inside(two[1], p) {
				return -1
			}
		}
		for _, p := range two[0] {
			if inside(two[1], p) {
				return -1
			}
			least = math.Min(least, sides(two[1], p))
		}
	}
	return least
}

// ringOf is the edge of an outline with corners.
func ringOf(o geometry.Outline) orb.Ring {
	var r orb.Ring
	for _, c := range o.Corners() {
		r = append(r, orb.Point{float64(c.X), float64(c.Y)})
	}
	return append(r, r[0])
}

// onItem tells whether a print lies wholly on the printable area of an item.
func (s printShape) onItem(item *Item) bool {
	for _, z := range item.Zones {
		zone := printShape{ring: ringOf(geometry.RectOutline(z.Rect))}
		for _, copy := range s.copies(item) {
			if copy.plain(zone) < -slack {
				return false
			}
		}
	}
	if item.Shape == "cone" {
		return s.onCone(item)
	}
	if item.Shape == "outline" && s.ring != nil {
		return s.within(ringOf(item.Outline), float64(item.Border.Top)-slack)
	}
	bare := *item
	bare.Zones = nil
	return s.fits(&bare, slack)
}

// within tells whether a print with corners lies in a ring and keeps clear of its edge.
func (s printShape) within(edge orb.Ring, clear float64) bool {
	if cut(s.ring, edge) {
		return false
	}
	for _, c := range s.ring {
		d := sides(edge, c)
		if d < clear || d > slack && !planar.RingContains(edge, c) {
			return false
		}
	}
	for _, c := range edge {
		if inside(s.ring, c) || sides(s.ring, c) < clear {
			return false
		}
	}
	// With all corners on the edge of the ring it may still lie outside.
	for _, p := range middles(s.ring) {
		if !planar.RingContains(edge, p) {
			return false
		}
	}
	return true
}

// onCone tells whether a print lies between the borders of a cone laid flat, a sector of the
// radii s D / (D - d) and s less than that.
func (s printShape) onCone(item *Item) bool {
	wide, narrow := float64(item.Shade.Bottom), float64(item.Shade.Top)
	slant := math.Hypot(float64(item.Shade.Height), (wide-narrow)/2)
	outer := slant * wide / (wide - narrow)
	// The sector hangs from its centre, the bounds' top left corner being (0, 0): of the points
	// at its ends and right and left of the centre the highest and the leftmost.
	half := math.Pi * wide / outer / 2
	top := math.Min((outer-slant)*math.Cos(half), outer*math.Cos(half))
	centre := orb.Point{outer * math.Sin(math.Min(half, math.Pi/2)), -top}
	return s.nearest(centre) >= outer-slant+float64(item.Border.Top)-slack && s.far(centre) <= outer-float64(item.Border.Bottom)+slack
}

// placed is a print as a plan has it.
type placed struct {
	Number  int
	Origin  geometry.Point
	Turn    geometry.Angle
	Outline geometry.Outline // of its footprint
}

// checkPlaces holds the prints of a pass to what all promise: each is the block's face, turned
// and never mirrored; none leaves the area; and none lies on another, or nearer to it than the
// gap, where the pass says so itself.
func checkPlaces(t *testing.T, item *Item, pass *Pass, prints []placed) {
	t.Helper()
	shapes := make([]printShape, len(prints))
	for i, print := range prints {
		s := outlineAt(pass.Block, print.Origin, print.Turn)
		shapes[i] = s
		for j, c := range print.Outline.Corners() {
			if want := s.ring[j]; math.Hypot(float64(c.X)-want[0], float64(c.Y)-want[1]) > slack {
				t.Fatalf("pass %q, print %d: corner %d lies at %v, want %v", pass.Name, print.Number, j+1, c, want)
			}
		}
		if !s.onItem(item) {
			t.Fatalf("pass %q, print %d at %v is not wholly on the area", pass.Name, print.Number, print.Origin)
		}
	}
	gap, ruled := leastApart(pass)
	if !ruled || len(shapes) > 400 {
		return
	}
	reach := math.Hypot(float64(pass.Block.Size.W), float64(pass.Block.Size.H)) + gap
	for i, s := range shapes {
		for j, u := range shapes[:i] {
			for _, u := range u.copies(item) {
				if planar.Distance(s.centre, u.centre) > reach {
					continue
				}
				if d := s.plain(u); d < gap-slack {
					t.Fatalf("pass %q: prints %d and %d are %v apart, less than %v", pass.Name, prints[j].Number, prints[i].Number, d, gap)
				}
			}
		}
	}
}

// leastApart is how near to each other the pass lets its prints come; false where it leaves
// that to another pass, or lets them lap.
func leastApart(pass *Pass) (float64, bool) {
	gap := min(pass.Gap.Across.Least, pass.Gap.Down.Least)
	if pass.seated() || gap < 0 {
		return 0, false
	}
	mixed := anyQuarterTurned(pass.Turns) && !allQuarterTurned(pass.Turns)
	if mixed && pass.Block.Size.W != pass.Block.Size.H {
		// Blocks turned into the gap keep clear of each other, and no more is asked.
		return 0, true
	}
	return float64(gap), true
}
