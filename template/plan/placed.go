package plan

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// placed sets prints out where the job says, each turned as it says there. The error names every
// place at which something is in the way.
func placed(surface) repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			var sites []Site
			var wrong linesError
			for i, p := range l.pass.Places {
				s := Site{Origin: p.At, Turn: p.Turn, key: geometry.Site{I: i}}
				if text := l.inTheWay(s, sites); text != "" {
					wrong = append(wrong, atLine{p.Line, fmt.Sprintf("at %d: %s", i+1, text)})
				}
				sites = append(sites, s)
			}
			if len(wrong) > 0 {
				return nil, wrong
			}
			return []way{l.describeSingle(Choice{}, sites)}, nil
		},
		order: asListed,
	}
}

// inTheWay says why no print can go to a site after those before it, and what to write; "": it can.
func (l layout) inTheWay(s Site, before []Site) string {
	face := l.pass.Block.Face
	print := face.Place(s.Origin, s.Turn)
	if !l.area.surface.covers(l.area, s.Origin) {
		return "the middle of the print is not on the cloth; write a place on it"
	}
	if !l.holds(s) {
		if zone, ok := l.onZone(s); ok {
			return fmt.Sprintf("the print lies on %s, which is kept clear; write a place off it", words.Quote(zone.Name))
		}
		return l.offArea(s, print.Bounds())
	}
	// What only touches does not overlap.
	size := l.pass.Block.Size
	k := 1 - 4*float64(geometry.Tolerance/min(size.W, size.H))
	within := face.Stretch(k, k).Place(s.Origin, s.Turn)
	for i, other := range before {
		twin := face.Place(other.Origin, other.Turn)
		for _, o := range append(l.area.surface.again(l.area, twin), twin) {
			if !o.Bounds().Overlaps(print.Bounds()) || within.Distance(o) > 0 {
				continue
			}
			return fmt.Sprintf("the print lies on that of at %d; write a place %s", i+1, l.clearWords(print.Bounds(), o.Bounds()))
		}
	}
	return ""
}

// onZone finds the zone that alone is in the way of a print.
func (l layout) onZone(s Site) (job.Zone, bool) {
	print := l.pass.Block.Face.Place(s.Origin, s.Turn)
	alone := l.area
	if alone.zones = nil; !alone.surface.holds(alone, print) {
		return job.Zone{}, false
	}
	for _, z := range l.area.zones {
		if alone.zones = []job.Zone{z}; !alone.surface.holds(alone, print) {
			return z, true
		}
	}
	return job.Zone{}, false
}

// clearWords says how far a print has to move, across or down, for its bounds to clear another's.
func (l layout) clearWords(b, other geometry.Rect) string {
	far := func(down bool, low, high, otherLow, otherHigh geometry.Length) string {
		ways := []string{"to the right", "to the left"}
		if down {
			ways = []string{"down", "up"}
		}
		if low+high < otherLow+otherHigh {
			return l.units.Format(l.units.Up(high-otherLow)) + " " + ways[1]
		}
		return l.units.Format(l.units.Up(otherHigh-low)) + " " + ways[0]
	}
	return far(false, b.Min.X, b.Max.X, other.Min.X, other.Max.X) + ", or " + far(true, b.Min.Y, b.Max.Y, other.Min.Y, other.Max.Y)
}

// offArea says how far a print with some bounds reaches beyond the printable area, and where it
// would not.
func (l layout) offArea(s Site, print geometry.Rect) string {
	area, u := l.area.Rect, l.units
	if l.area.surface.closes() || !l.area.upright {
		return "the print reaches over the border line; write a place farther in, or a smaller border"
	}
	if print.W() > area.W()+geometry.Tolerance || print.H() > area.H()+geometry.Tolerance {
		return fmt.Sprintf("the print is %s, and the printable area %s; write a smaller block or a smaller border", u.FormatSize(print.Size()), u.FormatSize(area.Size()))
	}
	// Rounded inwards, so that what it says lies on the area.
	to, over := s.Origin, geometry.Edges{Top: area.Min.Y - print.Min.Y, Right: print.Max.X - area.Max.X, Bottom: print.Max.Y - area.Max.Y, Left: area.Min.X - print.Min.X}
	var sides []string
	for _, side := range []struct {
		name  string
		over  geometry.Length
		coord *geometry.Length
		less  bool
	}{{"top", over.Top, &to.Y, false}, {"right", over.Right, &to.X, true}, {"bottom", over.Bottom, &to.Y, true}, {"left", over.Left, &to.X, false}} {
		if side.over <= geometry.Tolerance {
			continue
		}
		sides = append(sides, fmt.Sprintf("%s at the %s", u.Format(u.Up(side.over)), side.name))
		if side.less {
			*side.coord = u.Down(*side.coord - side.over)
		} else {
			*side.coord = u.Up(*side.coord + side.over)
		}
	}
	turned := ""
	if s.Turn != 0 {
		turned = fmt.Sprintf(" turned %v", math.Round(float64(s.Turn)*1e6)/1e6)
	}
	return fmt.Sprintf("the print reaches over the border line, by %s; write %s", words.InWords(sides), words.Quote(u.Number(to.X)+" x "+u.Format(to.Y)+turned))
}
