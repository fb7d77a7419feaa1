package template

import "underlay/geometry"

// Area is the printable area of an item: its outline drawn in by the border, less the zones
// kept clear. Its frame is the item's: (0, 0) at the top left corner of the item's bounds.
type Area struct {
	Rect    geometry.Rect // bounds of the area, zones not taken off
	cloth   geometry.Rect // bounds of the item
	outline geometry.Outline
	clear   geometry.Length // kept from outline; an upright rectangle is drawn in already
	zones   []Zone
	upright bool // outline is the rectangle Rect
	edge    geometry.Path
}

// newArea draws the item's outline in by its border.
func newArea(item *Item) (Area, bool) {
	a := Area{zones: item.Zones, cloth: item.Outline.Bounds()}
	if r, ok := item.Outline.Upright(); ok {
		a.Rect = r.In(item.Border)
		a.outline, a.upright = geometry.RectOutline(a.Rect), true
		a.edge = a.Rect.Polygon().Path()
		return a, a.Rect.W() > 0 && a.Rect.H() > 0
	}
	a.outline, a.clear = item.Outline, item.Border.Least()
	var ok bool
	a.edge, a.Rect, ok = item.Outline.Inset(a.clear)
	return a, ok
}

// Path returns the edge of the area: the border line.
func (a Area) Path() geometry.Path { return a.edge }

// Plain tells whether the whole of Rect may be printed on.
func (a Area) Plain() bool { return a.upright && len(a.zones) == 0 }

// Holds tells whether a whole footprint lies in the area and overlaps no zone.
func (a Area) Holds(f geometry.Outline) bool {
	b := f.Bounds()
	if !a.Rect.Holds(b) {
		return false
	}
	if !a.upright && !a.outline.HoldsClear(f, a.clear) {
		return false
	}
	for _, z := range a.zones {
		// Touching a zone is not overlapping it.
		inner := z.Rect.Grow(-geometry.Tolerance)
		if b.Overlaps(inner) && f.Distance(geometry.RectOutline(inner)) == 0 {
			return false
		}
	}
	return true
}
