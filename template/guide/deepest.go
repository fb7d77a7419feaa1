package guide

import (
	"underlay/geometry"
	"underlay/template/job"
)

// Deepest returns the point of a face that is farthest from its edge, and how far: the centre,
// but for an outline of the maker's own. That is looked for on a grid, then ever closer.
func Deepest(b *job.Block) (geometry.Point, geometry.Length) {
	best, most := geometry.Point{}, min(b.Size.W, b.Size.H)/2
	if b.Shape != job.OutlineFace {
		return best, most
	}
	const steps = 12
	corners := b.Face.Corners()
	most = 0
	for span := max(b.Size.W, b.Size.H) / 2; span > 0.05; span /= steps / 2 {
		around := best
		for i := -steps; i <= steps; i++ {
			for j := -steps; j <= steps; j++ {
				p := around.Add(geometry.Pt(span*geometry.Length(i)/steps, span*geometry.Length(j)/steps))
				if d := corners.EdgeDistance(p); d > most && corners.Contains(p) {
					best, most = p, d
				}
			}
		}
	}
	if most == 0 { // a sliver that slips through the grid
		return geometry.Point{}, min(b.Size.W, b.Size.H) / 2
	}
	return best, most
}
