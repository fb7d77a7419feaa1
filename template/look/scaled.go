package look

import (
	"underlay/geometry"
)

// Scaled maps the frame of an item onto a box of a page, as large as it goes, at its top left.
type Scaled struct {
	K    geometry.Length // page lengths are so many times true ones
	From geometry.Point  // the top left corner of what is shown
	To   geometry.Point  // and where it lies on the page
}

// Fitted lays a cloth into a box.
func Fitted(cloth, box geometry.Rect) Scaled {
	return Scaled{min(box.W()/cloth.W(), box.H()/cloth.H()), cloth.Min, box.Min}
}

// At returns where a point of the item lies on the page.
func (s Scaled) At(p geometry.Point) geometry.Point {
	return p.Sub(s.From).Mul(float64(s.K)).Add(s.To)
}

// Small returns a path drawn so small, its origin where it was.
func (s Scaled) Small(path geometry.Path) geometry.Path {
	return path.Map(func(p geometry.Point) geometry.Point { return p.Mul(float64(s.K)) })
}
