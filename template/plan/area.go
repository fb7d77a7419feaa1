package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// Area is the printable area of an item: its outline drawn in by the border, less the zones
// kept clear. Its frame is the item's: (0, 0) at the top left corner of the item's bounds. A
// shade's is that of its flat development.
type Area struct {
	Rect    geometry.Rect   // bounds of the area, zones not taken off
	Cloth   geometry.Rect   // bounds of the item
	surface surface         // how the item lies
	ground  geometry.Ground // the outline and what is kept clear of it; none where upright
	zones   []job.Zone
	upright bool               // all of Rect is ground
	edge    geometry.Path      // the border line
	whole   geometry.Path      // the edge of the cloth
	around  geometry.Length    // of a drum: where x closes; 0: nowhere
	Flat    *Development       // of a cone; nil for anything else
	slant   [2]geometry.Length // of a cone: the radii between which it may be printed on
	corners [4]geometry.Point  // of a four-sided cover that is not square
	middle  geometry.Point     // and what its pattern is centred on
	// Turned tells that the cloth lies turned over like a leaf: the face is not the first.
	Turned bool
}

// surface is how an item of some shape lies on the bench: flat as it is, or as a shade laid flat,
// whose pattern runs round and meets itself.
type surface interface {
	// lattice sets a lattice out on it.
	lattice(lattice) repeat
	// closes tells whether the pattern runs round and meets itself.
	closes() bool
	// centre returns the point that patterns are centred on.
	centre(Area) geometry.Point
	// covers tells whether a point lies on the bounds of the item, or of the cone laid flat.
	covers(Area, geometry.Point) bool
	// holds tells whether a whole footprint lies within the borders and overlaps no zone.
	holds(Area, geometry.Outline) bool
	// wrapped returns a site that has left the flat shade on one side at the place where it comes
	// in on the other; from is where it came from.
	wrapped(a Area, s Site, from geometry.Point) Site
	// crossesSeam tells whether a print lies across the seam.
	crossesSeam(Area, *job.Block, Site) bool
	// again lists an outline that lies across the seam where else it comes in.
	again(Area, geometry.Outline) []geometry.Outline
	// borders returns the plain cloth that prints leave on each side, inside the bounds of the item.
	borders(Area, *job.Block, []Site) geometry.Edges
	// seam returns the ends of the right edge, and the direction square to it and outwards.
	seam(Area) (top, bottom, out geometry.Point)
	// room is what there is for one print.
	room(layout) geometry.Size
	// noneFits explains why not one print fits.
	noneFits(layout) error
}

// areas is the table of the shapes: how an item of each is laid out and drawn in by its border,
// which leaves something, as a checked job says so.
func areas() map[job.Shape]func(*job.Item) Area {
	return map[job.Shape]func(*job.Item) Area{
		job.Rectangle: newClothArea,
		job.Round:     newClothArea,
		job.Outline:   newClothArea,
		job.FourSided: newFourSidedArea,
		job.Drum:      newDrumArea,
		job.Cone:      newConeArea,
	}
}

// newArea returns the printable area of an item.
func newArea(item *job.Item) Area { return areas()[item.Shape](item) }

// Path returns the edge of the area: the border line.
func (a Area) Path() geometry.Path { return a.edge }

// ClothPath returns the edge of the cloth as it lies flat.
func (a Area) ClothPath() geometry.Path { return a.whole }

// Centre returns the point that patterns are centred on: the middle of the area's bounds, or
// of a cone the middle of the printable slope, opposite the seam.
func (a Area) Centre() geometry.Point { return a.surface.centre(a) }

// Seam returns the ends of the item's right edge, where a shade has its seam, and the direction
// of length 1 that is square to it and leads outwards.
func (a Area) Seam() (top, bottom, out geometry.Point) { return a.surface.seam(a) }

// Again returns an outline of a print wherever it shows on the guide: once, or where it lies
// across the seam of a shade also where it comes in on the other side.
func (a Area) Again(print Print, o geometry.Outline) []geometry.Outline {
	all := []geometry.Outline{o}
	if !print.Seam {
		return all
	}
	for _, twin := range a.surface.again(a, o) {
		if twin.Bounds().Overlaps(a.Cloth) {
			all = append(all, twin)
		}
	}
	return all
}

// Holds tells whether a print's outline lies wholly where prints may lie.
func (a Area) Holds(f geometry.Outline) bool { return a.surface.holds(a, f) }

// plain tells whether the whole of Rect may be printed on.
func (a Area) plain() bool { return a.upright && len(a.zones) == 0 }

// holdsBox tells whether all that lies in a box lies in the area and overlaps no zone; known is
// false where it takes more than the box to tell.
func (a Area) holdsBox(b geometry.Rect) (holds, known bool) {
	if a.surface.closes() {
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
