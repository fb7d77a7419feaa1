package bench

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// OrderPicture draws the order of printing, as it is on a bench sheet, as large as goes into a box; all
// tells whether no number was left out.
func OrderPicture(face plan.FacePlan, box geometry.Rect) (view paper.View, all bool) {
	return orderPicture(face, box)
}
