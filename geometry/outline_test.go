package geometry_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	. "underlay/geometry"
)

func TestHexagonIsRegularAtItsHeight(t *testing.T) {
	w := Length(80)
	h := 2 * w / Length(math.Sqrt(3))
	o := HexagonOutline(RectAround(Pt(5, -7), Size{W: w, H: h}))
	c := o.Corners()
	for i, a := range c {
		if side := a.Distance(c[(i+1)%6]); len(c) != 6 || !near(side, h/2) {
			t.Errorf("side %d is %v, want %v", i, side, h/2)
		}
		if !near(a.Distance(Pt(5, -7)), h/2) {
			t.Errorf("corner %d is %v from the middle", i, a.Distance(Pt(5, -7)))
		}
	}
	// Area of the regular hexagon of side a: 3 sqrt(3)/2 a^2 (elementary geometry).
	if want := 3 * math.Sqrt(3) / 2 * float64(h*h) / 4; math.Abs(o.Area()-want) > 1e-6 {
		t.Errorf("area %v, want %v", o.Area(), want)
	}
	if got := HexagonOutline(RectAt(Pt(1, 2), Size{W: 30, H: 50})).Bounds(); got != (Rect{Pt(1, 2), Pt(31, 52)}) {
		t.Errorf("bounds %v", got)
	}
}

func TestUpright(t *testing.T) {
	r := Rect{Pt(1, 2), Pt(31, 52)}
	for name, c := range map[string]struct {
		o    Outline
		want bool
	}{
		"rectangle":              {RectOutline(r), true},
		"from another corner":    {PolygonOutline(Polygon{r.Max, {1, 52}, r.Min, {31, 2}}), true},
		"quarter turned":         {RectOutline(r).Turn(90).Turn(-90), true},
		"turned":                 {RectOutline(r).Turn(10), false},
		"bow tie":                {PolygonOutline(Polygon{r.Min, r.Max, {31, 2}, {1, 52}}), false},
		"trapezium":              {PolygonOutline(Polygon{r.Min, {31, 2}, {25, 52}, {1, 52}}), false},
		"triangle on one corner": {PolygonOutline(Polygon{r.Min, r.Min, {31, 2}, r.Max}), false},
		"circle":                 {CircleOutline(Pt(0, 0), 4), false},
		"hexagon":                {HexagonOutline(r), false},
		"none":                   {Outline{}, false},
	} {
		got, ok := c.o.Upright()
		if ok != c.want || ok && got != r {
			t.Errorf("%s: %v %v", name, got, ok)
		}
	}
}

func TestNoOutline(t *testing.T) {
	none, square := Outline{}, RectOutline(Rect{Max: Pt(5, 5)})
	for _, o := range []Outline{none, CircleOutline(Pt(1, 1), 0), CircleOutline(Pt(1, 1), -3), PolygonOutline(nil), none.Turn(20).Move(Pt(1, 1))} {
		if _, _, round := o.Round(); !o.None() || round || o.Area() != 0 || o.Path() != nil || o.Contains(Pt(1, 1)) {
			t.Errorf("%v is an outline", o)
		}
		if !square.HoldsClear(o, 1) || o.HoldsClear(square, 0) {
			t.Error("no outline holds something, or is not held")
		}
		if d := o.Distance(square); !math.IsInf(float64(d), 1) {
			t.Errorf("no outline is %v away", d)
		}
	}
	if square.None() || CircleOutline(Pt(0, 0), 1).None() {
		t.Error("an outline is none")
	}
}

func TestRound(t *testing.T) {
	o := CircleOutline(Pt(10, 0), 4).Turn(90).Move(Pt(1, 1))
	centre, radius, ok := o.Round()
	if !ok || centre != Pt(1, 11) || radius != 4 || len(o.Corners()) > 0 {
		t.Errorf("%v %v %v", centre, radius, ok)
	}
	if got, want := o.Bounds(), (Rect{Pt(-3, 7), Pt(5, 15)}); got != want {
		t.Errorf("bounds %v, want %v", got, want)
	}
	if math.Abs(o.Area()-16*math.Pi) > 1e-9 {
		t.Errorf("area %v", o.Area())
	}
	if !o.Contains(Pt(1, 15)) || o.Contains(Pt(1, 15.00001)) || o.Contains(Pt(5, 15)) {
		t.Error("the circle does not end at its edge")
	}
}

// outlines returns outlines of about the given size, centre near (0, 0), and the edge of
// each for orb; circles are given by many short sides.
func outlines(rnd *rand.Rand, size Length) (Outline, orb.Ring) {
	switch rnd.IntN(4) {
	case 0:
		c, r := within(rnd, RectAround(Pt(0, 0), Size{W: size, H: size})), size*Length(0.3+0.7*rnd.Float64())
		p := make(Polygon, 240)
		for i := range p {
			p[i] = Pt(r, 0).Turn(Angle(360 * float64(i) / 240)).Add(c)
		}
		return CircleOutline(c, r), ring(p)
	case 1:
		p := stairs(rnd, 2+rnd.IntN(4), size/4).Turn(Angle(90 * rnd.IntN(4)))
		return PolygonOutline(p), ring(p)
	case 2:
		p := RectAround(within(rnd, RectAround(Pt(0, 0), Size{W: size, H: size})), Size{W: size, H: size / 2}).Polygon().Turn(Angle(360 * rnd.Float64()))
		return PolygonOutline(p), ring(p)
	}
	p := star(rnd, within(rnd, RectAround(Pt(0, 0), Size{W: size, H: size})), size, 3+rnd.IntN(12))
	return PolygonOutline(p), ring(p)
}

