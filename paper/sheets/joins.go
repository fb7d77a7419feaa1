package sheets

import (
	"underlay/geometry"
	"underlay/paper"
)

// Furniture is drawn with few pens, none as wide as the guide's main lines.
var (
	trimPen  = paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}}
	coverPen = paper.Pen{Type: paper.Dashed, Width: 0.25, Ink: paper.Ink{}}
	crossPen = paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}}
)

// LeastCrossed is the least overlap of sheets that has room for crosses.
const LeastCrossed = 2 * geometry.Millimetre

func neighbour(s paper.Sheet, e paper.Side) string {
	return [...]string{paper.LeftSide: s.Left, paper.TopSide: s.Above, paper.RightSide: s.Right, paper.BottomSide: s.Below}[e]
}

func cut(e paper.Side) bool { return e == paper.LeftSide || e == paper.TopSide }

// joinLine returns the line along which the sheet is joined to its neighbour on that side, from
// end to end of the sheet, in the layout's frame.
func joinLine(s paper.Sheet, e paper.Side) (from, to geometry.Point) {
	a, k := s.Area, s.Kept
	switch e {
	case paper.LeftSide:
		return geometry.Pt(k.Min.X, a.Min.Y), geometry.Pt(k.Min.X, a.Max.Y)
	case paper.RightSide:
		return geometry.Pt(k.Max.X, a.Min.Y), geometry.Pt(k.Max.X, a.Max.Y)
	case paper.TopSide:
		return geometry.Pt(a.Min.X, k.Min.Y), geometry.Pt(a.Max.X, k.Min.Y)
	}
	return geometry.Pt(a.Min.X, k.Max.Y), geometry.Pt(a.Max.X, k.Max.Y)
}

// lip returns the strip of the page beyond the join line on that side, without its two ends:
// it is cut away, or covered by the neighbour, and the neighbour shows all that is on it.
func lip(s paper.Sheet, e paper.Side) geometry.Rect {
	const hair = 0.2 // keeps off the join line itself
	u := s.Usable()
	k := geometry.Rect{Min: s.OnPage(s.Kept.Min), Max: s.OnPage(s.Kept.Max)}
	switch e {
	case paper.LeftSide:
		return geometry.Rect{Min: geometry.Pt(u.Min.X, k.Min.Y), Max: geometry.Pt(k.Min.X-hair, k.Max.Y)}
	case paper.RightSide:
		return geometry.Rect{Min: geometry.Pt(k.Max.X+hair, k.Min.Y), Max: geometry.Pt(u.Max.X, k.Max.Y)}
	case paper.TopSide:
		return geometry.Rect{Min: geometry.Pt(k.Min.X, u.Min.Y), Max: geometry.Pt(k.Max.X, k.Min.Y-hair)}
	}
	return geometry.Rect{Min: geometry.Pt(k.Min.X, k.Max.Y+hair), Max: geometry.Pt(k.Max.X, u.Max.Y)}
}

// crossSpots chooses where the crosses of a join stand on it: near a sixth, the middle and five
// sixths of what lies clear of the joins at its ends, moved along the line
// off text, and off lines where that can be. They are the same points for both sheets, which
// show the same there; sp holds what this one shows. None where the overlap is too small to
// draw one.
func crossSpots(s paper.Sheet, e paper.Side, overlap geometry.Length, sp *space) []geometry.Point {
	if overlap < LeastCrossed {
		return nil
	}
	from, to := joinLine(s, e)
	if e == paper.LeftSide || e == paper.RightSide {
		from.Y, to.Y = s.Cell.Min.Y, s.Cell.Max.Y
	} else {
		from.X, to.X = s.Cell.Min.X, s.Cell.Max.X
	}
	length := from.Distance(to)
	along := to.Sub(from).Mul(1 / float64(length))
	clear := overlap / 2
	parts := []float64{1. / 6, 1. / 2, 5. / 6}
	if length-2*clear < 40 {
		clear, parts = min(paper.CrossArm, length/8), []float64{1. / 4, 3. / 4}
	}
	span := length - 2*clear
	arm := crossReach(overlap)
	var spots []geometry.Point
	for _, part := range parts {
		middle := clear + span*geometry.Length(part)
		best, least := middle, -1
		for i := range 21 {
			// 0, 1, -1, 2, -2 ... steps from the middle of the part.
			off := geometry.Length((i + 1) / 2)
			if i%2 == 0 {
				off = -off
			}
			at := middle + off*span/100
			p := from.Add(along.Mul(float64(at)))
			n, free := sp.crossed(rectOnPage(s, geometry.RectAround(p, geometry.Size{W: 2 * arm, H: 2 * arm})))
			if free && (least < 0 || n < least) {
				best, least = at, n
			}
		}
		spots = append(spots, from.Add(along.Mul(float64(best))))
	}
	return spots
}

func crossReach(overlap geometry.Length) geometry.Length { return min(paper.CrossArm, overlap/2) }

// rectOnPage returns where a part of the layout lies on the page.
func rectOnPage(s paper.Sheet, r geometry.Rect) geometry.Rect {
	return geometry.Rect{Min: s.OnPage(r.Min), Max: s.OnPage(r.Max)}
}

// cross returns the path of a cross.
func cross(p geometry.Point, arm geometry.Length) geometry.Path {
	return append(
		geometry.Line(geometry.Pt(p.X-arm, p.Y), geometry.Pt(p.X+arm, p.Y)),
		geometry.Line(geometry.Pt(p.X, p.Y-arm), geometry.Pt(p.X, p.Y+arm))...)
}
