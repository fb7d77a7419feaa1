package template

import (
	"underlay/geometry"
	"underlay/paper"
)

// leastStep is the least a sheet must add to the sheets before it.
const leastStep = 20 * geometry.Millimetre

// usualReach is the reach of a job that says nothing of it: room for ticks and their names.
const usualReach = 25 * geometry.Millimetre

// checkPaper reads [paper].
func checkPaper(s section, raw *rawPaper) Paper {
	p := Paper{
		Margin:  7 * geometry.Millimetre,
		Overlap: 12 * geometry.Millimetre,
		Reach:   usualReach,
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
			show(p.Overlap), show(usable), s.r.showMost(usable-leastStep))
	case margin.given() && short >= p.Overlap+leastStep:
		margin.say("%s on every edge leaves too little of a sheet %s wide; write %s or less",
			show(p.Margin), show(short), s.r.showMost((short-p.Overlap-leastStep)/2))
	default:
		size.say("a sheet %s wide is too small for a margin of %s and an overlap of %s; write a larger one, such as \"A4\"",
			show(short), show(p.Margin), show(p.Overlap))
	}
}
