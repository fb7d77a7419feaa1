package jobfile

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// leastSlope is the least by which the ends of a cone differ; with less the sector it is laid
// flat as has its centre too far off to draw with.
const leastSlope = 1 * geometry.Millimetre

// checkCone reads the two ends of a cone, the narrow one on top.
func checkCone(s section, it *job.Item) bool {
	s.needs("top", `"15 cm", the diameter there`)
	s.needs("bottom", `"30 cm", the diameter there`)
	top, bottom := s.key("top"), s.key("bottom")
	t, okT := top.positive("15 cm")
	b, okB := bottom.positive("30 cm")
	if !okT || !okB {
		return false
	}
	show := s.r.show
	switch {
	case b-t > -leastSlope && b-t < leastSlope:
		top.say(`is the same as bottom, or nearly; write shape = "drum" with diameter = %s`, words.Quote(show(b)))
	case t > b:
		top.say("%s is wider than the bottom, %s; swap the two, as top is the narrow end", show(t), show(b))
	case !bottom.inRange(b * math.Pi):
	default:
		it.Shade.Top, it.Shade.Bottom = t, b
		return true
	}
	return false
}

// uprightCone and tapedCone are the two ways of giving the size of a cone.
func uprightCone() []string { return []string{"top", "bottom", "height"} }

func tapedCone() []string { return []string{"top-around", "bottom-around", "slope"} }

// coneByTape tells whether a cone is given as a tape measures it.
func coneByTape(s section) bool { return slices.ContainsFunc(tapedCone(), s.has) }

// checkTapedCone reads a cone as a tape measures it: round both ends and down its side. An end is
// around/pi across, and the cone stands sqrt(slope^2 - ((D - d)/2)^2) high (Pythagoras).
func checkTapedCone(s section, it *job.Item) bool {
	ok := checkSeam(s, it)
	for _, name := range uprightCone() {
		if s.key(name).given() {
			s.key(name).say("does not go with %s; write %s, or %s by the tape",
				words.InWords(givenOf(s, tapedCone())), words.InWords(uprightCone()), words.InWords(tapedCone()))
			ok = false
		}
	}
	if !ok {
		return false
	}
	s.needs("top-around", `"50 cm", round the narrow end`)
	s.needs("bottom-around", `"95 cm", round the wide end`)
	s.needs("slope", `"25 cm", down the side from end to end`)
	top, bottom, slope := s.key("top-around"), s.key("bottom-around"), s.key("slope")
	t, okT := top.positive("50 cm")
	b, okB := bottom.positive("95 cm")
	l, okL := slope.positive("25 cm")
	if !okT || !okB || !okL {
		return false
	}
	show, half := s.r.show, (b-t)/(2*math.Pi)
	switch {
	case math.Abs(float64(2*half)) < float64(leastSlope):
		top.say(`is the same as bottom-around, or nearly; write shape = "drum" with around = %s`, words.Quote(show(b)))
	case t > b:
		top.say("%s is more than bottom-around, %s; swap the two, as top is the narrow end", show(t), show(b))
	case l <= half+geometry.Tolerance:
		slope.say("%s is too short: with these two ends it is more than %s, half of what their diameters differ by; measure down the side of the shade from end to end, and both ends again",
			show(l), show(half))
	default:
		it.Shade.Top, it.Shade.Bottom = t/math.Pi, b/math.Pi
		it.Shade.Height = geometry.Length(math.Sqrt(float64((l - half) * (l + half))))
		return true
	}
	return false
}

// givenOf returns those of some keys that are given.
func givenOf(s section, keys []string) []string {
	var given []string
	for _, k := range keys {
		if s.key(k).given() {
			given = append(given, k)
		}
	}
	return given
}
