package side

import (
	"fmt"
	"slices"

	"underlay/template/job"
	"underlay/template/plan"
)

// dragged lists the zones and the placed prints of a face, which can be moved.
func (v view) dragged(face plan.FacePlan) {
	asked := v.plan.Job.Items[v.Item]
	name := ""
	if len(face.Names) > 0 {
		name = face.Names[0]
	}
	width := face.Item.Area.Cloth.W()
	for i, z := range asked.Zones {
		if z.Face != "" && z.Face != name {
			continue
		}
		mirrored := z.Face == "" && face.Item.Area.Turned
		seen := z.Rect
		if mirrored {
			seen = z.Rect.Mirror(width)
		}
		v.Zones = append(v.Zones, Zone{fmt.Sprintf("item.%d.keep-clear.%d", v.Item, i), z.Name, boxOf(seen), mirrored, Spot{float64(z.Rect.Min.X), float64(z.Rect.Min.Y)}})
	}
	for _, p := range face.Passes {
		if p.Pass.Seated() || p.Pass.Repeat != job.Placed {
			continue
		}
		n := slices.Index(asked.Passes, p.Pass)
		for i, place := range p.Pass.Places {
			at := p.Pass.Block.Face.Place(place.At, place.Turn)
			v.Placed = append(v.Placed, Placed{
				Path: fmt.Sprintf("item.%d.pass.%d.at.%d", v.Item, n, i), At: Spot{float64(place.At.X), float64(place.At.Y)},
				Turn: float64(place.Turn), Box: boxOf(at.Bounds()),
			})
		}
	}
}
