package sheets

import (
	"math/bits"

	"underlay/geometry"
	"underlay/paper"
)

// Squares of a selvedge: their sides, and from one to the next; between two groups of them there
// is half a step more.
const (
	selvedgeSquare = 2.2 * geometry.Millimetre
	selvedgePitch  = 2.8 * geometry.Millimetre
)

// selvedgePen draws the open squares.
var selvedgePen = paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}}

// selvedgeBits returns a mark as groups of squares, true for a filled one: a group for each sign,
// its place in the alphabet or the figures in binary digits, the highest first. No two marks of
// letters and figures give the same: groups of letters have five squares, those of figures four.
func selvedgeBits(mark string) [][]bool {
	var groups [][]bool
	for _, r := range mark {
		value, n := uint(r-'A'), 5
		switch {
		case r >= '0' && r <= '9':
			value, n = uint(r-'0'), 4
		case r < 'A' || r > 'Z':
			value, n = uint(r), bits.UintSize-bits.LeadingZeros(uint(r))
		}
		group := make([]bool, n)
		for i := range group {
			group[i] = value>>(n-1-i)&1 == 1
		}
		groups = append(groups, group)
	}
	return groups
}

// selvedge returns the squares of a mark in a row, or in a column, each so many times as large as
// usual, between a bar where they begin and a shorter one where they end.
func selvedge(mark string, down bool, k geometry.Length) paper.Drawing {
	var d paper.Drawing
	side, pitch := selvedgeSquare*k, selvedgePitch*k
	at := func(along, aside geometry.Length) geometry.Point {
		if down {
			return geometry.Pt(aside, along)
		}
		return geometry.Pt(along, aside)
	}
	bar := func(along, from, to geometry.Length) {
		r := geometry.Rect{Min: at(along-0.25, from), Max: at(along+0.25, to)}
		d.Fill(r.Polygon().Path(), paper.Ink{})
	}
	x := geometry.Length(0)
	bar(x, -side*0.2, side*1.2)
	x += pitch - side
	for i, group := range selvedgeBits(mark) {
		if i > 0 {
			x += pitch / 2
		}
		for _, filled := range group {
			a, b := at(x, 0), at(x+side, side)
			r := geometry.Rect{Min: a, Max: b}
			if filled {
				d.Fill(r.Polygon().Path(), paper.Ink{})
			} else {
				d.Stroke(r.Grow(-selvedgePen.Width/2).Polygon().Path(), selvedgePen)
			}
			x += pitch
		}
	}
	bar(x, side*0.25, side*0.75)
	return sign(d)
}
