package job

import (
	"slices"

	"underlay/geometry"
)

// Seen returns the item as one of its faces shows it, of a cloth so wide; turned tells whether
// that is another than the first. The first face is as the job says, without the zones that are
// on others alone. Any other is turned over like a leaf: the outline, the left and the right
// border and the zones that go through change sides; a zone on that face alone is given as
// seen there.
func (it *Item) Seen(face string, width geometry.Length) (seen *Item, turned bool) {
	turned = len(it.Faces) > 0 && face != it.Faces[0]
	elsewhere := func(z Zone) bool { return z.Face != "" && z.Face != face }
	if !turned && !slices.ContainsFunc(it.Zones, elsewhere) {
		return it, false
	}
	s := *it
	s.Zones = nil
	for _, z := range it.Zones {
		switch {
		case elsewhere(z):
			continue
		case z.Face == "" && turned:
			z.Rect = z.Rect.Mirror(width)
		}
		s.Zones = append(s.Zones, z)
	}
	if turned {
		s.Outline, s.Border = it.Outline.Mirror(width), it.Border.Mirror()
		if it.Shape == FourSided {
			for i, from := range [4]int{1, 0, 3, 2} {
				s.Corners[i] = it.Corners[from].Mirror(width)
			}
		}
	}
	return &s, turned
}

// Alike tells whether the cloth of two items lies alike: outline, borders, and the zones with
// their names.
func (it *Item) Alike(other *Item) bool {
	near := func(a, b geometry.Rect) bool { return a.Min.Near(b.Min) && a.Max.Near(b.Max) }
	has := func(zones []Zone, z Zone) bool {
		return slices.ContainsFunc(zones, func(y Zone) bool { return y.Name == z.Name && near(y.Rect, z.Rect) })
	}
	if len(it.Zones) != len(other.Zones) || it.Border != other.Border || !it.Outline.Near(other.Outline) {
		return false
	}
	for _, z := range it.Zones {
		if !has(other.Zones, z) {
			return false
		}
	}
	return true
}
