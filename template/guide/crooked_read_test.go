package guide

import (
	"testing"

	"underlay/geometry"
)

// checkCrookedCrease looks for the ends of a crease of a four-sided cover, which goes on straight
// through the middles of opposite sides to both ends of the reach; down: the level one.
func (g guideRead) checkCrookedCrease(t *testing.T, down bool) {
	c := g.face.Item.Item.Corners
	middle := func(i, j int) geometry.Point { return c[i].Add(c[j]).Mul(0.5) }
	from, to := middle(0, 1), middle(3, 2)
	if down {
		from, to = middle(0, 3), middle(1, 2)
	}
	along := to.Sub(from)
	along = along.Mul(1 / float64(along.Norm()))
	// How far along the crease, and how far off it.
	on := func(p geometry.Point) (geometry.Length, geometry.Length) {
		d := p.Sub(from)
		return d.X*along.X + d.Y*along.Y, (d.X*along.Y - d.Y*along.X).Abs()
	}
	var before, beyond bool
	for _, s := range g.sheets {
		for _, l := range s.Lines.All {
			a, offA := on(l.A)
			b, offB := on(l.B)
			if offA > 0.01 || offB > 0.01 || (a-b).Abs() < 2 || len(l.Of.Dashes) == 0 {
				continue
			}
			before = before || max(a, b) < 0
			beyond = beyond || min(a, b) > to.Distance(from)
		}
	}
	if !before || !beyond {
		t.Errorf("%s: the crease from %v to %v (down: %v) has its ends outside the cloth: %v, %v", g.face.Label(), from, to, down, before, beyond)
	}
}
