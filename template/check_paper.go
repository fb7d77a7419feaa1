package template

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// leastStep is the least a sheet must add to the sheets before it.
const leastStep = 20 * geometry.Millimetre

// checkPaper reads [paper].
func checkPaper(s section, raw *rawPaper) Paper {
	p := Paper{
		Margin:  7 * geometry.Millimetre,
		Overlap: 12 * geometry.Millimetre,
		Reach:   25 * geometry.Millimetre,
	}
	size := s.key("size", raw.Size)
	name, fits := size.text("A4")
	if !size.given() {
		name, fits = "A4", true
	}
	if fits {
		stock, err := paper.ParseStock(name)
		if err != nil {
			size.say("%s", err)
			fits = false
		}
		p.Stock = stock
		fits = fits && size.inRange(stock.Size.W, stock.Size.H)
	}
	for _, l := range []struct {
		e  entry
		to *geometry.Length
	}{
		{s.key("margin", raw.Margin), &p.Margin},
		{s.key("overlap", raw.Overlap), &p.Overlap},
		{s.key("reach", raw.Reach), &p.Reach},
	} {
		got, ok := l.e.notNegative("12 mm")
		if ok {
			*l.to = got
		} else if l.e.given() {
			fits = false
		}
	}
	if fits {
		checkSheet(s, raw, &p)
	}
	extent, _ := s.key("extent", raw.Extent).word([]string{string(FullExtent), string(EdgesExtent)}, string(FullExtent))
	lines, _ := s.key("lines", raw.Lines).word([]string{string(FineLines), string(StrongLines)}, string(FineLines))
	p.Extent, p.Lines = Extent(extent), Lines(lines)
	return p
}

// checkSheet tells whether margins and overlap leave something of a sheet to print on.
func checkSheet(s section, raw *rawPaper, p *Paper) {
	if p.Stock.OneSheet {
		return
	}
	short := p.Stock.Size.W
	if !p.Stock.Roll {
		short = min(short, p.Stock.Size.H)
	}
	usable := short - 2*p.Margin
	size, margin, overlap := s.key("size", raw.Size), s.key("margin", raw.Margin), s.key("overlap", raw.Overlap)
	show := s.r.show
	switch {
	case usable >= p.Overlap+leastStep-geometry.Tolerance:
	case overlap.given() && usable >= leastStep:
		overlap.say("%s leaves too little of a sheet that can be printed %s wide; write %s or less",
			show(p.Overlap), show(usable), show(usable-leastStep))
	case margin.given() && short >= p.Overlap+leastStep:
		margin.say("%s on every edge leaves too little of a sheet %s wide; write %s or less",
			show(p.Margin), show(short), show((short-p.Overlap-leastStep)/2))
	default:
		size.say("a sheet %s wide is too small for a margin of %s and an overlap of %s; write a larger one, such as \"A4\"",
			show(short), show(p.Margin), show(p.Overlap))
	}
}

// The check bars as drawn, and how far off they may be measured.
const (
	barAcross  = 180 * geometry.Millimetre
	barDown    = 250 * geometry.Millimetre
	mostOff    = 0.03
	nearlySame = geometry.Tolerance
)

// checkPrinter reads [printer].
func checkPrinter(s section, raw *rawPrinter) Printer {
	across, down := s.key("across", raw.Across), s.key("down", raw.Down)
	a, okA := across.positive("180 mm")
	d, okD := down.positive("250 mm")
	s.label = "[printer]"
	if across.given() != down.given() {
		if across.given() {
			s.needs("down", `"250 mm", the long bar as you measured it`)
		} else {
			s.needs("across", `"180 mm", the short bar as you measured it`)
		}
		return Printer{}
	}
	if !okA || !okD {
		return Printer{}
	}
	off := func(measured, nominal geometry.Length) bool {
		return math.Abs(float64(measured-nominal)) > float64(nominal*mostOff+nearlySame)
	}
	show := s.r.show
	if off(a, barAcross) && off(d, barDown) && !off(a, barDown) && !off(d, barAcross) {
		across.say("%s and down %s are swapped; write the bar of 180 mm as across and the one of 250 mm as down", show(a), show(d))
		return Printer{}
	}
	check := func(e entry, measured, nominal geometry.Length) bool {
		if !off(measured, nominal) {
			return true
		}
		e.say("%s is more than 3 %% off %s, so the sheet was not printed at 100 %% but \"fit to page\"; "+
			"print the ruler page again at 100 %% (\"actual size\") and measure that", show(measured), show(nominal))
		return false
	}
	if good := check(across, a, barAcross); !check(down, d, barDown) || !good {
		return Printer{}
	}
	return Printer{Across: a, Down: d}
}

// longestTime is the most seconds one print may take: a day.
const longestTime = 86400

// checkPrinting reads [printing].
func checkPrinting(s section, raw *rawPrinting) Printing {
	var p Printing
	hand, _ := s.key("hand", raw.Hand).word([]string{string(RightHand), string(LeftHand)}, string(RightHand))
	p.Hand = Hand(hand)
	p.SecondsAPrint, p.HasSecondsPrint = s.key("seconds-a-print", raw.SecondsAPrint).number("75", 0, longestTime)
	p.SecondsAColour, p.HasSecondsColour = s.key("seconds-a-colour", raw.SecondsAColour).number("40", 0, longestTime)
	p.PaintCover, p.HasPaintCover = parsed(s.key("paint-cover", raw.PaintCover), "90 ml/m2", parsePaintCover)
	return p
}

var paintCover = regexp.MustCompile(`^([0-9]*\.?[0-9]+)\s*(ml|l)\s*/\s*(m2|m²|m\^2)$`)

// parsePaintCover reads a volume of paint a square metre and returns millilitres.
func parsePaintCover(s string) (float64, error) {
	m := paintCover.FindStringSubmatch(strings.ToLower(strings.TrimSpace(s)))
	if m == nil {
		return 0, fmt.Errorf(`%s is not an amount of paint; write one such as "90 ml/m2"`, quote(s))
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err == nil && m[2] == "l" {
		v *= 1000
	}
	// Ten litres would stand a centimetre deep.
	if err != nil || v > 10000 {
		return 0, fmt.Errorf(`%s is more than 10 l/m2; write an amount such as "90 ml/m2"`, quote(s))
	}
	return v, nil
}
