package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// Area is the printable area of an item: its outline drawn in by the border, less the zones
// kept clear. Its frame is the item's: (0, 0) at the top left corner of the item's bounds. A
// shade's is that of its flat development.
type Area struct {
	Rect        geometry.Rect   // bounds of the area, zones not taken off
	ClothBounds geometry.Rect   // bounds of the item
	ground      geometry.Ground // the outline and what is kept clear of it; none where upright
	zones       []job.Zone
	upright     bool               // all of Rect is ground
	edge        geometry.Path      // the border line
	whole       geometry.Path      // the edge of the cloth
	around      geometry.Length    // of a drum: where x closes; 0: nowhere
	Flat        *Development       // of a cone; nil for anything else
	slant       [2]geometry.Length // of a cone: the radii between which it may be printed on
}

// newArea draws the item's outline in by its border, which leaves something: a checked job
// says so.
func newArea(item *job.Item) Area {
	if item.Shape == job.Cone {
		return newConeArea(item)
	}
	a := Area{zones: item.Zones, ClothBounds: item.Outline.Bounds(), whole: item.Outline.Path()}
	if r, ok := item.Outline.Upright(); ok {
		a.Rect = r.In(item.Border)
		a.upright = true
		a.edge = a.Rect.Polygon().Path()
		if item.Shape == job.Drum {
			a.around = item.Size.W
			// The seam is no border.
			r := a.Rect
			a.edge = append(geometry.Line(r.Min, geometry.Pt(r.Max.X, r.Min.Y)), geometry.Line(geometry.Pt(r.Min.X, r.Max.Y), r.Max)...)
		}
		return a
	}
	clear := item.Border.Least()
	a.ground = geometry.NewGround(item.Outline, clear)
	a.edge, a.Rect, _ = item.Outline.Inset(clear)
	return a
}

// Path returns the edge of the area: the border line.
func (a Area) Path() geometry.Path { return a.edge }

// ClothPath returns the edge of the cloth as it lies flat.
func (a Area) ClothPath() geometry.Path { return a.whole }

// Cloth returns the bounds of the item; its top left corner is (0, 0).
func (a Area) Cloth() geometry.Rect { return a.ClothBounds }

// Centre returns the point that patterns are centred on: the middle of the area's bounds, or
// of a cone the middle of the printable slope, opposite the seam.
func (a Area) Centre() geometry.Point {
	if a.Flat != nil {
		return a.Flat.At((a.slant[0]+a.slant[1])/2, 0)
	}
	return a.Rect.Centre()
}

// closes tells whether the pattern runs round and meets itself, as on a shade.
func (a Area) closes() bool { return a.around > 0 || a.Flat != nil }

// wrapped returns a site of a shade that has left the flat development on one side at the
// place where it comes in on the other; any other site stays. On a cone it lies less than half
// a turn round the apex from the place it came from.
func (a Area) wrapped(s Site, from geometry.Point) Site {
	switch {
	case a.Flat != nil:
		start := a.Flat.angleOf(from)
		now := start + geometry.Angle(math.Remainder(float64(a.Flat.angleOf(s.Origin)-start), 360))
		switch half := a.Flat.Angle / 2; {
		case now >= half-1e-9:
			return a.Flat.turnedSite(s, a.Flat.Angle)
		case now < -half-1e-9:
			return a.Flat.turnedSite(s, -a.Flat.Angle)
		}
	case a.around > 0:
		x := geometry.Length(math.Mod(float64(s.Origin.X), float64(a.around)))
		if x < -geometry.Tolerance {
			x += a.around
		}
		if x >= a.around-geometry.Tolerance {
			x = 0
		}
		s.Origin.X = max(0, x)
	}
	return s
}

// Plain tells whether the whole of Rect may be printed on.
func (a Area) Plain() bool { return a.upright && len(a.zones) == 0 }

// Holds tells whether a whole footprint lies in the area and overlaps no zone. On a shade one
// may lie across the seam: what leaves the flat development on one side comes in on the other.
func (a Area) Holds(f geometry.Outline) bool {
	switch {
	case a.Flat != nil:
		if !a.Flat.holds(f, a.slant) || !a.clearOfZones(f) {
			return false
		}
		return len(a.zones) == 0 || !a.Flat.crossesSeam(f) ||
			a.clearOfZones(a.Flat.turned(f, a.Flat.Angle)) && a.clearOfZones(a.Flat.turned(f, -a.Flat.Angle))
	case a.around > 0:
		if b := f.Bounds(); b.Min.Y < a.Rect.Min.Y-geometry.Tolerance || b.Max.Y > a.Rect.Max.Y+geometry.Tolerance {
			return false
		}
		for _, x := range []geometry.Length{-a.around, 0, a.around} {
			if len(a.zones) > 0 && !a.clearOfZones(f.Move(geometry.Pt(x, 0))) {
				return false
			}
		}
		return true
	}
	if !a.Rect.Holds(f.Bounds()) || !a.upright && !a.ground.Holds(f) {
		return false
	}
	return a.clearOfZones(f)
}

// holdsBox tells whether all that lies in a box lies in the area and overlaps no zone; known is
// false where it takes more than the box to tell.
func (a Area) holdsBox(b geometry.Rect) (holds, known bool) {
	if a.closes() {
		return false, false
	}
	for _, z := range a.zones {
		if b.Touches(z.Rect) {
			return false, false
		}
	}
	if !a.Rect.Holds(b) {
		return false, true
	}
	if a.upright {
		return true, true
	}
	return a.ground.HoldsBox(b)
}

// clearOfZones tells whether a footprint overlaps no zone; touching one is not overlapping it.
// A distance of 0 is told of outlines up to the tolerance apart, so that the zone is drawn in by
// more than that.
func (a Area) clearOfZones(f geometry.Outline) bool {
	b := f.Bounds()
	for _, z := range a.zones {
		inner := z.Rect.Grow(-2 * geometry.Tolerance)
		if b.Overlaps(inner) && f.Distance(geometry.RectOutline(inner)) == 0 {
			return false
		}
	}
	return true
}
