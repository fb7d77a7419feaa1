package jobfile

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// checkShade reads a drum or a cone as it stands.
func checkShade(s section, it *job.Item) bool {
	s.needs("height", `"20 cm"`)
	height, ok := s.key("height").positive("20 cm")
	lap := s.key("lap")
	seam, okLap := lap.notNegative("10 mm")
	ok = ok && (okLap || !lap.given())
	it.Shade.Height, it.Shade.Lap = height, seam
	if it.Shape == job.Cone {
		return checkCone(s, it) && ok
	}
	return checkDrum(s, it, ok)
}

// checkDrum reads the way round a drum: flat it is a rectangle of pi x diameter by height
// (the circumference of a circle).
func checkDrum(s section, it *job.Item, ok bool) bool {
	diameter, around := s.key("diameter"), s.key("around")
	var width geometry.Length
	switch {
	case diameter.given() && around.given():
		around.say("diameter is given too, in line %d; keep one of them", diameter.node.line)
		return false
	case around.given():
		got, good := around.positive("80 cm")
		width, ok = got, ok && good
		it.Shade.Top = got / math.Pi
	case diameter.given():
		got, good := diameter.positive("25 cm")
		width, ok = got*math.Pi, ok && good && diameter.inRange(got*math.Pi)
		it.Shade.Top = got
	default:
		if !s.has("around") {
			s.needs("diameter", `"25 cm", or around = "80 cm" by the tape`)
		}
		return false
	}
	it.Shade.Bottom = it.Shade.Top
	it.Size = geometry.Size{W: width, H: it.Shade.Height}
	if ok && it.Shade.Lap >= width {
		s.key("lap").say("the seam is wider than the shade is round, %s; write a smaller one", s.r.show(width))
		return false
	}
	if ok {
		it.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, it.Size))
	}
	return ok
}

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
