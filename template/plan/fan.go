package plan

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// fan is a block's face set out on arcs round a point, as in rings and on a cone. In its frame
// the point is (0, 0) and a print at radius r has its origin at (0, r), so that outwards is
// down; prints beside it are turned about the point.
type fan struct {
	faces []geometry.Outline // the face in every turn it has in its repeat
	size  geometry.Size      // bounds of all of them
	round bool
	even  bool // all are one upright rectangle
	// moved are the steps outwards by which prints beside one another may differ; none: all
	// stand at one radius.
	moved []geometry.Length
}

// newFan makes the fan of a block; outward is the turn that the face has on the axis.
func newFan(b *job.Block, turns job.Turns, outward geometry.Angle) fan {
	f := fan{even: b.Shape == job.RectangleFace}
	_, _, f.round = b.Face.Round()
	for _, t := range turns.Each() {
		face := b.Face.Turn((t + outward).Normal())
		size := face.Bounds().Size()
		f.even = f.even && (len(f.faces) == 0 || size == f.size)
		f.size = geometry.Size{W: max(f.size.W, size.W), H: max(f.size.H, size.H)}
		f.faces = append(f.faces, face)
	}
	return f
}

// with returns the fan of the faces of two: each face stands where the largest has room.
func (f fan) with(g fan) fan {
	if f.round && g.round {
		if g.size.W > f.size.W {
			return g
		}
		return f
	}
	f.even = f.even && g.even && f.size == g.size
	f.size = geometry.Size{W: max(f.size.W, g.size.W), H: max(f.size.H, g.size.H)}
	if f.round || g.round {
		// A circle beside other faces takes the room of its square.
		f.round, f.faces = false, []geometry.Outline{geometry.RectOutline(geometry.RectAround(geometry.Point{}, f.size))}
		return f
	}
	f.faces = append(slices.Clone(f.faces), g.faces...)
	return f
}

// boxed returns the fan of the bounds of the faces.
func (f fan) boxed() fan {
	if !f.round {
		f.faces, f.even = []geometry.Outline{geometry.RectOutline(geometry.RectAround(geometry.Point{}, f.size))}, true
	}
	return f
}

// reach returns how far from the point prints at radius r come: of a w x h rectangle to
// sqrt((r + h/2)^2 + (w/2)^2).
func (f fan) reach(r geometry.Length) geometry.Length {
	if f.round {
		return r + f.size.W/2
	}
	var most geometry.Length
	for _, face := range f.faces {
		for _, c := range face.Corners() {
			most = max(most, c.Add(geometry.Pt(0, r)).Norm())
		}
	}
	return most
}

// nearest returns how near to the point prints at radius r come, 0 where they lie on it: of a
// rectangle to r - h/2.
func (f fan) nearest(r geometry.Length) geometry.Length {
	least := geometry.Length(math.Inf(1))
	for _, face := range f.faces {
		least = min(least, apart(face.Move(geometry.Pt(0, r)), geometry.Point{}))
	}
	return least
}

// apart returns how far a point is from an outline, 0 within it.
func apart(o geometry.Outline, p geometry.Point) geometry.Length {
	if c, r, round := o.Round(); round {
		return max(0, c.Distance(p)-r)
	}
	if o.Contains(p) {
		return 0
	}
	return o.Corners().EdgeDistance(p)
}

// outermost returns the largest radius at which prints keep within reach of the point.
func (f fan) outermost(reach geometry.Length) (r geometry.Length, ok bool) {
	if f.round {
		return reach - f.size.W/2, reach >= f.size.W/2
	}
	r = geometry.Length(math.Inf(1))
	for _, face := range f.faces {
		for _, c := range face.Corners() {
			if c.X.Abs() > reach {
				return 0, false
			}
			r = min(r, geometry.Length(math.Sqrt(float64(reach*reach-c.X*c.X)))-c.Y)
		}
	}
	return r, r > 0 && f.reach(r) <= reach+geometry.Tolerance
}

// gap returns the plain cloth between prints at radius r that are an angle apart, 180 degrees
// at most; negative: a lap. Between w x h rectangles it is that between their inner corners,
// 2 ((r - h/2) sin(a/2) - (w/2) cos(a/2)); between circles the chord less the diameter.
func (f fan) gap(r geometry.Length, a geometry.Angle) geometry.Length {
	s, c := (a / 2).SinCos()
	sin, cos := geometry.Length(s), geometry.Length(c)
	if f.round {
		return 2*r*sin - f.size.W
	}
	corners := 2 * ((r-f.size.H/2)*sin - f.size.W/2*cos)
	if f.even {
		least := corners
		for _, d := range f.moved {
			if face := f.faces[0].Move(geometry.Pt(0, r)); corners > 0 {
				least = min(least, face.Distance(face.Move(geometry.Pt(0, d)).Turn(a)))
			}
		}
		return least
	}
	least := geometry.Length(math.Inf(1))
	for _, p := range f.faces {
		for _, q := range f.faces {
			least = min(least, p.Move(geometry.Pt(0, r)).Distance(q.Move(geometry.Pt(0, r)).Turn(a)))
		}
	}
	if least > 0 {
		return least
	}
	return min(0, corners)
}

// mostRound is more prints than fit round anything.
const mostRound = 2 * mostPrints

// count returns the most prints that fit on an arc at radius r with the least gap between any
// two. The arc closes on itself: what lies across its ends is the same angle apart.
func (f fan) count(r geometry.Length, whole geometry.Angle, least geometry.Length) int {
	fits := func(n int) bool {
		a := whole / geometry.Angle(n)
		return a > 180 || f.gap(r, a) >= least-geometry.Tolerance
	}
	if !fits(1) {
		return 0
	}
	low, high := 1, 2
	for high < mostRound && fits(high) {
		low, high = high, 2*high
	}
	for high-low > 1 {
		if mid := (low + high) / 2; fits(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
