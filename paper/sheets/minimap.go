package sheets

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// Pens of the small map of all sheets. A guide's cloth stands out from the sheets it lies on.
var (
	mapPen   = paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}}
	mapCloth = paper.Pen{Type: paper.Continuous, Width: 0.5, Ink: paper.Ink{}}
)

// leastCell is the smallest a sheet may come out on the map with its edges drawn.
const leastCell = 1.2 * geometry.Millimetre

// miniMap is the map of all sheets, without the one it stands on, and where things lie on it.
type miniMap struct {
	sheets, cloth *paper.Shape
	size          geometry.Size
	place         func(geometry.Point) geometry.Point
}

// newMiniMap draws the map as large as goes into box.
func newMiniMap(all []paper.Sheet, cloth geometry.Path, box geometry.Size) miniMap {
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
	m.sheets = paper.NewShape(edges)
	if len(cloth) > 0 {
		m.cloth = paper.NewShape(cloth.Map(m.place))
	}
	return m
}

// cell is where a sheet lies on the map.
func (m miniMap) cell(s paper.Sheet) geometry.Rect {
	return geometry.Rect{Min: m.place(s.Kept.Min), Max: m.place(s.Kept.Max)}
}

// draw draws the map with its top left corner at p, a sheet filled.
func (m miniMap) draw(d *paper.Drawing, p geometry.Point, s paper.Sheet) {
	r := m.cell(s)
	// However many sheets there are, this one can be seen.
	if w := leastCell - min(r.W(), r.H()); w > 0 {
		r = r.Grow(w / 2)
	}
	d.Fill(r.Move(p).Polygon().Path(), paper.Ink{})
	d.Stamp(m.sheets, paper.Place{At: p}, mapPen, paper.Role{})
	if m.cloth != nil {
		d.Stamp(m.cloth, paper.Place{At: p}, mapCloth, paper.Role{})
	}
}
