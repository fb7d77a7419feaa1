package template

import (
	"testing"

	"underlay/geometry"
)

// TestTouchDown: the corner nearest the centre; on a tie the lower one, on the off-hand side.
func TestTouchDown(t *testing.T) {
	centre := geometry.Pt(100, 100)
	square := geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 20, H: 20}))
	circle := geometry.CircleOutline(geometry.Point{}, 10)
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
		{"round on the centre", circle, centre, geometry.Pt(100, 110), geometry.Pt(100, 110)},
	} {
		for hand, want := range map[Hand]geometry.Point{RightHand: c.right, LeftHand: c.left} {
			if got := touchDown(c.face.Place(c.at, 0), centre, hand); !got.Near(want) {
				t.Errorf("%s, %s hand: %v, want %v", c.name, hand, got, want)
			}
		}
	}
	if got := lowerLeft(square.Place(centre, 90)); !got.Near(geometry.Pt(90, 110)) {
		t.Errorf("row by row: %v", got)
	}
}
