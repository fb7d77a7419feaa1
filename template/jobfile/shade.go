package jobfile

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// checkShade reads a drum or a cone as it stands.
func checkShade(s section, it *job.Item) bool {
	if it.Shape == job.Cone && coneByTape(s) {
		return checkTapedCone(s, it)
	}
	s.needs("height", `"20 cm"`)
	height, ok := s.key("height").positive("20 cm")
	okLap := checkSeam(s, it)
	ok = ok && okLap
	it.Shade.Height = height
	if it.Shape == job.Cone {
		return checkCone(s, it) && ok
	}
	return checkDrum(s, it, ok)
}

// checkSeam reads the lap of a shade's seam.
func checkSeam(s section, it *job.Item) bool {
	lap := s.key("lap")
	seam, ok := lap.notNegative("10 mm")
	it.Shade.Lap = seam
	return ok || !lap.given()
}

// checkDrum reads the way round a drum: flat it is a rectangle of pi x diameter by height
// (the circumference of a circle).
func checkDrum(s section, it *job.Item, ok bool) bool {
	diameter, around := s.key("diameter"), s.key("around")
	var width geometry.Length
	switch {
	case diameter.given() && around.given():
		around.say("diameter is given too, in line %d; keep one of them", diameter.node.Line)
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
