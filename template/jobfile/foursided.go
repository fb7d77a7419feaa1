package jobfile

import (
	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// asSquare is how far the corners of a cover may be off those of a rectangle for it to be one: less
// than paper shows.
const asSquare = 0.01 * geometry.Millimetre

// checkFourSided reads a cover as it really is, by its four sides and a diagonal.
func checkFourSided(s section, it *job.Item) bool {
	const example = `["500 mm", "503 mm", "499 mm", "498 mm"]`
	s.needs("sides", example+", top, right, bottom, left")
	s.needs("diagonal", `"706 mm", from the top left corner to the bottom right one`)
	list, ok := s.key("sides").list(example)
	diagonal := s.key("diagonal")
	e, okE := diagonal.positive("706 mm")
	if !ok {
		return false
	}
	if len(list) != 4 {
		s.key("sides").say(`%d lengths are given; write four: ["top", "right", "bottom", "left"]`, len(list))
		return false
	}
	var sides [4]geometry.Length
	round := geometry.Length(0)
	for i, x := range list {
		got, good := x.positive("500 mm")
		sides[i], ok = got, ok && good
		round += got
	}
	if !ok {
		return false
	}
	show := s.r.show
	for i, x := range sides {
		if others := round - x; x >= others-geometry.Tolerance {
			list[i].say("%s is as long as the other three together, %s, or longer; measure it again, and write a shorter one", words.Quote(show(x)), show(others))
			return false
		}
	}
	if !okE {
		return false
	}
	least := max((sides[0] - sides[1]).Abs(), (sides[2] - sides[3]).Abs())
	most := min(sides[0]+sides[1], sides[2]+sides[3])
	corners, closes := geometry.Quadrilateral(sides, e)
	if !closes {
		diagonal.say("%s closes no triangle with the sides: it has to be more than %s and less than %s; measure it again, from the top left corner to the bottom right one, and write that",
			show(e), show(least), show(most))
		return false
	}
	for i, name := range cornerNames() {
		if !jutsOut(corners, i) {
			diagonal.say("with %s the %s corner points inwards; measure the sides and the diagonal again, from the top left corner to the bottom right one, and write those", show(e), name)
			return false
		}
	}
	it.Corners = squared(corners, sides)
	bounds := geometry.Polygon(it.Corners[:]).Bounds()
	it.Size, it.Outline = bounds.Size(), geometry.PolygonOutline(geometry.Polygon(it.Corners[:]))
	return true
}

// cornerNames names the corners as they come round.
func cornerNames() []string { return []string{"top left", "top right", "bottom right", "bottom left"} }

// jutsOut tells whether a corner of a figure that runs clockwise points outwards.
func jutsOut(c [4]geometry.Point, i int) bool {
	in, out := c[i].Sub(c[(i+3)%4]), c[(i+1)%4].Sub(c[i])
	return float64(in.X*out.Y-in.Y*out.X) > float64(geometry.Tolerance)*float64(in.Norm()+out.Norm())
}

// squared returns the corners of a rectangle where those given are as good as its own.
func squared(c [4]geometry.Point, sides [4]geometry.Length) [4]geometry.Point {
	w, h := (sides[0]+sides[2])/2, (sides[1]+sides[3])/2
	rect := [4]geometry.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}}
	for i := range c {
		if c[i].Distance(rect[i]) > asSquare {
			return c
		}
	}
	return rect
}
