package jobfile

import (
	"underlay/geometry"
	"underlay/template/words"
)

// mostCorners is the most corners an outline may have.
const mostCorners = 500

// polygon reads the corners of an outline: three or more, no side crossing or touching
// another. A last corner that repeats the first only closes the outline, and is dropped.
func (e entry) polygon() (geometry.Polygon, bool) {
	points, ok := e.list(`["0 x 0 mm", "90 x 0 mm", "45 x 80 mm"]`)
	if !ok {
		return nil, false
	}
	var corners geometry.Polygon
	for _, p := range points {
		if c, good := p.point("0 x 0 mm"); good {
			corners = append(corners, c)
		} else {
			ok = false
		}
	}
	if !ok {
		return nil, false
	}
	if n := len(corners); n > 1 && corners[0].Near(corners[n-1]) {
		corners = corners[:n-1]
	}
	switch n := len(corners); {
	case n < 3:
		e.say("an outline needs three corners or more; write %s",
			`them as in ["0 x 0 mm", "90 x 0 mm", "45 x 80 mm"]`)
		return nil, false
	case n > mostCorners:
		e.say("%d corners are more than an outline may have; write %d or fewer", n, mostCorners)
		return nil, false
	}
	for i, c := range corners {
		next := (i + 1) % len(corners)
		if c.Near(corners[next]) {
			points[i].say("corners %d and %d are at the same place; take one of them out", i+1, next+1)
			return nil, false
		}
	}
	if i, j, crossed := corners.Crossing(); crossed {
		e.say("side %s meets side %s; write the corners in the order in which they come round the edge",
			sideName(i, len(corners)), sideName(j, len(corners)))
		return nil, false
	}
	if corners.Area() < 1 {
		e.say("the outline holds less than 1 mm2; write corners farther apart, and not in one line")
		return nil, false
	}
	bounds := corners.Bounds()
	return corners, e.inRange(bounds.W(), bounds.H())
}

// sideName names a side by the numbers of its corners, counted from 1.
func sideName(i, n int) string {
	return words.PlainNumber(float64(i+1)) + " to " + words.PlainNumber(float64((i+1)%n+1))
}
