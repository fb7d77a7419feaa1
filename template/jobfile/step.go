package jobfile

import (
	"math"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/words"
)

// checkStep reads how far every other row or column is moved along, as a share of the pitch.
func checkStep(s section) float64 {
	e := s.key("step")
	text, ok := "", false
	switch v := e.value().(type) {
	case int64:
		text, ok = strconv.FormatInt(v, 10), true
	case float64:
		text, ok = strconv.FormatFloat(v, 'g', -1, 64), true
	default:
		text, ok = e.text("1/2")
	}
	if !ok {
		return 0.5
	}
	f, err := geometry.ParseNumber(text)
	if err != nil || !(f > 0.001 && f < 0.999) {
		e.say(`%s is not a share of the pitch between 0 and 1; write one such as "1/2", "1/3" or "0.25"`, words.Quote(text))
		return 0.5
	}
	return f
}

// checkGridTurn reads the degrees by which a diagonal repeat is turned, as a number or text.
func checkGridTurn(s section) geometry.Angle {
	e := s.key("grid-turn")
	degrees := 45.0
	switch v := e.value().(type) {
	case nil:
	case string:
		number := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(v), "°"))
		f, err := strconv.ParseFloat(number, 64)
		if err != nil || !(math.Abs(f) <= 360) {
			e.say("%s is not a number of degrees; write grid-turn = 45", words.Quote(v))
			break
		}
		degrees = f
	default:
		if f, ok := e.number("45", -360, 360); ok {
			degrees = f
		}
	}
	return geometry.Angle(degrees)
}
