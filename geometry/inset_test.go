package geometry_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	. "underlay/geometry"
)

var (
	ell      = Polygon{{0, 0}, {100, 0}, {100, 50}, {50, 50}, {50, 100}, {0, 100}}
	dumbbell = Polygon{{0, 0}, {40, 0}, {40, 15}, {80, 15}, {80, 0}, {120, 0}, {120, 40}, {80, 40}, {80, 25}, {40, 25}, {40, 40}, {0, 40}}
	comb     = Polygon{{0, 0}, {90, 0}, {90, 60}, {70, 60}, {70, 20}, {50, 20}, {50, 60}, {40, 60}, {40, 20}, {20, 20}, {20, 60}, {0, 60}}
)

func TestInsetOfUprightRectangleIsExact(t *testing.T) {
	r := RectAt(Pt(0.1, 0.2), Size{W: 500.3, H: 300.7})
	path, bounds, ok := RectOutline(r).Inset(25.1)
	want := Rect{Pt(r.Min.X+25.1, r.Min.Y+25.1), Pt(r.Max.X-25.1, r.Max.Y-25.1)}
	if !ok || bounds != want {
		t.Fatalf("bounds %v, %v; want %v", bounds, ok, want)
	}
	if d := cmp.Diff(want.Polygon().Path(), path); d != "" {
		t.Error(d)
	}
}

func TestInsetByNothingIsTheOutline(t *testing.T) {
	for _, o := range []Outline{PolygonOutline(ell), CircleOutline(Pt(3, 4), 20), RectOutline(Rect{Max: Pt(5, 6)})} {
		for _, d := range []Length{0, -1} {
			path, bounds, ok := o.Inset(d)
			if diff := cmp.Diff(o.Path(), path); !ok || bounds != o.Bounds() || diff != "" {
				t.Errorf("by %v: %v %v\n%s", d, ok, bounds, diff)
			}
		}
	}
}

func TestInsetOfCircle(t *testing.T) {
	path, bounds, ok := CircleOutline(Pt(100, 50), 40).Inset(15)
	want := CircleOutline(Pt(100, 50), 25)
	if diff := cmp.Diff(want.Path(), path); !ok || bounds != want.Bounds() || diff != "" {
		t.Errorf("%v %v\n%s", ok, bounds, diff)
	}
}

func TestInsetOfNothingLeft(t *testing.T) {
	turned := RectOutline(RectAround(Pt(0, 0), Size{W: 60, H: 40})).Turn(33)
	for name, o := range map[string]struct {
		outline Outline
		by      Length
	}{
		"no outline":          {Outline{}, 1},
		"no outline, by 0":    {Outline{}, 0},
		"circle":              {CircleOutline(Pt(0, 0), 10), 10},
		"square to a point":   {RectOutline(Rect{Max: Pt(50, 50)}), 25},
		"rectangle to a line": {RectOutline(Rect{Max: Pt(60, 50)}), 25},
		"turned to a line":    {turned, 20},
		"turned, past it":     {turned, 20.5},
		"every arm too thin":  {PolygonOutline(ell), 30},
		"without end":         {PolygonOutline(ell), Length(math.Inf(1))},
		"not a number":        {PolygonOutline(ell), Length(math.NaN())},
		"two corners":         {PolygonOutline(Polygon{{0, 0}, {50, 50}}), 1},
	} {
		if path, bounds, ok := o.outline.Inset(o.by); ok || path != nil || bounds != (Rect{}) {
			t.Errorf("%s: %v %v %v", name, path, bounds, ok)
		}
	}
}

// The area of an L drawn in by 10, by elementary geometry: the square drawn in, less the
// notch drawn out, whose corner is a quarter of a circle.
func TestInsetGoesRoundInwardCornerInArc(t *testing.T) {
	path, bounds, ok := PolygonOutline(ell).Inset(10)
	if !ok || len(path) != 1 {
		t.Fatalf("%v %v", path, ok)
	}
	if want := (Rect{Pt(10, 10), Pt(90, 90)}); !near(bounds.Min.X, want.Min.X) || !near(bounds.Min.Y, want.Min.Y) ||
		!near(bounds.Max.X, want.Max.X) || !near(bounds.Max.Y, want.Max.Y) {
		t.Errorf("bounds %v, want %v", bounds, want)
	}
	want := 80*80 - 40*40 - 2*10*40 - math.Pi*10*10/4
	if got := flat(path[0], 2000).Area(); math.Abs(got-want) > 0.001 {
		t.Errorf("area %v, want %v", got, want)
	}
	curved := 0
	for _, s := range path[0].Steps {
		if s.Curved {
			curved++
		}
	}
	if curved != 2 {
		t.Errorf("%d curves, want the 2 of a quarter circle", curved)
	}
}

