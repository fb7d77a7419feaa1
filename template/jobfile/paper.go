package jobfile

import (
	"errors"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/words"
)

// leastStep is the least a sheet must add to the sheets before it.
const leastStep = 20 * geometry.Millimetre

// checkPaper reads [paper].
func checkPaper(s section) job.Paper {
	p := job.Paper{
		Margin:  7 * geometry.Millimetre,
		Overlap: 12 * geometry.Millimetre,
		Reach:   job.UsualReach,
	}
	size := s.key("size")
	name, fits := size.text("A4")
	if !size.given() {
		name, fits = "A4", true
	}
	if fits {
		stock, err := ParseStock(name)
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
		{s.key("margin"), &p.Margin},
		{s.key("overlap"), &p.Overlap},
		{s.key("reach"), &p.Reach},
	} {
		got, ok := l.e.notNegative("12 mm")
		if ok {
			*l.to = got
		} else if l.e.given() {
			fits = false
		}
	}
	p.LeastReach = p.Reach
	if !s.key("reach").given() {
		p.LeastReach = job.ShortReach
	}
	if fits {
		checkSheet(s, &p)
	}
	extent, _ := s.word("extent")
	passes, _ := s.word("passes")
	lines, _ := s.word("lines")
	p.Extent, p.Passes, p.Lines = job.Extent(extent), job.Passes(passes), job.Lines(lines)
	return p
}

// checkSheet tells whether margins and overlap leave something of a sheet to print on.
func checkSheet(s section, p *job.Paper) {
	if p.Stock.OneSheet {
		return
	}
	short := p.Stock.Size.W
	if !p.Stock.Roll {
		short = min(short, p.Stock.Size.H)
	}
	usable := short - 2*p.Margin
	size, margin, overlap := s.key("size"), s.key("margin"), s.key("overlap")
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

// ParseStock reads a paper as paper.ParseStock does. Where no paper has that name, but one has a
// name much like it, the error says so first.
func ParseStock(name string) (paper.Stock, error) {
	stock, err := paper.ParseStock(name)
	unknown, ok := errors.AsType[paper.UnknownStock](err)
	if !ok {
		return stock, err
	}
	known := []string{"one sheet"}
	for _, s := range paper.Stocks() {
		known = append(known, s.Name)
	}
	near, ok := words.Nearest(name, known)
	if first, _, _ := strings.Cut(strings.TrimSpace(name), " "); !ok {
		if _, roll := words.Nearest(first, []string{"roll"}); roll {
			near = "roll 610 mm"
		}
	}
	return stock, errors.New(unknown.Words(near))
}
