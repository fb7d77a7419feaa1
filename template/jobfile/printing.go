package jobfile

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/words"
)

// checkPrinter reads [printer].
func checkPrinter(s section) job.Printer {
	across, down := s.key("across"), s.key("down")
	a, okA := across.positive("180 mm")
	d, okD := down.positive("250 mm")
	if across.given() != down.given() {
		if across.given() {
			s.needs("down", `"250 mm", the long bar as you measured it`)
		} else {
			s.needs("across", `"180 mm", the short bar as you measured it`)
		}
		return job.Printer{}
	}
	if !okA || !okD {
		return job.Printer{}
	}
	off := func(measured, nominal geometry.Length) bool {
		return math.Abs(float64(measured-nominal)) > float64(nominal*job.MostOff+geometry.Tolerance)
	}
	show := s.r.show
	if off(a, paper.RulerAcross) && off(d, paper.RulerDown) && !off(a, paper.RulerDown) && !off(d, paper.RulerAcross) {
		across.say("%s and down %s are swapped; write the bar of 180 mm as across and the one of 250 mm as down", show(a), show(d))
		return job.Printer{}
	}
	check := func(e entry, measured, nominal geometry.Length) bool {
		if !off(measured, nominal) {
			return true
		}
		e.say("%s is more than 3 %% off %s, so the sheet was not printed at 100 %% but \"fit to page\"; "+
			"print the ruler page again at 100 %% (\"actual size\") and measure that", show(measured), show(nominal))
		return false
	}
	if good := check(across, a, paper.RulerAcross); !check(down, d, paper.RulerDown) || !good {
		return job.Printer{}
	}
	return job.Printer{Across: a, Down: d}
}

// longestTime is the most seconds one print may take: a day.
const longestTime = 86400

// checkPrinting reads [printing].
func checkPrinting(s section) job.Printing {
	var p job.Printing
	hand, _ := s.word("hand")
	p.Hand = job.Hand(hand)
	p.SecondsAPrint, p.HasSecondsPrint = s.key("seconds-a-print").number("75", 0, longestTime)
	p.SecondsAColour, p.HasSecondsColour = s.key("seconds-a-colour").number("40", 0, longestTime)
	p.PaintCover, p.HasPaintCover = parsed(s.key("paint-cover"), "90 ml/m2", parsePaintCover)
	return p
}

var paintCover = regexp.MustCompile(`^([0-9]*\.?[0-9]+)\s*(ml|l)\s*/\s*(m2|m²|m\^2)$`)

// parsePaintCover reads a volume of paint a square metre and returns millilitres.
func parsePaintCover(s string) (float64, error) {
	m := paintCover.FindStringSubmatch(strings.ToLower(strings.TrimSpace(s)))
	if m == nil {
		return 0, fmt.Errorf(`%s is not an amount of paint; write one such as "90 ml/m2"`, words.Quote(s))
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err == nil && m[2] == "l" {
		v *= 1000
	}
	// Ten litres would stand a centimetre deep.
	if err != nil || v > 10000 {
		return 0, fmt.Errorf(`%s is more than 10 l/m2; write an amount such as "90 ml/m2"`, words.Quote(s))
	}
	return v, nil
}