func TestInsetFallsApart(t *testing.T) {
	for _, c := range []struct {
		name   string
		p      Polygon
		d      Length
		pieces int
	}{
		{"neck wide enough", dumbbell, 4, 1},
		{"neck too thin", dumbbell, 6, 2},
		{"a tooth gone", comb, 6, 1},
		{"no tooth left", comb, 9.5, 1},
	} {
		path, _, ok := PolygonOutline(c.p).Inset(c.d)
		if !ok || len(path) != c.pieces {
			t.Errorf("%s: %d pieces (%v), want %d", c.name, len(path), ok, c.pieces)
		}
		checkInset(t, c.name, c.p, c.d)
	}
	// A neck of just 2 d is left as a line: still closed, and still at d from the edge.
	checkInset(t, "neck left as a line", dumbbell, 5)
}

func TestInsetAgainstSampledDistances(t *testing.T) {
	rnd := seeded(1)
	for i := range 20 {
		p := star(rnd, within(rnd, RectAround(Pt(0, 0), Size{W: 400, H: 400})), 100, 3+rnd.IntN(20))
		for _, d := range []Length{0.5, 3, 12, 30} {
			checkInset(t, fmt.Sprintf("star %d by %v", i, d), p, d)
		}
	}
	for i := range 15 {
		p := stairs(rnd, 2+rnd.IntN(6), 20)
		for _, d := range []Length{1, 7, 10, 20, 25} {
			checkInset(t, fmt.Sprintf("stairs %d by %v", i, d), p, d)
			checkInset(t, fmt.Sprintf("stairs %d turned, by %v", i, d), p.Turn(30), d)
		}
	}
}

func TestInsetOfFineCorners(t *testing.T) {
	// Sides that bend by less and less, down to what no drawing shows.
	for _, bulge := range []Length{1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 0, -1e-7, -1e-6, -1e-5, -1e-4, -1e-3, -1e-2} {
		p := Polygon{{0, 0}, {50, -bulge}, {100, 0}, {100 + bulge, 50}, {100, 100}, {50, 100 + bulge}, {0, 100}, {-bulge, 50}}.Turn(20)
		for _, d := range []Length{0.5, 10, 45} {
			checkInset(t, fmt.Sprintf("sides bent by %v, by %v", float64(bulge), d), p, d)
		}
	}
	// Corners rounded by sides of a few thousandths.
	round := Polygon{}
	for i, c := range ell {
		before, after := ell[(i+5)%6], ell[(i+1)%6]
		in, out := before.Sub(c), after.Sub(c)
		in, out = in.Mul(0.02/float64(in.Norm())), out.Mul(0.02/float64(out.Norm()))
		for k := range 11 {
			sin, cos := (Angle(k) * 9).SinCos()
			round = append(round, c.Add(in.Mul(1-sin)).Add(out.Mul(1-cos)))
		}
	}
	for _, d := range []Length{0.005, 0.5, 10} {
		checkInset(t, fmt.Sprintf("rounded corners, by %v", d), round.Turn(20), d)
	}
}

