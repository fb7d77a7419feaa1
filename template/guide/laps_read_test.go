package guide

import (
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/plan"
)

// covering returns the prints of a pass, but for one, that a point lies inside of.
func covering(pass plan.FacePass, but plan.Print, q geometry.Point) []geometry.Polygon {
	var all []geometry.Polygon
	for _, other := range pass.Prints {
		c := other.Outline.Corners()
		if other.Number != but.Number && c.Bounds().Contains(q) && c.Contains(q) && c.EdgeDistance(q) > off {
			all = append(all, c)
		}
	}
	return all
}

// laps tells whether a print with corners laps others, and if so looks for what is drawn of it: its
// corners, and its edge wherever no other print covers it; where one does, away from the corners of
// both, a line in the middle of the lap and none along the edge. The lap is how far the edge lies
// inside the other print.
func (g guideRead) laps(t *testing.T, pass plan.FacePass, print plan.Print) bool {
	t.Helper()
	if gap := pass.Choice().Gap; min(gap.Across, gap.Down) >= 0 || len(print.Outline.Corners()) == 0 {
		return false
	}
	const ends = 4.5 // a little more than is drawn of the edge beyond the lap's corner
	own := print.Outline.Corners()
	var edge, middle, bare []geometry.Point
	for i, a := range own {
		b := own[(i+1)%len(own)]
		side := b.Sub(a)
		in := geometry.Pt(-side.Y, side.X).Mul(1 / float64(side.Norm()))
		if !own.Contains(a.Add(side.Mul(0.5)).Add(in.Mul(0.1))) {
			in = in.Mul(-1)
		}
		for k, q := range along(a, b) {
			others := covering(pass, print, q)
			if len(others) == 0 || k == 0 {
				edge = append(edge, q)
				continue
			}
			lap := others[0].EdgeDistance(q)
			near := geometry.Length(math.Inf(1))
			for _, c := range append(own[:len(own):len(own)], others[0]...) {
				near = min(near, c.Distance(q))
			}
			if len(others) == 1 && near > lap+ends {
				middle, bare = append(middle, q.Add(in.Mul(float64(lap/2)))), append(bare, q)
			}
		}
	}
	if len(edge) == 4*12 {
		return false // on its own
	}
	g.mustRun(t, "the edge of a print that laps", edge)
	g.mustRun(t, "the middle of a lap", middle)
	for _, q := range bare {
		if c := g.cloth.Centre(); min((q.X-c.X).Abs(), (q.Y-c.Y).Abs()) < 0.1 {
			continue // the crease crosses there
		}
		for _, s := range g.sheets {
			if s.Sheet.Area.Contains(q) && s.Lines.On(q) {
				t.Errorf("%s, sheet %s: two lines where prints meet at %v", g.face.Label(), s.Name, q)
				return true
			}
		}
	}
	if len(middle) == 0 {
		t.Errorf("%s: a print at %v laps, and no lap was looked for", g.face.Label(), print.Origin)
	}
	return true
}
