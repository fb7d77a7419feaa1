package motif_test

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"underlay/geometry"
	"underlay/template/job"
)

// faces are block's faces of many shapes, those with corners in both ways round.
func faces() map[string]geometry.Outline {
	rect := func(w, h geometry.Length) geometry.Rect {
		return geometry.RectAround(geometry.Point{}, geometry.Size{W: w, H: h})
	}
	return map[string]geometry.Outline{
		"square": geometry.RectOutline(rect(90, 90)), "wide": geometry.RectOutline(rect(60, 40)), "tall": geometry.RectOutline(rect(20, 90)),
		"band": geometry.RectOutline(rect(200, 20)), "tiny": geometry.RectOutline(rect(1, 1)),
		"round": geometry.CircleOutline(geometry.Point{}, 14), "hexagon": geometry.HexagonOutline(rect(40, 46)),
		"pennant": geometry.PolygonOutline(geometry.Polygon{{X: -45, Y: -40}, {X: 0, Y: 40}, {X: 45, Y: -40}}),
		"arch":    geometry.PolygonOutline(geometry.Polygon{{X: -40, Y: -40}, {X: 40, Y: -40}, {X: 40, Y: 40}, {X: 10, Y: 40}, {X: 10, Y: -10}, {X: -10, Y: -10}, {X: -10, Y: 40}, {X: -40, Y: 40}}),
		"star":    geometry.PolygonOutline(geometry.Polygon{{Y: -45}, {X: 12, Y: -12}, {X: 45}, {X: 12, Y: 12}, {Y: 45}, {X: -12, Y: 12}, {X: -45}, {X: -12, Y: -12}}),
	}
}

// TestStandIn: it fills the face with some left plain, keeps to it, is alike left and right where the
// face is, and tells its top from its foot: what is left plain lies lower than the middle.
func TestStandIn(t *testing.T) {
	for name, face := range faces() {
		b := &job.Block{Face: face, Size: face.Bounds().Size()}
		path := whole(t, b, 0.05)
		rings := ringsOf(path)
		share := area(rings) / face.Area()
		if share < 0.5 || share > 0.97 {
			t.Errorf("%s: %.0f %% of the face", name, 100*share)
		}
		if len(rings) < 2 {
			t.Fatalf("%s: %d rings", name, len(rings))
		}
		box := face.Bounds()
		var low, high float64
		const n = 101
		for i := range n * n {
			x, y := (float64(i%n)+0.5)/n, (float64(i/n)+0.37)/n // on no edge
			p := geometry.Pt(box.Min.X+box.W()*geometry.Length(x), box.Min.Y+box.H()*geometry.Length(y))
			at := orb.Point{float64(p.X), float64(p.Y)}
			wound := winding(rings, at)
			if wound != 0 && wound != 1 {
				t.Fatalf("%s: wound round %v %d times", name, at, wound)
			}
			if !face.Contains(p) {
				if wound != 0 {
					t.Fatalf("%s: paint outside the face at %v", name, at)
				}
				continue
			}
			if mirrored := winding(rings, orb.Point{-at[0], at[1]}); mirrored != wound {
				t.Errorf("%s: not alike left and right at %v", name, at)
			}
			if wound == 0 && y > 0.5 {
				low++
			} else if wound == 0 {
				high++
			}
		}
		if name != "pennant" && name != "arch" && name != "star" && low < 1.3*math.Max(1, high) {
			t.Errorf("%s: %.0f plain below the middle, %.0f above: which way is up?", name, low, high)
		}
	}
}
