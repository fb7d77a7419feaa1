package paper

import "underlay/geometry"

// settle returns d with every label that would lie wholly on no sheet moved, by the least
// that does it, onto a sheet that holds its middle. A label larger than a sheet stays.
func settle(d *Drawing, areas []geometry.Rect) *Drawing {
	lost := Lost(d, Split(d, areas))
	if len(lost) == 0 {
		return d
	}
	moved := *d
	moved.Labels = append([]Label(nil), d.Labels...)
	for _, i := range lost {
		l := &moved.Labels[i]
		box := l.Extent()
		var best geometry.Point
		found := false
		for _, a := range areas {
			if !a.Contains(box.Centre()) || box.W() > a.W() || box.H() > a.H() {
				continue
			}
			way := geometry.Pt(
				max(0, a.Min.X-box.Min.X)-max(0, box.Max.X-a.Max.X),
				max(0, a.Min.Y-box.Min.Y)-max(0, box.Max.Y-a.Max.Y))
			if !found || way.Norm() < best.Norm() {
				best, found = way, true
			}
		}
		l.At = l.At.Add(best)
	}
	return &moved
}
