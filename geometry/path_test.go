package geometry_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	. "underlay/geometry"
)

func TestCirclePathKeepsToTheCircle(t *testing.T) {
	centre, radius := Pt(30, -20), Length(250)
	path := CircleOutline(centre, radius).Path()
	if len(path) != 1 || !path[0].Closed || len(path[0].Steps) != 8 {
		t.Fatalf("%v", path)
	}
	if last := path[0].Steps[7].To; last != path[0].Start {
		t.Errorf("starts at %v, ends at %v", path[0].Start, last)
	}
	for _, p := range flat(path[0], 100) {
		if off := math.Abs(float64(p.Distance(centre)/radius - 1)); off > 5e-6 {
			t.Errorf("%v is off by %v of the radius", p, off)
		}
	}
	if got, want := flat(path[0], 100).Area(), math.Pi*250*250; math.Abs(got/want-1) > 2e-5 {
		t.Errorf("area %v, want %v", got, want)
	}
}

func TestArc(t *testing.T) {
	for _, c := range []struct {
		from, sweep Angle
		steps       int
	}{
		{0, 90, 2}, {0, -90, 2}, {-90, 360, 8}, {30, 44, 1}, {10, 45, 1}, {200, 46, 2}, {359, 5, 1}, {12, -301, 7}, {40, 0, 1},
	} {
		piece := Arc(Pt(5, 6), 80, c.from, c.sweep)[0]
		if len(piece.Steps) != c.steps || piece.Closed {
			t.Errorf("%v: %d steps, want %d", c, len(piece.Steps), c.steps)
		}
		on := func(a Angle) Point {
			return Pt(5+80*Length(math.Cos(float64(a)*math.Pi/180)), 6+80*Length(math.Sin(float64(a)*math.Pi/180)))
		}
		at := piece.Start
		if !at.Near(on(c.from)) {
			t.Errorf("%v: starts at %v, want %v", c, at, on(c.from))
		}
		for i, s := range piece.Steps {
			part := c.sweep / Angle(c.steps)
			// Steps are equal, so both the ends and the middles are known.
			if want := on(c.from + part*Angle(i+1)); !s.To.Near(want) || !s.Curved {
				t.Errorf("%v: step %d ends at %v, want %v", c, i, s.To, want)
			}
			if got, want := bezier(at, s, 0.5), on(c.from+part*(Angle(i)+0.5)); !got.Near(want) {
				t.Errorf("%v: step %d has its middle at %v, want %v", c, i, got, want)
			}
			for k := range 20 {
				if p := bezier(at, s, float64(k)/20); math.Abs(float64(p.Distance(Pt(5, 6))/80-1)) > 5e-6 {
					t.Errorf("%v: %v is %v from the centre", c, p, p.Distance(Pt(5, 6)))
				}
			}
			at = s.To
		}
	}
}

func TestStraightPaths(t *testing.T) {
	if Chain() != nil || (Polygon{}).Path() != nil {
		t.Error("a path through no point")
	}
	want := Path{{Start: Pt(1, 2), Steps: []Step{{To: Pt(3, 4)}}}}
	if d := cmp.Diff(want, Line(Pt(1, 2), Pt(3, 4))); d != "" {
		t.Error(d)
	}
	want = Path{{Start: Pt(0, 0), Steps: []Step{{To: Pt(4, 0)}, {To: Pt(4, 3)}, {To: Pt(0, 3)}}, Closed: true}}
	if d := cmp.Diff(want, RectOutline(Rect{Max: Pt(4, 3)}).Path()); d != "" {
		t.Error(d)
	}
}

func TestPathBounds(t *testing.T) {
	path := append(Line(Pt(3, 4), Pt(-1, 9)), Chain(Pt(20, 5), Pt(21, 6))...)
	if got, want := path.Bounds(), (Rect{Pt(-1, 4), Pt(21, 9)}); got != want {
		t.Errorf("%v, want %v", got, want)
	}
	circle := CircleOutline(Pt(10, 10), 5)
	if got := circle.Path().Bounds(); !got.Holds(circle.Bounds()) || !circle.Bounds().Grow(1).Holds(got) {
		t.Errorf("bounds of a circle are %v", got)
	}
	if got := (Path{}).Bounds(); got != (Rect{}) {
		t.Errorf("bounds of nothing are %v", got)
	}
}

func TestPathMap(t *testing.T) {
	path := append(Arc(Pt(0, 0), 10, 0, 60), RectOutline(Rect{Max: Pt(4, 3)}).Path()...)
	turned := path.Map(func(p Point) Point { return p.Turn(90).Add(Pt(7, 0)) })
	if d := cmp.Diff(append(Arc(Pt(7, 0), 10, 90, 60), PolygonOutline(Rect{Max: Pt(4, 3)}.Polygon().Turn(90).Move(Pt(7, 0))).Path()...), turned, nearPoints); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff(path, turned.Map(func(p Point) Point { return p.Sub(Pt(7, 0)).Turn(-90) }), nearPoints); d != "" {
		t.Error(d)
	}
}
