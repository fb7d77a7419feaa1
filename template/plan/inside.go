package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// insideFrames returns the area left to a pass by the frames printed before it on a face they
// share: drawn in on each side that a frame runs along by the depth of its block and the gap of
// the pass. A pass that is seated by another, or is a frame itself, has the whole area.
func (l layout) insideFrames(before []*PassPlan) (Area, bool) {
	a := l.area
	if l.pass.Seated() || l.pass.Repeat.Framed() || !a.upright || a.surface.closes() {
		return a, false
	}
	var in geometry.Edges
	for _, p := range before {
		shares := p.Pass.Face == "" || l.pass.Face == "" || p.Pass.Face == l.pass.Face
		if !p.Pass.Framed() || !shares {
			continue
		}
		depth := newLayout(l.area, p.Pass).cell.H
		for _, side := range []struct {
			side job.Side
			edge *geometry.Length
			gap  geometry.Length
		}{
			{job.TopSide, &in.Top, l.pass.Gap.Down.Least}, {job.RightSide, &in.Right, l.pass.Gap.Across.Least},
			{job.BottomSide, &in.Bottom, l.pass.Gap.Down.Least}, {job.LeftSide, &in.Left, l.pass.Gap.Across.Least},
		} {
			if p.Pass.Sides.Has(side.side) {
				*side.edge = max(*side.edge, depth+max(0, side.gap))
			}
		}
	}
	if in == (geometry.Edges{}) {
		return a, false
	}
	a.Rect = a.Rect.In(in)
	a.edge = a.Rect.Polygon().Path()
	return a, true
}
