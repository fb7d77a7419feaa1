package jobfile

import (
	"slices"
	"strings"

	"underlay/template/job"
	"underlay/template/words"
)

// mostTurns is the most rows, and the most columns, of a matrix of turns.
const mostTurns = 50

// checkTurns reads the matrix of quarter turns; false where it is not good.
func checkTurns(s section, pass *job.Pass) bool {
	e := s.key("turns")
	rows, ok := e.list(`["0"]`)
	if !ok {
		return !e.given()
	}
	var turns job.Turns
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
			e.say("%s is not a quarter turn; write 0, 90, 180 or 270, as in %s", words.Quote(word), words.Quote("0 90"))
			return nil, false
		}
		row = append(row, 90*turn)
	}
	if len(row) == 0 {
		e.say("this row of turns is empty; write one such as %s", words.Quote("0 90"))
	}
	return row, len(row) > 0
}

// checkCombs refuses a quarter turn where it takes a honeycomb apart: a hexagon has its points
// above and below, and closes up that way only.
func checkCombs(s section, pass *job.Pass) bool {
	hexagon := func(p job.Part) bool { return p.Block.Shape == job.HexagonFace }
	if pass.Repeat != job.Honeycomb || !slices.ContainsFunc(pass.Parts(), hexagon) || !pass.Turns.AnyAside() {
		return true
	}
	s.key("turns").say(`a hexagon turned by a quarter does not close up in a honeycomb; write turns of 0 and 180 only`)
	return false
}
