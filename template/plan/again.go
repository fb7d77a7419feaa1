package plan

import (
	"underlay/geometry"
)

// Again returns an outline of a print wherever it shows on the guide: once, or where it lies
// across the seam of a shade also where it comes in on the other side.
func (ip *ItemPlan) Again(print Print, o geometry.Outline) []geometry.Outline {
	all := []geometry.Outline{o}
	if !print.Seam {
		return all
	}
	area := ip.Area
	for _, round := range []float64{-1, 1} {
		var twin geometry.Outline
		if area.Flat != nil {
			twin = area.Flat.turned(o, area.Flat.Angle*geometry.Angle(round))
			if !area.Flat.crossesSeam(twin) {
				continue
			}
		} else {
			twin = o.Move(geometry.Pt(area.around*geometry.Length(round), 0))
		}
		if twin.Bounds().Overlaps(area.ClothBounds) {
			all = append(all, twin)
		}
	}
	return all
}
