package bench

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/look"
)

// scaled draws an item small on a page.
type scaled struct{ look.Scaled }

// fitted lays a cloth into a box.
func fitted(cloth, box geometry.Rect) scaled { return scaled{look.Fitted(cloth, box)} }

// shape returns a block's face, drawn so small, to be put down at each print.
func (s scaled) shape(face geometry.Outline) *paper.Shape {
	return paper.NewShape(s.Small(face.Path()))
}

// Lines of the small pictures.
const (
	clothLine = 0.35 * geometry.Millimetre
	thinLine  = 0.18 * geometry.Millimetre
)
