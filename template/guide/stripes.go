package guide

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/plan"
)

// stripe is one column or row: its middle, and every place where prints of it begin or end, from
// the least.
type stripe struct {
	middle geometry.Length
	edges  []geometry.Length
	number int
	name   string // "row 2"
}

// track is stripes that keep clear of each other and have their ticks at one depth. Columns of
// which every other is moved along lie in a track for each way they are moved.
type track struct {
	pass    string // "" where the face has one pass
	stripes []stripe
	depth   geometry.Length // where the ticks begin, from the cloth outwards
	length  geometry.Length // of the ticks
	figures geometry.Length // where the figures by the ticks begin
}

// mostTracks is how many tracks of one pass ticks can tell apart.
const mostTracks = 4

// sameLine is how near two lines are that are one line on paper.
const sameLine = 0.01 * geometry.Millimetre

// extent is what one print takes up along a run.
type extent struct{ lo, hi geometry.Length }

func (e extent) middle() geometry.Length { return (e.lo + e.hi) / 2 }

// tracks returns the columns or rows of a pass, counted from the left or from the far edge. There
// are none where prints are not in line, or where ticks could not tell so many tracks apart.
func (r *run) tracks(p plan.FacePass) []track {
	framed, single := p.Pass.Framed(), r.g.single(p)
	if !p.ColumnsInLine && !p.RowsInLine && !framed && !single {
		return nil
	}
	extents := make([]extent, 0, len(p.Prints))
	for _, print := range p.Prints {
		switch {
		case math.Mod(float64(print.Turn), 90) == 0:
		case single:
			continue
		default:
			return nil
		}
		extents = append(extents, r.extentOf(print))
	}
	if len(extents) == 0 {
		return nil
	}
	pitch, gap, word := p.Choice().Pitch.Across, p.Choice().Gap.Across, "column"
	if r.down {
		pitch, gap, word = p.Choice().Pitch.Down, p.Choice().Gap.Down, "row"
	}
	if framed || single {
		// Prints along one side and those of another are no pitch apart.
		pitch = geometry.Length(math.Inf(1))
	}
	apart := func(a, b extent) bool {
		return b.lo >= a.hi+min(0, gap)-sameLine || b.lo >= a.lo+pitch-sameLine
	}
	var tracks []track
	var last []extent // of each track
	for i, group := range together(extents) {
		whole := group[0]
		for _, e := range group[1:] {
			whole = extent{min(whole.lo, e.lo), max(whole.hi, e.hi)}
		}
		k := slices.IndexFunc(last, func(l extent) bool { return apart(l, whole) })
		if k < 0 {
			k = len(tracks)
			tracks, last = append(tracks, track{}), append(last, whole)
		}
		last[k] = whole
		s := r.stripe(group, whole)
		s.number, s.name = i+1, word+" "+strconv.Itoa(i+1)
		if single {
			s.name = r.printNames(p, whole.middle())
		}
		tracks[k].stripes = append(tracks[k].stripes, s)
	}
	if len(tracks) > mostTracks {
		return nil
	}
	if len(r.g.face.Passes) > 1 {
		for i := range tracks {
			tracks[i].pass = p.Pass.Name
		}
	}
	return tracks
}

// single tells whether a pass has ticks for each of its prints by itself: where the job says where
// they go, on what lies as it is.
func (g *guide) single(p plan.FacePass) bool {
	return !p.Pass.Seated() && !p.Pass.Repeat.Gapped() && g.face.Item.Area.Flat == nil
}

// extentOf is what a print takes up along the run.
func (r *run) extentOf(print plan.Print) extent {
	b := print.Outline.Bounds()
	if r.down {
		return extent{b.Min.Y, b.Max.Y}
	}
	return extent{b.Min.X, b.Max.X}
}

// printNames names the prints of a pass with the same middle by their numbers.
func (r *run) printNames(p plan.FacePass, middle geometry.Length) string {
	var names []string
	for i, print := range p.Prints {
		if math.Mod(float64(print.Turn), 90) != 0 || (r.extentOf(print).middle()-middle).Abs() >= sameLine {
			continue
		}
		// On several pieces the same number comes again.
		if number := strconv.Itoa(p.NumberOf(i)); !slices.Contains(names, number) {
			names = append(names, number)
		}
	}
	return "print " + strings.Join(names, ", ")
}

// together sorts what prints take up by their middles, and puts those with the same middle into
// one group: they stand in one column or row.
func together(extents []extent) [][]extent {
	slices.SortFunc(extents, func(a, b extent) int { return cmp.Compare(a.middle(), b.middle()) })
	var groups [][]extent
	begin := 0
	for i := 1; i <= len(extents); i++ {
		if i == len(extents) || extents[i].middle()-extents[begin].middle() >= sameLine {
			groups = append(groups, extents[begin:i])
			begin = i
		}
	}
	return groups
}

// stripe returns the column or row of prints with the same middle. Round a drum, what leaves the
// flat shade on one side comes in on the other, and the wider of the two parts bears the name.
func (r *run) stripe(group []extent, whole extent) stripe {
	s := stripe{middle: whole.middle()}
	round := r.to - r.from
	if r.closes() {
		switch {
		case whole.lo < r.from-sameLine:
			s.middle = (r.from + whole.hi) / 2
			if r.from-whole.lo > whole.hi-r.from+sameLine {
				s.middle = (whole.lo + round + r.to) / 2
			}
		case whole.hi > r.to+sameLine:
			s.middle = (whole.lo + r.to) / 2
			if whole.hi-r.to > r.to-whole.lo+sameLine {
				s.middle = (r.from + whole.hi - round) / 2
			}
		}
	}
	for _, e := range group {
		for _, l := range []geometry.Length{e.lo, e.hi} {
			switch {
			case !r.closes():
			case l < r.from-sameLine:
				l += round
			case l > r.to+sameLine:
				l -= round
			}
			s.edges = append(s.edges, l)
		}
	}
	s.edges = apartLines(s.edges)
	return s
}

// apartLines returns places in order, those that are one line on paper once.
func apartLines(places []geometry.Length) []geometry.Length {
	slices.Sort(places)
	kept := places[:0]
	for _, l := range places {
		if len(kept) == 0 || l-kept[len(kept)-1] >= sameLine {
			kept = append(kept, l)
		}
	}
	return kept
}

// lines returns where the ticks of the track are, from the least.
func (t track) lines() []geometry.Length {
	var all []geometry.Length
	for _, s := range t.stripes {
		all = append(all, s.edges...)
	}
	return apartLines(all)
}

// clear is how much of a stripe round its middle has no tick of the track in it, by the stripe
// that has least.
func (t track) clear() geometry.Length {
	lines := t.lines()
	least := geometry.Length(math.Inf(1))
	for _, s := range t.stripes {
		i, _ := slices.BinarySearch(lines, s.middle)
		if i > 0 {
			least = min(least, 2*(s.middle-lines[i-1]))
		}
		if i < len(lines) {
			least = min(least, 2*(lines[i]-s.middle))
		}
	}
	return least
}

// step is how far apart the middles of neighbouring stripes are, at the least.
func (t track) step() geometry.Length {
	least := geometry.Length(math.Inf(1))
	for i, s := range t.stripes[1:] {
		least = min(least, (s.middle - t.stripes[i].middle).Abs())
	}
	return least
}
