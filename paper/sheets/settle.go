package sheets

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// settle returns d with every label that would lie wholly on no sheet moved, by the least
// that does it, onto a sheet that holds its middle: clear of lines and other labels, or of labels
// alone, where a way of a few rows of text leads to such a place. A label larger than a sheet stays. It returns what
// each sheet then shows as well.
func settle(d *paper.Drawing, areas []geometry.Rect) (*paper.Drawing, []*paper.Subset) {
	subsets := paper.Split(d, areas)
	lost := paper.Lost(d, subsets)
	if len(lost) == 0 {
		return d, subsets
	}
	moved := *d
	moved.Labels = append([]paper.Label(nil), d.Labels...)
	adrift := map[int]bool{}
	for _, i := range lost {
		adrift[i] = true
	}
	s := shelf{}
	for i, l := range d.Labels {
		if !adrift[i] {
			s.put(l.Extent())
		}
	}
	for _, i := range lost {
		l := &moved.Labels[i]
		box := l.Extent()
		best, found := geometry.Point{}, false
		lines := linesNear(d, box)
		// Ways to a free place come before ways to any.
		for _, good := range []func(geometry.Rect) bool{
			func(box geometry.Rect) bool { return s.free(box) && !struck(box, lines) },
			s.free,
			func(geometry.Rect) bool { return true },
		} {
			for _, a := range areas {
				for _, way := range waysOnto(a, box) {
					if (!found || way.Norm() < best.Norm()) && good(box.Move(way)) {
						best, found = way, true
					}
				}
			}
			if found {
				break
			}
		}
		l.At = l.At.Add(best)
		s.put(box.Move(best))
	}
	return &moved, paper.Split(&moved, areas)
}

// linesNear returns the straight steps of the lines that a label may come to lie on when it is
// moved by its own length, or by some rows.
func linesNear(d *paper.Drawing, box geometry.Rect) [][2]geometry.Point {
	around := box.Grow(max(box.W(), 4*box.H()))
	var lines [][2]geometry.Point
	for _, s := range d.Strokes {
		if !s.Bounds().Touches(around) {
			continue
		}
		for _, piece := range s.Path() {
			points := paper.Flatten(piece)
			if piece.Closed {
				points = append(points, piece.Start)
			}
			for i, b := range points[1:] {
				lines = append(lines, [2]geometry.Point{points[i], b})
			}
		}
	}
	return lines
}

// struck tells whether a line runs through a box.
func struck(box geometry.Rect, lines [][2]geometry.Point) bool {
	for _, l := range lines {
		if _, _, through := paper.ClipLine(l[0], l[1], box); through {
			return true
		}
	}
	return false
}

// waysOnto lists ways that take a box wholly onto a sheet that holds its middle: the least,
// and from there some rows up and down; none where the sheet is too small.
func waysOnto(sheet, box geometry.Rect) []geometry.Point {
	const rows = 3
	if !sheet.Contains(box.Centre()) || box.W() > sheet.W() || box.H() > sheet.H() {
		return nil
	}
	least := geometry.Pt(
		max(0, sheet.Min.X-box.Min.X)-max(0, box.Max.X-sheet.Max.X),
		max(0, sheet.Min.Y-box.Min.Y)-max(0, box.Max.Y-sheet.Max.Y))
	ways := []geometry.Point{least}
	for i := -2 * rows; i <= 2*rows; i++ {
		way := least.Add(geometry.Pt(0, geometry.Length(i)*box.H()/2))
		if i != 0 && sheet.Holds(box.Move(way)) {
			ways = append(ways, way)
		}
	}
	return ways
}

// shelf knows where text stands, by squares of the plane.
type shelf map[[2]int][]geometry.Rect

const shelfSquare = 20 * geometry.Millimetre

// squares calls visit for each square that r lies on.
func (s shelf) squares(r geometry.Rect, visit func(at [2]int)) {
	low, high := r.Min.Mul(1/float64(shelfSquare)), r.Max.Mul(1/float64(shelfSquare))
	for x := floor(low.X); x <= floor(high.X); x++ {
		for y := floor(low.Y); y <= floor(high.Y); y++ {
			visit([2]int{x, y})
		}
	}
}

func (s shelf) put(r geometry.Rect) {
	s.squares(r, func(at [2]int) { s[at] = append(s[at], r) })
}

func (s shelf) free(r geometry.Rect) bool {
	free := true
	s.squares(r, func(at [2]int) {
		for _, other := range s[at] {
			free = free && !other.Overlaps(r)
		}
	})
	return free
}

func floor(l geometry.Length) int { return int(math.Floor(float64(l))) }
