package plan

import (
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// TestTouchDown: the corner nearest the centre; on a tie the lower one, on the off-hand side.
func TestTouchDown(t *testing.T) {
	centre := geometry.Pt(100, 100)
	square := geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 20, H: 20}))
	circle := geometry.CircleOutline(geometry.Point{}, 10)
	half := geometry.Length(10 / math.Sqrt2)
	ell := geometry.PolygonOutline(geometry.Polygon{{X: -10, Y: -10}, {X: 0, Y: -10}, {X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: -10, Y: 10}})
	for _, c := range []struct {
		name        string
		face        geometry.Outline
		at          geometry.Point
		right, left geometry.Point
	}{
		{"far left", square, geometry.Pt(50, 50), geometry.Pt(60, 60), geometry.Pt(60, 60)},
		{"near right", square, geometry.Pt(150, 150), geometry.Pt(140, 140), geometry.Pt(140, 140)},
		{"above the centre", square, geometry.Pt(100, 50), geometry.Pt(90, 60), geometry.Pt(110, 60)},
		{"below the centre", square, geometry.Pt(100, 150), geometry.Pt(90, 140), geometry.Pt(110, 140)},
		{"left of the centre", square, geometry.Pt(50, 100), geometry.Pt(60, 110), geometry.Pt(60, 110)},
		{"right of the centre", square, geometry.Pt(150, 100), geometry.Pt(140, 110), geometry.Pt(140, 110)},
		{"on the centre", square, centre, geometry.Pt(90, 110), geometry.Pt(110, 110)},
		{"round", circle, geometry.Pt(100, 50), geometry.Pt(100, 60), geometry.Pt(100, 60)},
		// 10 at 45 degrees: 7.071 either way.
		{"round on the centre", circle, centre, geometry.Pt(100-half, 100+half), geometry.Pt(100+half, 100+half)},
		// An L of 20 with arms of 10, its inner corner at (0, 0) in its frame: that is 2.8 from the
		// centre and points inwards; the ends of the arms are 8.2 from it, the lower one taken.
		{"corner that points inwards", ell, geometry.Pt(98, 102), geometry.Pt(108, 102), geometry.Pt(108, 102)},
		{"corner that points inwards, nearer one arm", ell, geometry.Pt(99, 102), geometry.Pt(99, 92), geometry.Pt(99, 92)},
	} {
		for hand, want := range map[job.Hand]geometry.Point{job.RightHand: c.right, job.LeftHand: c.left} {
			if got := touchDown(c.face.Place(c.at, 0), centre, hand); !got.Near(want) {
				t.Errorf("%s, %s hand: %v, want %v", c.name, hand, got, want)
			}
		}
	}
	if got := lowerLeft(square.Place(centre, 90)); !got.Near(geometry.Pt(90, 110)) {
		t.Errorf("row by row: %v", got)
	}
}