// The edge of the inner outline, walked in small steps, tells how near it comes to the edge
// of the outer one and whether it leaves it; distances are orb's.
func TestHoldsClearAgainstWalkingTheEdge(t *testing.T) {
	rnd := seeded(8)
	held, refused := 0, 0
	for i := range 400 {
		outer, outerRing := outlines(rnd, 100)
		inner, innerRing := outlines(rnd, 8+25*Length(rnd.Float64()))
		least, widest, out := math.Inf(1), 0.0, false
		for k, a := range innerRing[:len(innerRing)-1] {
			b := innerRing[k+1]
			n := max(1, int(planar.Distance(a, b)))
			widest = max(widest, planar.Distance(a, b)/float64(n))
			for s := range n {
				u := float64(s) / float64(n)
				p := orb.Point{a[0] + (b[0]-a[0])*u, a[1] + (b[1]-a[1])*u}
				least = min(least, planar.DistanceFrom(outerRing, p))
				out = out || !planar.RingContains(outerRing, p)
			}
		}
		for _, clear := range []Length{0, 2, 5} {
			got := outer.HoldsClear(inner, clear)
			switch {
			case out && least > 0.02 || least < float64(clear)-0.02:
				if refused++; got {
					t.Errorf("case %d: holds with %v to spare, but comes to %v of the edge, leaves it: %v", i, clear, least, out)
				}
			case !out && least > float64(clear)+widest/2+0.02:
				if held++; !got {
					t.Errorf("case %d: does not hold with %v to spare, but keeps %v", i, clear, least)
				}
			}
		}
	}
	if held < 100 || refused < 100 {
		t.Errorf("only %d held and %d refused: the cases are one-sided", held, refused)
	}
}

func TestHoldsClearAtTheEdge(t *testing.T) {
	square := RectOutline(Rect{Max: Pt(100, 100)})
	// A U that is open at the top, with a slot of 40 by 60.
	u := PolygonOutline(Polygon{{0, 0}, {30, 0}, {30, 60}, {70, 60}, {70, 0}, {100, 0}, {100, 100}, {0, 100}})
	box := func(x, y, w, h Length) Outline { return RectOutline(RectAt(Pt(x, y), Size{W: w, H: h})) }
	for _, c := range []struct {
		name         string
		outer, inner Outline
		clear        Length
		want         bool
	}{
		{"the same", square, square, 0, true},
		{"within rounding", square, box(-0.5e-6, 0, 100, 100+0.5e-6), 0, true},
		{"over by more", square, box(-2e-6, 0, 100, 100), 0, false},
		{"just clear", square, box(5, 5, 90, 90), 5, true},
		{"clear within rounding", square, box(5-0.5e-6, 5, 90, 90), 5, true},
		{"not clear", square, box(5-2e-6, 5, 90, 90), 5, false},
		{"clear below 0", square, box(-1, 0, 50, 50), -5, false},
		{"just fills the slot", u, box(30, 0, 40, 60), 0, false},
		{"stands in the slot", u, box(30, 10, 40, 20), 0, false},
		{"bridges the slot", u, box(0, 0, 100, 10), 0, false},
		{"from edge to edge of the slot", u, box(30, 50, 40, 50), 0, false},
		{"below the slot", u, box(0, 60, 100, 40), 0, true},
		{"beside the slot", u, box(0, 0, 30, 100), 0, true},
		{"corners on the slot", u, PolygonOutline(Polygon{{30, 20}, {70, 20}, {85, 40}, {70, 59}, {30, 59}, {15, 40}}), 0, false},
		{"over the slot", u, PolygonOutline(u.Corners()), 0, true},
		{"round in a corner", square, CircleOutline(Pt(20, 20), 20), 0, true},
		{"round out of a corner", square, CircleOutline(Pt(19.9, 20), 20), 0, false},
		{"round over the slot", u, CircleOutline(Pt(50, 40), 5), 0, false},
		{"round in round", CircleOutline(Pt(0, 0), 50), CircleOutline(Pt(10, 0), 30), 10, true},
		{"round in round, too near", CircleOutline(Pt(0, 0), 50), CircleOutline(Pt(10.01, 0), 30), 10, false},
		{"round out of round, clear below 0", CircleOutline(Pt(0, 0), 50), CircleOutline(Pt(10, 0), 41), -5, false},
		{"square in round", CircleOutline(Pt(50, 50), 50*Length(math.Sqrt2)), square, 0, true},
		{"square in round, too near", CircleOutline(Pt(50, 50), 50*Length(math.Sqrt2)), square, 0.01, false},
	} {
		for _, turn := range []Angle{0, 90, 33} {
			if got := c.outer.Turn(turn).HoldsClear(c.inner.Turn(turn), c.clear); got != c.want {
				t.Errorf("%s, turned by %v: %v, want %v", c.name, turn, got, c.want)
			}
		}
	}
}

