package plan

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// coneShade is the surface of a cone laid flat: a ring sector, which closes round its apex.
type coneShade struct{}

// newConeArea lays a cone flat and draws it in by its borders at both ends. Its repeat closes
// round the shade, so there is no border at the seam.
func newConeArea(item *job.Item) Area {
	d := newDevelopment(item.Shade)
	a := Area{surface: coneShade{}, zones: item.Zones, Flat: &d, Cloth: geometry.RectAt(geometry.Point{}, d.size), whole: d.band(d.Inner, d.Outer)}
	a.slant = [2]geometry.Length{d.Inner + item.Border.Top, d.Outer - item.Border.Bottom}
	a.Rect = d.bounds(a.slant[0], a.slant[1])
	a.edge = d.band(a.slant[0], a.slant[1])
	return a
}

func (coneShade) lattice(t lattice) repeat { return onCone(t) }

func (coneShade) closes() bool { return true }

func (coneShade) centre(a Area) geometry.Point { return a.Flat.At((a.slant[0]+a.slant[1])/2, 0) }

func (coneShade) covers(a Area, p geometry.Point) bool {
	return math.Abs(float64(a.Flat.angleOf(p))) <= float64(a.Flat.Angle)/2+1e-9
}

// holds takes what leaves the sector on one side to come in on the other.
func (coneShade) holds(a Area, f geometry.Outline) bool {
	if !a.Flat.holds(f, a.slant) || !a.clearOfZones(f) {
		return false
	}
	return len(a.zones) == 0 || !a.Flat.crossesSeam(f) ||
		a.clearOfZones(a.Flat.turned(f, a.Flat.Angle)) && a.clearOfZones(a.Flat.turned(f, -a.Flat.Angle))
}

// wrapped takes a site to lie less than half a turn round the apex from where it came from.
func (coneShade) wrapped(a Area, s Site, from geometry.Point) Site {
	start := a.Flat.angleOf(from)
	now := start + geometry.Angle(math.Remainder(float64(a.Flat.angleOf(s.Origin)-start), 360))
	switch half := a.Flat.Angle / 2; {
	case now >= half-1e-9:
		return a.Flat.turnedSite(s, a.Flat.Angle)
	case now < -half-1e-9:
		return a.Flat.turnedSite(s, -a.Flat.Angle)
	}
	return s
}

func (coneShade) crossesSeam(a Area, b *job.Block, s Site) bool {
	return a.Flat.crossesSeam(b.Face.Place(s.Origin, s.Turn))
}

func (coneShade) again(a Area, o geometry.Outline) []geometry.Outline {
	var twins []geometry.Outline
	for _, round := range []geometry.Angle{-a.Flat.Angle, a.Flat.Angle} {
		if twin := a.Flat.turned(o, round); a.Flat.crossesSeam(twin) {
			twins = append(twins, twin)
		}
	}
	return twins
}

// borders measures along the slope, at the two ends.
func (coneShade) borders(a Area, b *job.Block, sites []Site) geometry.Edges {
	d := a.Flat
	if len(sites) == 0 {
		half := (d.Outer - d.Inner) / 2
		return geometry.Edges{Top: half, Bottom: half}
	}
	inner, outer := d.Outer, d.Inner
	for _, s := range sites {
		f := s.block(b).Face.Place(s.Origin, s.Turn)
		inner = min(inner, apart(f, d.Apex))
		if c, r, round := f.Round(); round {
			outer = max(outer, c.Distance(d.Apex)+r)
		}
		for _, c := range f.Corners() {
			outer = max(outer, c.Distance(d.Apex))
		}
	}
	return geometry.Edges{Top: inner - d.Inner, Bottom: d.Outer - outer}
}

func (coneShade) seam(a Area) (top, bottom, out geometry.Point) {
	half := a.Flat.Angle / 2
	return a.Flat.At(a.Flat.Inner, half), a.Flat.At(a.Flat.Outer, half), geometry.Pt(1, 0).Turn(-half)
}

func (coneShade) room(l layout) geometry.Size {
	return geometry.Size{W: l.area.Rect.W(), H: l.area.slant[1] - l.area.slant[0]}
}

func (s coneShade) noneFits(l layout) error {
	return fmt.Errorf("no print fits: the block %s is %s high and the printable slope of the shade %s, less what the arcs take; write a smaller block or a smaller border",
		words.Quote(l.pass.Block.Name), l.units.Format(l.cell.H), l.units.Format(s.room(l).H))
}
