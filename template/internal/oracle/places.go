package oracle

import (
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
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
		return u > Slack && v < -Slack || u < -Slack && v > Slack
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
	return r.Bound().Contains(p) && planar.RingContains(r, p) && sides(r, p) > Slack
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

// Plain is the cloth left between two prints of any outline; below 0 where they overlap.
func (s Shape) Plain(t Shape) float64 {
	if s.Ring == nil || t.Ring == nil {
		return s.Apart(t)
	}
	if cut(s.Ring, t.Ring) {
		return -1
	}
	least := math.Inf(1)
	for _, two := range [][2]orb.Ring{{s.Ring, t.Ring}, {t.Ring, s.Ring}} {
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
func (s Shape) onItem(item *job.Item) bool {
	for _, z := range item.Zones {
		zone := Shape{Ring: ringOf(geometry.RectOutline(z.Rect))}
		for _, copy := range s.Copies(item) {
			if copy.Plain(zone) < -Slack {
				return false
			}
		}
	}
	if item.Shape == job.Cone {
		return s.onCone(item)
	}
	if item.Shape == job.Outline && s.Ring != nil {
		return s.within(ringOf(item.Outline), float64(item.Border.Top)-Slack)
	}
	bare := *item
	bare.Zones = nil
	return s.Fits(&bare, Slack)
}

// within tells whether a print with corners lies in a ring and keeps clear of its edge.
func (s Shape) within(edge orb.Ring, clear float64) bool {
	if cut(s.Ring, edge) {
		return false
	}
	for _, c := range s.Ring {
		d := sides(edge, c)
		if d < clear || d > Slack && !planar.RingContains(edge, c) {
			return false
		}
	}
	for _, c := range edge {
		if inside(s.Ring, c) || sides(s.Ring, c) < clear {
			return false
		}
	}
	// With all corners on the edge of the ring it may still lie outside.
	for _, p := range middles(s.Ring) {
		if !planar.RingContains(edge, p) {
			return false
		}
	}
	return true
}

// onCone tells whether a print lies between the borders of a cone laid flat, a sector of the
// radii s D / (D - d) and s less than that.
func (s Shape) onCone(item *job.Item) bool {
	wide, narrow := float64(item.Shade.Bottom), float64(item.Shade.Top)
	slant := math.Hypot(float64(item.Shade.Height), (wide-narrow)/2)
	outer := slant * wide / (wide - narrow)
	// The sector hangs from its centre, the bounds' top left corner being (0, 0): of the points
	// at its ends and right and left of the centre the highest and the leftmost.
	half := math.Pi * wide / outer / 2
	top := math.Min((outer-slant)*math.Cos(half), outer*math.Cos(half))
	centre := orb.Point{outer * math.Sin(math.Min(half, math.Pi/2)), -top}
	return s.Nearest(centre) >= outer-slant+float64(item.Border.Top)-Slack && s.Far(centre) <= outer-float64(item.Border.Bottom)+Slack
}

// Placed is a print as a plan has it.
type Placed struct {
	Number  int
	Origin  geometry.Point
	Turn    geometry.Angle
	Outline geometry.Outline // of its footprint
}

// CheckPlaces holds the prints of a pass to what all promise: each is the block's face, turned
// and never mirrored; none leaves the area; and none lies on another, or nearer to it than the
// gap, where the pass says so itself.
func CheckPlaces(t *testing.T, item *job.Item, pass *job.Pass, prints []Placed) {
	t.Helper()
	shapes := make([]Shape, len(prints))
	for i, print := range prints {
		s := OutlineAt(pass.Block, print.Origin, print.Turn)
		shapes[i] = s
		for j, c := range print.Outline.Corners() {
			if want := s.Ring[j]; math.Hypot(float64(c.X)-want[0], float64(c.Y)-want[1]) > Slack {
				t.Fatalf("pass %q, print %d: corner %d lies at %v, want %v", pass.Name, print.Number, j+1, c, want)
			}
		}
		if !s.onItem(item) {
			t.Fatalf("pass %q, print %d at %v is not wholly on the area", pass.Name, print.Number, print.Origin)
		}
	}
	gap, ruled := LeastApart(pass)
	if !ruled || len(shapes) > 400 {
		return
	}
	reach := math.Hypot(float64(pass.Block.Size.W), float64(pass.Block.Size.H)) + gap
	for i, s := range shapes {
		for j, u := range shapes[:i] {
			for _, u := range u.Copies(item) {
				if planar.Distance(s.Centre, u.Centre) > reach {
					continue
				}
				if d := s.Plain(u); d < gap-Slack {
					t.Fatalf("pass %q: prints %d and %d are %v apart, less than %v", pass.Name, prints[j].Number, prints[i].Number, d, gap)
				}
			}
		}
	}
}

// LeastApart is how near to each other the pass lets its prints come; false where it leaves
// that to another pass, or lets them lap.
func LeastApart(pass *job.Pass) (float64, bool) {
	gap := min(pass.Gap.Across.Least, pass.Gap.Down.Least)
	if pass.Seated() || gap < 0 {
		return 0, false
	}
	mixed := pass.Turns.Mixed()
	if mixed && pass.Block.Size.W != pass.Block.Size.H {
		// Blocks turned into the gap keep clear of each other, and no more is asked.
		return 0, true
	}
	return float64(gap), true
}