func TestOutlineDistance(t *testing.T) {
	rnd := seeded(9)
	for i := range 300 {
		a, aRing := outlines(rnd, 40)
		b, bRing := outlines(rnd, 40)
		shift := within(rnd, RectAround(Pt(0, 0), Size{W: 250, H: 250}))
		b = b.Move(shift)
		for k := range bRing {
			bRing[k] = orb.Point{bRing[k][0] + float64(shift.X), bRing[k][1] + float64(shift.Y)}
		}
		want := ringDistance(aRing, bRing)
		got := a.Distance(b)
		// The short sides that stand for a circle lie within it by up to 1 - cos(pi/240) of its radius.
		if slack := 80 * (1 - math.Cos(math.Pi/240)); math.Abs(float64(got)-want) > slack {
			t.Errorf("case %d: %v apart, want %v", i, got, want)
		}
		if back := b.Distance(a); back != got && !near(back, got) {
			t.Errorf("case %d: %v one way, %v the other", i, got, back)
		}
	}
}

// ringDistance is 0 where the figures within the rings overlap, else the least distance of a
// corner of one from the other: rings that do not cross are nearest at a corner.
func ringDistance(a, b orb.Ring) float64 {
	d := math.Inf(1)
	for range 2 {
		for _, p := range a {
			if planar.RingContains(b, p) {
				return 0
			}
			d = min(d, planar.DistanceFrom(b, p))
		}
		a, b = b, a
	}
	// Sides may run right through the other figure.
	for i := range a[:len(a)-1] {
		for j := range b[:len(b)-1] {
			pt := func(p orb.Point) Point { return Pt(Length(p[0]), Length(p[1])) }
			if apart(pt(a[i]), pt(a[i+1]), pt(b[j]), pt(b[j+1])) == 0 {
				return 0
			}
		}
	}
	return d
}

func TestOutlineDistanceOfTouchingAndCrossing(t *testing.T) {
	box := func(x, y, w, h Length) Outline { return RectOutline(RectAt(Pt(x, y), Size{W: w, H: h})) }
	got, want := map[string]string{}, map[string]string{}
	for name, c := range map[string]struct {
		a, b Outline
		want Length
	}{
		"side by side":           {box(0, 0, 10, 10), box(13, 0, 10, 10), 3},
		"corner to corner":       {box(0, 0, 10, 10), box(13, 14, 10, 10), 5},
		"edge on edge":           {box(0, 0, 10, 10), box(10, 0, 10, 10), 0},
		"in line, apart":         {box(0, 0, 10, 10), box(0, 12, 10, 10), 2},
		"a cross":                {box(0, 4, 10, 2), box(4, 0, 2, 10), 0},
		"a cross through a mark": {PolygonOutline(Polygon{{0, 5}, {5, 4}, {10, 5}, {5, 6}}), PolygonOutline(Polygon{{5, 0}, {6, 5}, {5, 10}, {4, 5}}), 0},
		"one in the other":       {box(0, 0, 10, 10), box(4, 4, 1, 1), 0},
		"the same":               {box(0, 0, 10, 10), box(0, 0, 10, 10), 0},
		"round and round":        {CircleOutline(Pt(0, 0), 3), CircleOutline(Pt(10, 0), 4), 3},
		"round by a side":        {CircleOutline(Pt(15, 5), 3), box(0, 0, 10, 10), 2},
		"round round a box":      {CircleOutline(Pt(5, 5), 30), box(0, 0, 10, 10), 0},
		"round within":           {box(0, 0, 10, 10), CircleOutline(Pt(5, 5), 1), 0},
	} {
		got[name], want[name] = fmt.Sprint(c.a.Distance(c.b)), fmt.Sprint(c.want)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// TestDistanceInLine: sides in one line, but apart, do not meet, even where rounding makes one
// of two hexagons a fan's step apart lie ever so little askew.
func TestDistanceInLine(t *testing.T) {
	hexagon := HexagonOutline(RectAround(Point{}, Size{47.25, 54.55960043841964}))
	first := hexagon.Turn(180).Move(Pt(0, 59.66639846553127))
	// The corners that face each other are at (23.625, 46.0265) and, turned by 60 degrees, as
	// far from the middle line between the two.
	want := 2 * (46.026498355926364*math.Sin(math.Pi/6) - 23.625*math.Cos(math.Pi/6))
	if got := first.Distance(first.Turn(60)); math.Abs(float64(got)-want) > 1e-9 {
		t.Errorf("%v apart, want %v", got, want)
	}
}
