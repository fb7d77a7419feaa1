package motif

import (
	"underlay/geometry"
	"underlay/template/picture"
)

// half is the paint at which a pixel's middle is on the edge of the print. No pixel has so much.
const half = 127.5

// rings draws round the paint of a mask where it is half of all, in pixels: from the middle of one
// pixel to the next the paint is taken to rise evenly (marching squares; W. Lorensen and H. Cline's
// marching cubes in two dimensions, 1987, from memory). Beyond the mask there is none. Paint is on the
// right of each ring's way: rings round paint run clockwise as seen, those round holes in it the
// other way. Where two pixels with paint and two without meet crosswise, those with paint are joined
// if the four together have half.
func rings(m *picture.Mask) [][]geometry.Point {
	var all [][]geometry.Point
	met := make([]bool, m.W*m.H) // a ring went up past the left of this pixel's middle
	for y := range m.H {
		for x := range m.W {
			if painted(m, x, y) && !painted(m, x-1, y) && !met[y*m.W+x] {
				all = append(all, ring(m, x-1, y, met))
			}
		}
	}
	return all
}

func painted(m *picture.Mask, x, y int) bool { return m.At(x, y) > 127 }

// crossings counts how often the edge of the paint runs between two pixels side by side: about half
// the corners of its rings.
func crossings(m *picture.Mask) int {
	n := 0
	for y := range m.H {
		last := uint8(0)
		for _, p := range m.Paint[y*m.W : (y+1)*m.W] {
			if (p > 127) != (last > 127) {
				n++
			}
			last = p
		}
	}
	return n
}

// The corners of a square of four pixels, and the ways out of it, both clockwise: way d leads out
// between the corners d and d+1.
var (
	corners = [4][2]int{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	ways    = [4][2]int{{0, -1}, {1, 0}, {0, 1}, {-1, 0}} // up, right, down, left
)

// ring follows the edge of the paint from where it goes up between a pixel and its right neighbour.
// A square is named by its top left pixel.
func ring(m *picture.Mask, x, y int, met []bool) []geometry.Point {
	var points []geometry.Point
	startX, startY := x, y-1
	x, y = startX, startY
	way := 0
	for {
		// What lies ahead on the left and on the right: behind it is plain, and painted.
		left, right := corners[way], corners[(way+1)%4]
		onLeft, onRight := painted(m, x+left[0], y+left[1]), painted(m, x+right[0], y+right[1])
		if onLeft && !onRight {
			sum := 0
			for _, c := range corners {
				sum += int(m.At(x+c[0], y+c[1]))
			}
			onRight = sum > 4*half
			onLeft = onRight
		}
		switch {
		case onLeft:
			way = (way + 3) % 4
		case !onRight:
			way = (way + 1) % 4
		}
		a, b := corners[way], corners[(way+1)%4]
		points = append(points, between(m, x+a[0], y+a[1], x+b[0], y+b[1]))
		if way == 0 {
			met[y*m.W+x+1] = true
		}
		x, y = x+ways[way][0], y+ways[way][1]
		if x == startX && y == startY && way == 0 {
			return points
		}
	}
}

// between is where the paint is half between the middles of two pixels side by side.
func between(m *picture.Mask, x, y, u, v int) geometry.Point {
	a, b := float64(m.At(x, y)), float64(m.At(u, v))
	t := (half - a) / (b - a)
	return geometry.Pt(
		geometry.Length(float64(x)+0.5+t*float64(u-x)),
		geometry.Length(float64(y)+0.5+t*float64(v-y)))
}
