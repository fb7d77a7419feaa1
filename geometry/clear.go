package geometry

// ClearOf tells whether two outlines keep at least gap apart, within Tolerance. With a gap of 0 they
// may touch, but for Tolerance, and not overlap. What is no outline is clear of everything. It is
// Distance with an early end, for those who ask again and again.
func (o Outline) ClearOf(p Outline, gap Length) bool {
	if o.None() || p.None() {
		return true
	}
	// Outlines that touch and outlines that overlap are both 0 apart.
	gap = max(gap, 2*Tolerance) - Tolerance
	a, b := o.Bounds().Grow(gap), p.Bounds()
	if !a.Touches(b) {
		return true
	}
	if o.radius > 0 || p.radius > 0 {
		return o.Distance(p) >= gap
	}
	if o.corners.Contains(p.corners[0]) || p.corners.Contains(o.corners[0]) {
		return false
	}
	near := b.Grow(gap)
	for i, c := range o.corners {
		d := o.corners[(i+1)%len(o.corners)]
		box := piece{c, d}.box()
		if !near.Touches(box) {
			continue
		}
		box = box.Grow(gap)
		for j, e := range p.corners {
			f := p.corners[(j+1)%len(p.corners)]
			if !box.Touches(piece{e, f}.box()) {
				continue
			}
			if meet(c, d, e, f) || min(segmentDistance(c, e, f), segmentDistance(d, e, f), segmentDistance(e, c, d), segmentDistance(f, c, d)) < gap {
				return false
			}
		}
	}
	return true
}
