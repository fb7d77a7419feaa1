package guide

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// span is one column or row: from edge to edge.
type span struct {
	lo, hi geometry.Length
	name   string
}

// mostFamilies is how many sets of columns, each moved against the others, ticks can tell apart.
const mostFamilies = 4

// families returns the columns or rows of a pass, each from the least: those in line with the
// rows or columns that are not moved, then those moved. There are none where prints are turned
// off the square, or where ticks could not tell so many apart.
func (r run) families(p plan.FacePass, several bool) [][]span {
	pitch, word := p.Choice().Pitch.Across, "column"
	if r.down {
		pitch, word = p.Choice().Pitch.Down, "row"
	}
	first := word
	if several {
		first = p.Pass.Name
	}
	framed := p.Pass.Framed()
	if !p.ColumnsInLine && !p.RowsInLine && !framed {
		return nil
	}
	var families [][]span
	var phases []geometry.Length
	seen := map[int]bool{}
	for _, print := range r.fromCentre(p) {
		if math.Mod(float64(print.Turn), 90) != 0 || pitch <= 0 {
			return nil
		}
		k, b := print.Column, print.Outline.Bounds()
		s := span{lo: b.Min.X, hi: b.Max.X}
		if r.down {
			k, s = print.Row, span{lo: b.Min.Y, hi: b.Max.Y}
		}
		// Lines nearer than a hundredth of a millimetre are one line on paper.
		at := int(math.Round(float64(s.lo) * 100))
		if seen[at] || k == 0 && !framed {
			continue
		}
		seen[at] = true
		phase := geometry.Length(math.Mod(float64(s.lo), float64(pitch)))
		i := slices.IndexFunc(phases, func(q geometry.Length) bool {
			d := (q - phase).Abs()
			return min(d, pitch-d) < 0.01
		})
		if i < 0 {
			phases, families = append(phases, phase), append(families, nil)
			i = len(phases) - 1
		}
		name := first
		if i > 0 {
			name += " moved"
		}
		s.name = name + " " + strconv.Itoa(k)
		families[i] = append(families[i], s)
	}
	if len(families) > mostFamilies {
		return nil
	}
	for _, f := range families {
		slices.SortFunc(f, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
		if framed {
			// A frame counts its prints as they go round; its columns are counted here.
			for i := range f {
				f[i].name = first + " " + strconv.Itoa(i+1)
			}
		}
	}
	return families
}

// fromCentre returns the prints of a pass with those of the row (or column) that is not moved
// first: the one through the centre or next after it.
func (r run) fromCentre(p plan.FacePass) []*plan.Print {
	c := r.g.face.Item.Area.Centre()
	off := func(print plan.Print) geometry.Length {
		d := print.Origin.Y - c.Y
		if r.down {
			d = print.Origin.X - c.X
		}
		if d < -geometry.Tolerance {
			return -2 * d // one before the centre comes after the one as far behind it
		}
		return d
	}
	type place struct {
		off   geometry.Length
		print int
	}
	places := make([]place, len(p.Prints))
	for i, print := range p.Prints {
		places[i] = place{off(print), i}
	}
	slices.SortFunc(places, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.off, b.off), cmp.Compare(a.print, b.print))
	})
	prints := make([]*plan.Print, len(places))
	for i, place := range places {
		prints[i] = &p.Prints[place.print]
	}
	return prints
}

// family is columns (or rows) whose ticks stand in one band, and how their names are written.
type family struct {
	spans        []span
	depth        geometry.Length // where the ticks begin
	short        bool            // names are figures alone
	height       geometry.Length // of the names
	every        int             // each so many has its name
	width, pitch geometry.Length
	crowded      bool // distances do not go beside the names
}

// newFamily works out which names and figures fit the columns or rows.
func (r run) newFamily(spans []span, depth geometry.Length) family {
	last := spans[len(spans)-1]
	f := family{spans: spans, depth: depth, height: nameText, width: spans[0].hi - spans[0].lo}
	f.pitch = f.width
	if len(spans) > 1 {
		f.pitch = spans[1].lo - spans[0].lo
	}
	figures := 2 * (r.along(r.distance(last.hi), tickText, false) + 1.5)
	f.short = r.along(last.name, nameText, true)+figures+2 > f.width
	longest := f.name(len(spans) - 1)
	for f.height > 1.8 && r.along(longest, f.height, true)+0.8 > f.pitch {
		f.height = map[geometry.Length]geometry.Length{3.5: 2.5, 2.5: 1.8}[f.height]
	}
	for _, f.every = range []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000} {
		if geometry.Length(f.every)*f.pitch >= r.along(longest, f.height, true)+0.8 {
			break
		}
	}
	f.crowded = r.along(longest, f.height, true)+figures > f.width
	return f
}

// along is what a text takes up along the run: its width, or for rows its height.
func (r run) along(text string, h geometry.Length, bold bool) geometry.Length {
	if r.down {
		return h
	}
	return paper.TextWidth(text, h, bold)
}

func (f family) name(i int) string {
	if f.short {
		return strconv.Itoa(i + 1)
	}
	return f.spans[i].name
}

// drawEdges draws a tick for both edges of every column or row.
func (r run) drawEdges(f family) {
	for _, s := range f.spans {
		r.line(s.lo, f.depth, f.depth+tickLength, r.g.pens.Tick)
		r.line(s.hi, f.depth, f.depth+tickLength, r.g.pens.Tick)
	}
}

// writeNames writes the name of every column or row between its ticks, or where that is taken,
// by a crease that runs through it, say, beside it or beyond the ticks.
func (r run) writeNames(f family, beyond geometry.Length) {
	inner := f.depth + tickLength - f.height
	if r.down {
		inner = f.depth
	}
	for i, s := range f.spans {
		if (i+1)%f.every != 0 && i != 0 {
			continue
		}
		mid := (s.lo + s.hi) / 2
		aside := 0.9 * geometry.Millimetre
		_ = r.write(f.name(i), mid, 0, inner, f.height, true) ||
			r.write(f.name(i), mid-aside, -1, inner, f.height, true) ||
			r.write(f.name(i), mid+aside, 1, inner, f.height, true) ||
			r.write(strconv.Itoa(i+1), mid, 0, inner, f.height, true) ||
			r.write(f.name(i), mid, 0, beyond, f.height, true) ||
			r.write(strconv.Itoa(i+1), mid-aside, -1, inner, f.height, true)
	}
}

// writeDistances writes beside each tick, within its own column or row, its distance from the
// cloth's edge; where there is no room, beyond the ticks.
func (r run) writeDistances(f family, beyond geometry.Length) {
	depth := f.depth + tickLength - tickText
	if r.down {
		depth = f.depth
	}
	if f.crowded {
		depth = f.depth + tickLength + 1
		if r.down {
			depth = f.depth + paper.TextWidth(f.name(len(f.spans)-1), f.height, true) + 1.5
		}
	}
	// Clear of the tick, and of the neighbour's where prints lap; figures in a row stand above
	// or below the tick, and a fraction's stroke reaches beyond its figures.
	off := 0.7 + max(0, f.width-f.pitch)
	if r.down {
		off += 0.5
	}
	for _, s := range f.spans {
		for _, e := range []struct {
			l    geometry.Length
			side int
		}{{s.lo, 1}, {s.hi, -1}} {
			l := e.l + off*geometry.Length(e.side)
			_ = r.write(r.distance(e.l), l, e.side, depth, tickText, false) ||
				r.write(r.distance(e.l), l, e.side, depth+tickText+1, tickText, false) ||
				r.write(r.distance(e.l), l, e.side, beyond, tickText, false)
		}
	}
}
