package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"underlay/geometry"
)

// cornered is a job for a cloth with a toothed edge, its prints opened as wide as it takes.
func cornered(corners int, size geometry.Size) string {
	points := make([]string, corners)
	for i := range points {
		a := 2 * math.Pi * float64(i) / float64(corners)
		d := 0.5 - 0.015*float64(i%2)
		points[i] = fmt.Sprintf("'%.3f x %.3f mm'", float64(size.W)*(0.5+d*math.Cos(a)), float64(size.H)*(0.5+d*math.Sin(a)))
	}
	return "[[block]]\nname = 'fern'\nprint = '60 x 60 mm'\n[[item]]\nname = 'rug'\nshape = 'outline'\nborder = '20 mm'\n" +
		"outline = [" + strings.Join(points, ", ") + "]\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm to 20 mm'\n"
}

// TestCornersOpen opens the gap on a cloth of many corners, across and down each on its own and
// then both in the same share, as far as every print and all the cloth's sides allow, and no farther.
func TestCornersOpen(t *testing.T) {
	pass := planOf(t, cornered(120, geometry.Size{W: 900, H: 700})).Items[0].Passes[0]
	l, c := pass.layout, pass.Choice()
	held := func(across, down geometry.Length) bool {
		for _, p := range pass.Prints {
			d := p.Origin.Sub(l.area.Centre())
			at := l.area.Centre().Add(geometry.Pt(d.X*(60+across)/c.Pitch.Across, d.Y*(60+down)/c.Pitch.Down))
			if !l.item.Outline.HoldsClear(pass.Pass.Block.Face.Place(at, p.Turn), 20) {
				return false
			}
		}
		return true
	}
	if g := c.Gap.Across; g <= 1 || g >= 20 {
		t.Errorf("a gap of %v is at an end of the range", g)
	}
	const more = 1e-3 * geometry.Millimetre
	if !held(c.Gap.Across, 1) || !held(c.Gap.Across, c.Gap.Down) {
		t.Errorf("with %v a print leaves the cloth", c.Gap)
	}
	if held(c.Gap.Across+more, c.Gap.Down+more) {
		t.Errorf("%v is not as wide as the cloth takes", c.Gap)
	}
}

// BenchmarkCorners plans two cloths of 500 corners, one as long as a roll.
func BenchmarkCorners(b *testing.B) {
	for _, size := range []geometry.Size{{W: 1500, H: 2000}, {W: 2000, H: 35000}} {
		j := readJob(b, cornered(500, size))
		b.Run(fmt.Sprintf("%.0fx%.0f", size.W, size.H), func(b *testing.B) {
			for b.Loop() {
				if _, err := New(j); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
