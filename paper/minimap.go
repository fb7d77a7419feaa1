package paper

import (
	"math"

	"underlay/geometry"
)

// Pens of the small map of all sheets. A guide's cloth stands out from the sheets it lies on.
var (
	mapPen   = Pen{Continuous, 0.25, Ink{}}
	mapCloth = Pen{Continuous, 0.5, Ink{}}
)

// leastCell is the smallest a sheet may come out on the map with its edges drawn.
const leastCell = 1.2 * geometry.Millimetre

// miniMap is the map of all sheets, without the one it stands on, and where things lie on it.
type miniMap struct {
	sheets, cloth *Shape
	size          geometry.Size
	place         func(geometry.Point) geometry.Point
}

// newMiniMap draws the map as large as goes into box.
func newMiniMap(all []Sheet, cloth geometry.Path, box geometry.Size) miniMap {
	whole := all[0].Kept
	for _, s := range all {
		whole = whole.Union(s.Kept)
	}
	k := math.Min(float64(box.W/whole.W()), float64(box.H/whole.H()))
	m := miniMap{
		size:  geometry.Size{W: whole.W() * geometry.Length(k), H: whole.H() * geometry.Length(k)},
		place: func(p geometry.Point) geometry.Point { return p.Sub(whole.Min).Mul(k) },
	}
	var edges geometry.Path
	least := geometry.Length(math.Inf(1))
	for _, s := range all {
		r := m.cell(s)
		edges = append(edges, r.Polygon().Path()...)
		least = min(least, r.W(), r.H())
	}
	if least < leastCell {
		edges = geometry.RectAt(geometry.Point{}, m.size).Polygon().Path()
	}
	m.sheets = NewShape(edges)
	if len(cloth) > 0 {
		m.cloth = NewShape(cloth.Map(m.place))
	}
	return m
}

// cell is where a sheet lies on the map.
func (m miniMap) cell(s Sheet) geometry.Rect {
	return geometry.Rect{Min: m.place(s.Kept.Min), Max: m.place(s.Kept.Max)}
}

// draw draws the map with its top left corner at p, a sheet filled.
func (m miniMap) draw(d *Drawing, p geometry.Point, s Sheet) {
	r := m.cell(s)
	// However many sheets there are, this one can be seen.
	if w := leastCell - min(r.W(), r.H()); w > 0 {
		r = r.Grow(w / 2)
	}
	d.Fill(r.Move(p).Polygon().Path(), Ink{})
	d.Stamp(m.sheets, Place{At: p}, mapPen, Role{})
	if m.cloth != nil {
		d.Stamp(m.cloth, Place{At: p}, mapCloth, Role{})
	}
}
