package jobfile

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

const (
	mostPlaces = 2000          // of one pass
	mostTossed = 200_000       // that a pass may ask for
	mostSeed   = 1_000_000_000 // the largest seed
)

// checkSingles reads what belongs to prints that stand for themselves: their places, or how they are
// strewn.
func checkSingles(s section, pass *job.Pass) {
	if pass.Repeat == job.Tossed {
		pass.Toss.Seed = 1
	}
	if n, ok := s.key("seed").seed(); ok {
		pass.Toss.Seed = n
	}
	if n, ok := s.key("count").count("40", mostTossed); ok {
		pass.Toss.Count = n
	}
	pass.Toss.AnyTurn, _ = s.key("any-turn").yes()
	at := s.key("at")
	if pass.Repeat == job.Placed && !s.has("between") && !s.has("on") {
		s.needs("at", `["120 x 80 mm"], the middle of each print from the top left corner`)
	}
	list, _ := at.list(`["120 x 80 mm"]`)
	if len(list) > mostPlaces {
		at.say("more than %d places; write them as two passes", mostPlaces)
		return
	}
	for _, e := range list {
		place, ok := parsed(e, "120 x 80 mm", parsePlace)
		if !ok || !e.inRange(place.At.X, place.At.Y) {
			continue
		}
		place.Line = e.node.Line
		pass.Places = append(pass.Places, place)
	}
	if pass.Tops == job.TopsUp && pass.Repeat.Framed() {
		s.key("tops").say(`"up" is for repeat = "corners"; the prints of a frame turn with its sides: write "out" or "in"`)
	}
}

// parsePlace reads a place, "120 x 80 mm", and the turn there, "120 x 80 mm turned 30".
func parsePlace(text string) (job.Place, error) {
	where, turn, turned := strings.Cut(text, "turned")
	at, err := geometry.ParsePoint(strings.TrimSpace(where))
	if err != nil || !turned {
		return job.Place{At: at}, err
	}
	degrees := strings.TrimSpace(turn)
	for _, unit := range []string{"degrees", "degree", "deg", "°"} {
		degrees = strings.TrimSpace(strings.TrimSuffix(degrees, unit))
	}
	f, err := strconv.ParseFloat(degrees, 64)
	switch {
	case degrees == "":
		return job.Place{}, errors.New(`no degrees after turned; write them as in "120 x 80 mm turned 30"`)
	case err != nil || !(math.Abs(f) <= 360):
		return job.Place{}, fmt.Errorf(`%s is not a number of degrees up to 360; write the turn as in "120 x 80 mm turned 30"`, words.Quote(degrees))
	}
	return job.Place{At: at, Turn: geometry.Angle(f).Normal()}, nil
}

// seed reads a whole number of 0 or more.
func (e entry) seed() (uint64, bool) {
	n, ok := e.number("1", 0, mostSeed)
	if ok && n != math.Trunc(n) {
		e.say("%s is not a whole number; write one such as 1", words.Shown(e.node.Source))
		return 0, false
	}
	return uint64(n), ok
}

// checkTossGap refuses a gap that strewn prints cannot have: a range, as nothing is opened, and less
// than none, as none lies on another.
func checkTossGap(s section, pass *job.Pass) bool {
	gap := pass.Gap.Across
	switch {
	case pass.Repeat != job.Tossed:
	case gap.Most > gap.Least:
		s.key("gap").say("tossed prints lie where they fall, so a range has nothing to open; write the least gap alone, gap = %s", words.Quote(s.r.show(max(0, gap.Least))))
		return false
	case gap.Least < 0:
		s.key("gap").say("tossed prints do not lap; write the plain cloth between two of them, gap = %s or more", words.Quote(s.r.show(0)))
		return false
	}
	return true
}

// checkOneTurn refuses a matrix of turns for a single print.
func checkOneTurn(s section, pass *job.Pass) bool {
	if pass.Repeat == job.One && (pass.Turns.Columns() > 1 || pass.Turns.Rows() > 1) {
		s.key("turns").say("a single print has one turn; write turns = [%s]", words.Quote(strconv.Itoa(pass.Turns[0][0])))
		return false
	}
	return true
}
