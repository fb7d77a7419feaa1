package template

import "underlay/geometry"

// Serves is the range of cloth sizes one guide is right for, from Least up to, not including,
// Below. As the pattern is centred on the area, a guide with n prints of span S serves any
// width from S and the borders up to where one more print would fit.
type Serves struct{ Least, Below geometry.Length }

// axis is one direction of a straight repeat: the room there is, the face, and how the gap and
// the counts may vary.
type axis struct {
	room    geometry.Length // of the printable area
	face    geometry.Length
	gap     Gap
	borders [2]geometry.Length // asked, on both ends
	hem     geometry.Length
	step    int // 1, or 2 where the job fixes what sits on the centre line
}

// axes returns the two directions of a straight pass.
func axes(item *Item, l layout) (across, down axis) {
	p, b, r := l.pass, item.Border, l.area.Rect
	across = axis{r.W(), l.cell.W, p.Gap.Across, [2]geometry.Length{b.Left, b.Right}, item.Hem, 1}
	down = axis{r.H(), l.cell.H, p.Gap.Down, [2]geometry.Length{b.Top, b.Bottom}, item.Hem, 1}
	if p.CentreAcross != OnBest {
		across.step = 2
	}
	if p.CentreDown != OnBest {
		down.step = 2
	}
	return across, down
}

// span returns how much n prints take up with the gap g between them.
func (a axis) span(n int, g geometry.Length) geometry.Length {
	return geometry.Length(n)*a.face + geometry.Length(n-1)*g
}

// serves returns the cloth sizes a row of n prints with the gap g serves.
func (a axis) serves(n int, g geometry.Length) Serves {
	both := a.borders[0] + a.borders[1]
	return Serves{a.span(n, g) + both, a.span(n+a.step, a.gap.Least) + both}
}
