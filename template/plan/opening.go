package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// open widens the gaps of a choice within the job's range, as far as keeps every print on the
// area: the border comes as near as it can, from above, to the border asked. One print across
// (or down) keeps the least gap.
func (t lattice) open(l layout, c Choice, sites []Site) Choice {
	if len(sites) == 0 {
		return c
	}
	if t.inRuns(l) {
		return t.openInRuns(l, c, sites)
	}
	extent, spread := t.extent(l, sites)
	across, down := l.pass.Gap.Across, l.pass.Gap.Down
	if spread.X <= geometry.Tolerance || l.area.around > 0 {
		across.Most, across.Least = c.Gap.Across, c.Gap.Across
	}
	if spread.Y <= geometry.Tolerance {
		down.Most = down.Least
	}
	if t.oneGap {
		if l.area.around > 0 {
			return c
		}
	}
	switch {
	case t.exact(l) && t.oneGap:
		// Everything grows as the pitch across does.
		k := min(stretches(l.area.Rect.W()-l.cell.W, extent.X), stretches(l.area.Rect.H()-l.cell.H, extent.Y))
		g := clamp(across, c.Pitch.Across*geometry.Length(k)-l.cell.W)
		c.Gap = job.Spacing{Across: g, Down: g}
	case l.pass.GapEven && l.area.around == 0:
		g := c.Gap.Across
		switch kx, ky := stretches(l.area.Rect.W()-l.cell.W, extent.X), stretches(l.area.Rect.H()-l.cell.H, extent.Y); {
		case max(spread.X, spread.Y) <= geometry.Tolerance:
		case t.exact(l):
			g = clamp(l.pass.Gap.Across, min(c.Pitch.Across*geometry.Length(kx)-l.cell.W, c.Pitch.Down*geometry.Length(ky)-l.cell.H))
		default:
			g = widest(l.pass.Gap.Across, func(g geometry.Length) bool { return t.keeps(l, c, job.Spacing{Across: g, Down: g}, sites) })
		}
		c.Gap = job.Spacing{Across: g, Down: g}
	case l.pass.GapEven:
	case t.exact(l):
		kx, ky := stretches(l.area.Rect.W()-l.cell.W, extent.X), stretches(l.area.Rect.H()-l.cell.H, extent.Y)
		c.Gap.Across = clamp(across, c.Pitch.Across*geometry.Length(kx)-l.cell.W)
		c.Gap.Down = clamp(down, c.Pitch.Down*geometry.Length(ky)-l.cell.H)
	case t.oneGap:
		g := widest(across, func(g geometry.Length) bool { return t.keeps(l, c, job.Spacing{Across: g, Down: g}, sites) })
		c.Gap = job.Spacing{Across: g, Down: g}
	default:
		// Each is opened with the other at its least; where the prints then do not all keep to the
		// area, both give way in the same share.
		keeps := func(g job.Spacing) bool { return t.keeps(l, c, g, sites) }
		most := job.Spacing{
			Across: widest(across, func(g geometry.Length) bool { return keeps(job.Spacing{Across: g, Down: c.Gap.Down}) }),
			Down:   widest(down, func(g geometry.Length) bool { return keeps(job.Spacing{Across: c.Gap.Across, Down: g}) }),
		}
		both := func(share geometry.Length) job.Spacing {
			return job.Spacing{
				Across: c.Gap.Across + share*(most.Across-c.Gap.Across), Down: c.Gap.Down + share*(most.Down-c.Gap.Down),
			}
		}
		share := geometry.Length(1)
		if most.Across > c.Gap.Across && most.Down > c.Gap.Down {
			share = widest(job.Gap{Least: 0, Most: 1}, func(share geometry.Length) bool { return keeps(both(share)) })
		}
		c.Gap = both(share)
	}
	c.Pitch = t.pitch(l, c.Gap)
	return c
}

// extent returns how far the origins reach from the centre of the area, and how far from each
// other, along and across the rows of the lattice.
func (t lattice) extent(l layout, sites []Site) (extent, spread geometry.Point) {
	turn, centre := -t.turnOf(l.pass), l.area.Centre()
	var low, high geometry.Point
	for i, s := range sites {
		d := s.Origin.Sub(centre).Turn(turn)
		if i == 0 {
			low, high = d, d
		}
		low, high = geometry.Pt(min(low.X, d.X), min(low.Y, d.Y)), geometry.Pt(max(high.X, d.X), max(high.Y, d.Y))
	}
	return geometry.Pt(max(high.X, -low.X), max(high.Y, -low.Y)), high.Sub(low)
}

// stretches is how many times an extent goes into half of the room there is for it.
func stretches(room, extent geometry.Length) float64 {
	if extent <= geometry.Tolerance {
		return math.Inf(1)
	}
	return float64(room / 2 / extent)
}

// clamp returns the length of a range that is nearest to g.
func clamp(r job.Gap, g geometry.Length) geometry.Length { return max(r.Least, min(r.Most, g)) }

// keeps tells whether every site still lies on the area with another gap.
func (t lattice) keeps(l layout, c Choice, gap job.Spacing, sites []Site) bool {
	c.Gap, c.Pitch = gap, t.pitch(l, gap)
	lat := t.spots(l, c)
	for _, s := range sites {
		s.Origin = lat.At(s.key)
		if !l.holds(s) {
			return false
		}
	}
	return true
}

// finest is the step to which a gap is worked out by trial.
const finest = 1e-5 * geometry.Millimetre

// widest returns the widest gap of a range up to which keep stays true, by halving.
func widest(r job.Gap, keep func(geometry.Length) bool) geometry.Length {
	if r.Most <= r.Least {
		return r.Least
	}
	if keep(r.Most) {
		return r.Most
	}
	low, high := r.Least, r.Most
	for high-low > finest/16 {
		if mid := (low + high) / 2; keep(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return max(r.Least, geometry.Length(math.Floor(float64(low/finest)))*finest)
}
