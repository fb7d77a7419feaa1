package say

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/plan"
)

// pictureLines is the most lines a picture of the prints has.
const pictureLines = 30

// numberSpace is the room between the numbers of two neighbours.
const numberSpace = 2

// spot is where the number of a print stands in the picture.
type spot struct{ line, column, number int }

// picture adds the numbers of the prints, set out as they lie. Where they are too many for the
// width, those round the first print are shown.
func (f *fitText) picture(p *plan.PassPlan) {
	const indent = "    "
	width := len(strconv.Itoa(p.First + len(p.Prints) - 1))
	spots := spots(p, width)
	first, last := spots[0], spot{}
	for _, s := range spots {
		last.line, last.column = max(last.line, s.line), max(last.column, s.column)
	}
	room := fitWidth - len(indent) - width
	// The window begins at left and top.
	window := func(at, last, room int) int { return max(0, min(at-room/2, last-room)) }
	left, top := window(first.column, last.column, room), window(first.line, last.line, pictureLines-1)
	left -= left % (width + numberSpace) // no column is cut through
	rows := make([][]byte, min(last.line, pictureLines-1)+1)
	for i := range rows {
		rows[i] = []byte(strings.Repeat(" ", room+width))
	}
	count := 0
	for _, s := range spots {
		line, column := s.line-top, s.column-left
		if line < 0 || line >= len(rows) || column < 0 || column > room {
			continue
		}
		count++
		number := strconv.Itoa(s.number)
		copy(rows[line][column+width-len(number):], number)
	}
	what := "The prints in the order of printing, the far edge at the top:"
	if count < len(spots) {
		what = fmt.Sprintf("The %d prints round the first, of %d, in the order of printing; the others are left out:", count, len(spots))
	}
	f.say(indent, what)
	for _, row := range rows {
		f.lines = append(f.lines, strings.TrimRight(indent+string(row), " "))
	}
}

// spots sets the numbers out on lines, each print of a pass at its place: the prints of a row
// on one line, neighbours in it as far apart as their numbers, width figures wide, need.
func spots(p *plan.PassPlan, width int) []spot {
	byY := make([]int, len(p.Prints))
	for i := range byY {
		byY[i] = i
	}
	at := func(i int) geometry.Point { return p.Prints[i].Origin }
	slices.SortFunc(byY, func(i, j int) int { return cmp.Compare(at(i).Y, at(j).Y) })
	size := p.Pass.Block.Size
	spots := make([]spot, len(p.Prints))
	var rows [][]int
	begins := geometry.Length(math.Inf(-1))
	for _, i := range byY {
		if at(i).Y-begins > min(size.W, size.H)/4 {
			begins = at(i).Y
			rows = append(rows, nil)
		}
		row := len(rows) - 1
		rows[row] = append(rows[row], i)
		spots[i] = spot{line: row, number: p.Prints[i].Number}
	}
	closest, least := geometry.Length(math.Inf(1)), geometry.Length(math.Inf(1))
	for _, row := range rows {
		slices.SortFunc(row, func(i, j int) int { return cmp.Compare(at(i).X, at(j).X) })
		least = min(least, at(row[0]).X)
		for k := 1; k < len(row); k++ {
			closest = min(closest, at(row[k]).X-at(row[k-1]).X)
		}
	}
	if math.IsInf(float64(closest), 1) {
		closest = size.W
	}
	// Prints of one line stand at least half a face apart unless one lies on the other.
	closest = max(closest, min(size.W, size.H)/2)
	for i := range spots {
		spots[i].column = int(math.Round(float64((at(i).X - least) / closest * geometry.Length(width+numberSpace))))
	}
	return spots
}