// checkInset compares p drawn in by d with what the distances of points from the edge of p,
// measured by orb, say about it.
func checkInset(t *testing.T, name string, p Polygon, d Length) {
	t.Helper()
	path, bounds, ok := PolygonOutline(p).Inset(d)
	edge := ring(p)
	inside := func(q Point) bool { return planar.RingContains(edge, orbPoint(q)) }
	distance := func(q Point) Length {
		return Length(planar.DistanceFrom(edge, orbPoint(q)))
	}

	var loops []orb.Ring
	touched := [4]bool{}
	for _, piece := range path {
		if !piece.Closed {
			t.Fatalf("%s: a piece does not close: %v", name, piece)
		}
		at := piece.Start
		for _, s := range append(piece.Steps, Step{To: piece.Start}) {
			if middle := at.Add(s.To).Mul(0.5); !s.Curved && math.Abs(float64(distance(middle)-d)) > 1e-6 {
				t.Fatalf("%s: the middle of the straight line to %v is %v from the edge", name, s.To, distance(middle))
			}
			at = s.To
		}
		loop := flat(piece, 12)
		loops = append(loops, ring(loop))
		// Clockwise where y runs down is anticlockwise where it runs up.
		if ring(loop).Orientation() != orb.CCW {
			t.Errorf("%s: a piece runs anticlockwise: %v", name, piece)
		}
		for _, q := range loop {
			// A curve leaves its arc by up to 5 millionths of the radius.
			if !inside(q) || math.Abs(float64(distance(q)-d)) > 1e-6+5e-6*float64(d) {
				t.Fatalf("%s: %v on the path is %v from the edge, inside: %v", name, q, distance(q), inside(q))
			}
			touched[0] = touched[0] || near(q.X, bounds.Min.X)
			touched[1] = touched[1] || near(q.X, bounds.Max.X)
			touched[2] = touched[2] || near(q.Y, bounds.Min.Y)
			touched[3] = touched[3] || near(q.Y, bounds.Max.Y)
			if !bounds.Contains(q) {
				t.Fatalf("%s: %v on the path is outside %v", name, q, bounds)
			}
		}
	}
	if ok && touched != [4]bool{true, true, true, true} {
		t.Errorf("%s: the path does not reach all of %v", name, bounds)
	}

	const n = 24
	b := p.Bounds()
	for i := range n * n {
		q := b.Min.Add(Pt(b.W()*(Length(i%n)+0.5)/n, b.H()*(Length(i/n)+0.5)/n))
		far := distance(q) - d
		// A flat piece of an arc misses it by up to 1 - cos of half its angle.
		if !inside(q) || math.Abs(float64(far)) > 1e-5+0.001*float64(d) {
			in := false
			for _, l := range loops {
				in = in != planar.RingContains(l, orbPoint(q))
			}
			if want := inside(q) && far > 0; in != want {
				t.Fatalf("%s: %v, %v from the edge, is within the path: %v", name, q, far+d, in)
			}
		}
	}
}

func TestInsetOfConvexAgainstClipping(t *testing.T) {
	rnd := seeded(2)
	for i := range 200 {
		p := convex(rnd, 100, 3+rnd.IntN(30))
		if rnd.IntN(2) == 0 {
			for a, b := 0, len(p)-1; a < b; a, b = a+1, b-1 {
				p[a], p[b] = p[b], p[a]
			}
		}
		d := Length(40 * rnd.Float64())
		want := clipped(p, d)
		path, bounds, ok := PolygonOutline(p).Inset(d)
		if ok != (len(want) > 0) {
			t.Fatalf("case %d: ok is %v, clipping leaves %v", i, ok, want)
		}
		if !ok {
			continue
		}
		got := flat(path[0], 1)
		if len(path) != 1 || math.Abs(got.Area()-want.Area()) > 1e-4 {
			t.Errorf("case %d: %d pieces of area %v, want 1 of %v", i, len(path), got.Area(), want.Area())
		}
		for _, c := range got {
			if want.EdgeDistance(c) > 1e-6 {
				t.Errorf("case %d: corner %v is off the clipped edge", i, c)
			}
		}
		w := want.Bounds()
		if !near(bounds.Min.X, w.Min.X) || !near(bounds.Min.Y, w.Min.Y) || !near(bounds.Max.X, w.Max.X) || !near(bounds.Max.Y, w.Max.Y) {
			t.Errorf("case %d: bounds %v, want %v", i, bounds, w)
		}
	}
}

// clipped cuts from p, all corners of which point outwards, what is nearer than d to the
// line of a side: one half-plane after the other (Sutherland and Hodgman's way).
func clipped(p Polygon, d Length) Polygon {
	middle := Pt(0, 0)
	for _, c := range p {
		middle = middle.Add(c.Mul(1 / float64(len(p))))
	}
	left := p
	for i, a := range p {
		b := p[(i+1)%len(p)]
		u := b.Sub(a).Mul(1 / float64(a.Distance(b)))
		off := func(q Point) Length { return u.X*(q.Y-a.Y) - u.Y*(q.X-a.X) }
		sign := Length(math.Copysign(1, float64(off(middle))))
		var next Polygon
		for k, q := range left {
			r := left[(k+1)%len(left)]
			m, n := sign*off(q)-d, sign*off(r)-d
			if m >= 0 {
				next = append(next, q)
			}
			if (m > 0) != (n > 0) && m != n {
				next = append(next, q.Add(r.Sub(q).Mul(float64(m/(m-n)))))
			}
		}
		left = next
	}
	return left
}
