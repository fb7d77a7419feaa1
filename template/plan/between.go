package plan

import (
	"fmt"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// between seats prints in the openings of an earlier straight pass: one in the middle of every
// four prints that meet, or, with open edges, also where two of the four that stand side by
// side are there, or three, and the whole print still fits.
func between(l layout) repeat {
	target := repeatOf(l.target.layout)
	return repeat{
		ways: func(l layout) ([]way, error) {
			if err := l.turnsClose(); err != nil {
				return nil, err
			}
			sites, dropped := l.seats()
			c := Choice{Pitch: l.target.Choice().Pitch, dropped: dropped}
			c.Gap = job.Spacing{Across: c.Pitch.Across - l.cell.W, Down: c.Pitch.Down - l.cell.H}
			w := l.describe(c, sites)
			w.Rows = len(w.RowCounts)
			for _, n := range w.RowCounts {
				w.Columns = max(w.Columns, n)
			}
			return []way{w}, nil
		},
		next:    target.next,
		columns: target.columns, rows: target.rows,
		notes: func(l layout, c Choice) []string {
			return append(l.droppedNote(c),
				fmt.Sprintf("its prints sit in the openings of %s: what other cloths the guide serves follows from that pass", words.Quote(l.target.Pass.Name)))
		},
	}
}

// turnsClose refuses a matrix of turns that does not meet itself round a shade.
func (l layout) turnsClose() error {
	n, width := l.target.Choice().Columns, l.pass.Turns.Columns()
	if !l.area.surface.closes() || n%width == 0 {
		return nil
	}
	return fmt.Errorf("%s round, and turns that repeat after %d do not close with that; write fewer turns", words.Counted(n, "print goes", "prints go"), width)
}

// droppedNote says how many of the places another pass gives are left out.
func (l layout) droppedNote(c Choice) []string {
	if c.dropped == 0 {
		return nil
	}
	return []string{words.Counted(c.dropped, "print is", "prints are") + " left out, as the block would not lie wholly on the area there"}
}

// seats returns the prints in the openings of the target, row by row, and how many openings
// closed by four prints have no room for the block.
func (l layout) seats() (sites []Site, dropped int) {
	o := newOpenings(l)
	for j := o.low.J - 1; j <= o.high.J; j++ {
		for i := o.from; i <= o.to; i++ {
			key := geometry.Site{I: i, J: j}
			n, beside := o.closedBy(key)
			if n < 4 && !(l.pass.OpenEdges && beside) {
				continue
			}
			s := o.middle(l.target.layout, l.target.Choice(), key)
			s.Column, s.Row, s.key = i-o.from+1, j, key
			sites = append(sites, s)
			if n == 4 {
				dropped++
			}
		}
	}
	sites = l.number(sites, false)
	for _, s := range sites {
		if n, _ := o.closedBy(s.key); n == 4 {
			dropped--
		}
	}
	return sites, dropped
}

// openings are the places between the prints of a straight pass, each named by the key of the
// print above left of it.
type openings struct {
	have      keyIndex
	low, high geometry.Site // keys of the prints
	from, to  int           // I of the openings
	round     int           // prints round a shade; 0: the pattern does not close
	middle    func(layout, Choice, geometry.Site) Site
}

func newOpenings(l layout) openings {
	prints := l.target.Prints
	sites := make([]Site, len(prints))
	o := openings{low: prints[0].key, high: prints[0].key, middle: repeatOf(l.target.layout).middle}
	for i, p := range prints {
		sites[i] = p.Site
		o.low = geometry.Site{I: min(o.low.I, p.key.I), J: min(o.low.J, p.key.J)}
		o.high = geometry.Site{I: max(o.high.I, p.key.I), J: max(o.high.J, p.key.J)}
	}
	o.have = newKeyIndex(sites)
	o.from, o.to = o.low.I-1, o.high.I
	if l.area.surface.closes() {
		o.round = l.target.Choice().Columns
		o.from, o.to = o.low.I, o.low.I+o.round-1
		if o.round < 2 {
			// The one print of a row cannot close an opening with itself.
			o.to = o.from - 1
		}
	}
	return o
}

// closedBy returns how many of its four prints an opening has, and whether two of them stand
// side by side: two that only face each other across it close nothing.
func (o openings) closedBy(k geometry.Site) (n int, beside bool) {
	var there [4]bool
	for i, at := range o.round4(k) {
		if _, ok := o.at(at); ok {
			there[i] = true
			n++
		}
	}
	for i, one := range there {
		beside = beside || one && there[(i+1)%4]
	}
	return n, beside
}

// round4 lists the keys of the four prints round an opening, clockwise.
func (o openings) round4(k geometry.Site) [4]geometry.Site {
	return [4]geometry.Site{k, {I: k.I + 1, J: k.J}, {I: k.I + 1, J: k.J + 1}, {I: k.I, J: k.J + 1}}
}

// at returns the index of the print with a key, counted round a shade.
func (o openings) at(k geometry.Site) (int, bool) {
	for _, turn := range []int{0, o.round, -o.round} {
		if i, ok := o.have.find(geometry.Site{I: k.I + turn, J: k.J}); ok {
			return i, true
		}
	}
	return 0, false
}
