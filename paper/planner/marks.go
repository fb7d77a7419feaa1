package planner

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// longestMark is how long a piece of a line one box may hold: the box of a slanted line takes in
// much that the line leaves empty.
const longestMark = 10 * geometry.Millimetre

// Boxes returns boxes of all that is drawn, for a Layout's Marks: lines in pieces, such that
// what they go round stays empty.
func Boxes(d *paper.Drawing) []geometry.Rect {
	var boxes []geometry.Rect
	for _, f := range d.Fills {
		boxes = append(boxes, f.Bounds())
	}
	for _, s := range d.Strokes {
		if b := s.Bounds(); max(b.W(), b.H()) <= longestMark {
			boxes = append(boxes, b)
			continue
		}
		for _, piece := range s.Path() {
			points := paper.Flatten(piece)
			if piece.Closed {
				points = append(points, piece.Start)
			}
			for i, to := range points[1:] {
				boxes = appendPieces(boxes, points[i], to)
			}
		}
	}
	for _, l := range d.Labels {
		boxes = append(boxes, l.Extent())
	}
	return boxes
}

// appendPieces adds the boxes of a straight line.
func appendPieces(boxes []geometry.Rect, from, to geometry.Point) []geometry.Rect {
	way := to.Sub(from)
	n := 1.0
	if way.X != 0 && way.Y != 0 {
		n = math.Ceil(float64(way.Norm() / longestMark))
	}
	for i := range int(n) {
		a, b := from.Add(way.Mul(float64(i)/n)), from.Add(way.Mul(float64(i+1)/n))
		boxes = append(boxes, geometry.Line(a, b).Bounds())
	}
	return boxes
}

// mostMarks is how many boxes of marks a planner looks at one by one; more are told by the
// squares they touch.
const mostMarks = 20_000

// square is the side of those squares.
const square = 10 * geometry.Millimetre

// squared returns boxes of the squares that some boxes touch, and of what lies between two on a
// level that is less than a hand wide: no sheet is left out for that.
func squared(boxes []geometry.Rect, bounds geometry.Rect) []geometry.Rect {
	const hand = 8 // squares
	columns, rows := int(bounds.W()/square)+1, int(bounds.H()/square)+1
	index := func(l geometry.Length, n int) int { return min(max(int(l/square), 0), n-1) }
	touched := make([]bool, columns*rows)
	for _, b := range boxes {
		b = b.Move(geometry.Pt(-bounds.Min.X, -bounds.Min.Y))
		for y := index(b.Min.Y, rows); y <= index(b.Max.Y, rows); y++ {
			for x := index(b.Min.X, columns); x <= index(b.Max.X, columns); x++ {
				touched[y*columns+x] = true
			}
		}
	}
	var list []geometry.Rect
	for y := range rows {
		last := -1 // column of the square last seen
		for x, is := range touched[y*columns : (y+1)*columns] {
			if !is {
				continue
			}
			far := bounds.Min.X + geometry.Length(x+1)*square
			if last >= 0 && x-last <= hand {
				list[len(list)-1].Max.X = far
			} else {
				at := bounds.Min.Add(geometry.Pt(geometry.Length(x)*square, geometry.Length(y)*square))
				list = append(list, geometry.Rect{Min: at, Max: geometry.Pt(far, at.Y+square)})
			}
			last = x
		}
	}
	return list
}
