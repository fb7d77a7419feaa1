package template

import (
	"math"
	"slices"
	"strings"

	"underlay/geometry"
)

// mostTurns is the most rows, and the most columns, of a matrix of turns.
const mostTurns = 50

// checkTurns reads the matrix of quarter turns; false where it is not good.
func checkTurns(s section, pass *Pass) bool {
	e := s.key("turns")
	rows, ok := e.list(`["0"]`)
	if !ok {
		return !e.given()
	}
	var turns [][]int
	for _, r := range rows {
		row, good := r.turnRow()
		ok = ok && good
		turns = append(turns, row)
	}
	if !ok {
		return false
	}
	if len(turns) > mostTurns || len(turns[0]) > mostTurns {
		e.say("more than %d turns each way; write fewer, as they are repeated anyway", mostTurns)
		return false
	}
	for i, row := range turns {
		if len(row) != len(turns[0]) {
			rows[i].say("this row has %d and the first %d; write as many turns in every row", len(row), len(turns[0]))
			return false
		}
	}
	pass.Turns = turns
	return true
}

// turnRow reads one row of the matrix: "0 90".
func (e entry) turnRow() ([]int, bool) {
	text, ok := e.text("0 90")
	if !ok {
		return nil, false
	}
	var row []int
	for _, word := range strings.Fields(text) {
		turn := slices.Index([]string{"0", "90", "180", "270"}, strings.TrimSuffix(word, "°"))
		if turn < 0 {
			e.say("%s is not a quarter turn; write 0, 90, 180 or 270, as in %s", quote(word), quote("0 90"))
			return nil, false
		}
		row = append(row, 90*turn)
	}
	if len(row) == 0 {
		e.say("this row of turns is empty; write one such as %s", quote("0 90"))
	}
	return row, len(row) > 0
}

// checkCollisions refuses quarter turns that would lay prints on each other: the turns of a
// block that is not square, where they are mixed. In all repeats with turns but the
// honeycomb every print stands in a cell of its own, so bounds decide.
func checkCollisions(s section, pass *Pass) bool {
	b := pass.Block
	if !anyQuarterTurned(pass.Turns) || !slices.Contains(lattices, pass.Repeat) {
		return true
	}
	e := s.key("turns")
	if pass.Repeat == "honeycomb" {
		if b.Shape == "hexagon" {
			e.say(`a hexagon turned by a quarter does not close up in a honeycomb; write turns of 0 and 180 only`)
			return false
		}
		return true
	}
	if allQuarterTurned(pass.Turns) || math.Abs(float64(b.Size.W-b.Size.H)) <= float64(geometry.Tolerance) {
		return true
	}
	if !collide(pass) {
		return true
	}
	e.say("block %s is not square, so prints turned by a quarter would lie on those beside them; "+
		"write turns of 0 and 180 only, or a gap of %s or more", quote(b.Name), s.r.showLeast(pass.roomToTurn()))
	return false
}

// roomToTurn is the gap with which a block can stand either way beside itself.
func (p *Pass) roomToTurn() geometry.Length {
	return geometry.Length(math.Abs(float64(p.Block.Size.W - p.Block.Size.H)))
}

// farthest is how many rows and columns away collide looks for neighbours. A print that
// reaches farther has long overlapped some.
const farthest = 64

// collide tells whether two prints overlap by more than the lap asked for. Rows of a brick
// repeat, and columns of a half-drop, lie moved along against each other by a share of the
// pitch that depends on both; every share that can be is looked at.
func collide(p *Pass) bool {
	size := p.Block.Size
	pitch := Spacing{size.W + p.Gap.Across.Least, size.H + p.Gap.Down.Least}
	at := func(row, column int) geometry.Size {
		if p.Turns[row%len(p.Turns)][column%len(p.Turns[0])]%180 != 0 {
			return size.Swap()
		}
		return size
	}
	overlap := func(a, b geometry.Size, across, down float64) bool {
		x := (a.W+b.W)/2 - pitch.Across*geometry.Length(math.Abs(across))
		y := (a.H+b.H)/2 - pitch.Down*geometry.Length(math.Abs(down))
		return x > max(0, -p.Gap.Across.Least)+geometry.Tolerance && y > max(0, -p.Gap.Down.Least)+geometry.Tolerance
	}
	rows, columns := len(p.Turns), len(p.Turns[0])
	// Along is the way in which lines of prints are moved, over the way to the next line.
	long := max(size.W, size.H)
	along, over := int(long/pitch.Across)+2, int(long/pitch.Down)+1
	if p.Repeat == "half-drop" {
		along, over = int(long/pitch.Down)+2, int(long/pitch.Across)+1
	}
	if max(along, over) > farthest {
		return true
	}
	for i := range rows * columns {
		row, column := i/columns, i%columns
		for k := 0; k <= over; k++ {
			for _, shift := range p.shifts(k) {
				for j := -along; j <= along; j++ {
					if k == 0 && j == 0 {
						continue
					}
					// A whole number of matrices further on, so that no index is negative.
					r, c, across, down := row+k, column+j+columns*farthest, float64(j)+shift, float64(k)
					if p.Repeat == "half-drop" {
						r, c, across, down = row+j+rows*farthest, column+k, float64(k), float64(j)+shift
					}
					if overlap(at(row, column), at(r, c), across, down) {
						return true
					}
				}
			}
		}
	}
	return false
}

// shifts lists by which shares of the pitch two lines of prints, k apart, can lie moved
// along against each other.
func (p *Pass) shifts(k int) []float64 {
	if p.Repeat != "brick" && p.Repeat != "half-drop" {
		return []float64{0}
	}
	_, share := math.Modf(float64(k)*p.Step + 1e-9)
	if share < 1e-8 {
		return []float64{0}
	}
	return []float64{share, share - 1}
}

// anyQuarterTurned tells whether some print lies on its side.
func anyQuarterTurned(turns [][]int) bool {
	for _, row := range turns {
		for _, t := range row {
			if t%180 != 0 {
				return true
			}
		}
	}
	return false
}
