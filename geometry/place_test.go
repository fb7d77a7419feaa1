package geometry_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	. "underlay/geometry"
)

// Near points are the same to go-cmp.
var nearPoints = cmp.Comparer(func(a, b Point) bool { return a.Near(b) })

func TestPlace(t *testing.T) {
	face := RectOutline(RectAround(Pt(0, 0), Size{W: 90, H: 40}))
	f := face.Place(Pt(100, 200), 90)
	want := Polygon{{120, 155}, {120, 245}, {80, 245}, {80, 155}} // the top left corner is now at the top right
	if d := cmp.Diff(want, f.Corners(), nearPoints); d != "" {
		t.Error(d)
	}
}

func TestRim(t *testing.T) {
	square := RectOutline(RectAround(Pt(0, 0), Size{W: 10, H: 10})).Place(Pt(50, 50), 0)
	if d := cmp.Diff([]Point{{X: 45, Y: 45}, {X: 55, Y: 45}, {X: 55, Y: 55}, {X: 45, Y: 55}}, square.Rim(Pt(0, 0))); d != "" {
		t.Error(d)
	}
	round := CircleOutline(Pt(0, 0), 5).Place(Pt(50, 50), 0)
	for p, want := range map[Point]Point{
		{X: 50, Y: 0}:  {X: 50, Y: 45},
		{X: 90, Y: 80}: {X: 54, Y: 53},
		{X: 51, Y: 50}: {X: 55, Y: 50}, // from within as from without
		{X: 50, Y: 50}: {X: 50, Y: 55}, // all are as near: the lowest
	} {
		if d := cmp.Diff([]Point{want}, round.Rim(p), nearPoints); d != "" {
			t.Errorf("nearest to %v:\n%s", p, d)
		}
	}
}

func TestUpArrow(t *testing.T) {
	for turn, tip := range map[Angle]Point{
		0:    {X: 10, Y: 10},
		90:   {X: 20, Y: 20}, // to the right
		180:  {X: 10, Y: 30},
		270:  {X: 0, Y: 20},
		-90:  {X: 0, Y: 20},
		1170: {X: 20, Y: 20},
	} {
		path := UpArrow(Pt(10, 20), 20, turn)
		if len(path) != 1 || !path[0].Closed {
			t.Fatalf("turned by %v, the arrow is %v", turn, path)
		}
		// Of four corners the tip is the one in the arrow's way; the barbs lie behind it, even.
		corners := flat(path[0], 1)
		barbs := Polygon{corners[1], corners[3]}
		tail := Pt(20, 40).Sub(tip)
		if !corners[0].Near(tip) || !near(barbs[0].Distance(tip), barbs[1].Distance(tip)) {
			t.Errorf("turned by %v, the corners are %v", turn, corners)
		}
		if middle := barbs[0].Add(barbs[1]).Mul(0.5); !middle.Near(tail) || !near(barbs[0].Distance(barbs[1]), 12) {
			t.Errorf("turned by %v, the barbs are %v, want them beside %v", turn, barbs, tail)
		}
		if notch := corners[2]; notch.Distance(tip) >= tail.Distance(tip) {
			t.Errorf("turned by %v, the foot is not notched: %v", turn, notch)
		}
	}
}
