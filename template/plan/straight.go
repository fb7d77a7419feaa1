package plan

import (
	"underlay/geometry"
)

// straight sets prints out in rows and columns. Along an axis of length A, with face w, gap g
// and pitch p = w + g, the most prints is floor((A + g) / p).
func straight(s surface) repeat { return s.lattice(lattice{pitch: facePitch}) }

// middle returns the site in the middle of four prints of a straight repeat.
func (t lattice) middle(l layout, c Choice, key geometry.Site) Site {
	if t.inRuns(l) {
		columns, rows := l.runs(c, c.Gap)
		joint := func(r run, i int) geometry.Length {
			from, _ := r.at(i + 1)
			return from - r.gap/2
		}
		return Site{Origin: l.area.Centre().Add(geometry.Pt(joint(columns, key.I), joint(rows, key.J)))}
	}
	lat := t.spots(l, c)
	from := lat.At(key)
	return l.area.surface.wrapped(l.area, Site{Origin: from.Add(lat.Across.Mul(0.5)).Add(lat.Down.Mul(0.5))}, from)
}
