package plan

import (
	"fmt"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// counts returns how many prints a choice has across and down: those of its longest row, or its
// columns where these are what is moved; its rows, or those of its longest column. Round a shade:
// how many go round.
func (c Choice) counts() job.Counts {
	n := job.Counts{Across: c.Columns, Down: c.Rows}
	if n.Across == 0 && len(c.RowCounts) > 0 {
		n.Across = slices.Max(c.RowCounts)
	}
	switch {
	case n.Down > 0:
	case len(c.RowCounts) > 0:
		n.Down = len(c.RowCounts)
	case len(c.ColumnCounts) > 0:
		n.Down = slices.Max(c.ColumnCounts)
	}
	return n
}

// gives tells whether a choice has as many prints across and down as are asked for.
func (c Choice) gives(asked job.Counts) bool { return c.counts().Meet(asked) }

// within keeps those of the places of a choice that a job which asks for so many prints has: those
// in the middle, as far as so many reach.
func (t lattice) within(l layout, c Choice, keys []geometry.Site) []geometry.Site {
	n := l.pass.Exactly
	if n == (job.Counts{}) {
		return keys
	}
	lat, centre, turn := t.spots(l, c), l.area.Centre(), -t.turnOf(l.pass)
	reach := func(n int, pitch geometry.Length) geometry.Length {
		return geometry.Length(n-1)/2*pitch + geometry.Tolerance
	}
	kept := keys[:0]
	for _, k := range keys {
		d := lat.At(k).Sub(centre).Turn(turn)
		if (n.Across == 0 || l.area.around > 0 || d.X.Abs() <= reach(n.Across, c.Pitch.Across)) &&
			(n.Down == 0 || d.Y.Abs() <= reach(n.Down, c.Pitch.Down)) {
			kept = append(kept, k)
		}
	}
	return kept
}

// asAsked is other sizes where a job may ask for so many prints: more cloth then brings no more.
func (l layout) asAsked(across, down *Serves, misses []NearMiss) otherSizes {
	asked := l.pass.Exactly
	if across != nil && asked.Across > 0 {
		across.Below = geometry.Length(math.Inf(1))
	}
	if down != nil && asked.Down > 0 {
		down.Below = geometry.Length(math.Inf(1))
	}
	free := slices.DeleteFunc(misses, func(m NearMiss) bool { return along(asked, m.Down) > 0 })
	return known(across, down, free)
}

// fixedSizes is what cloth a guide serves whose job asks for so many prints both ways: any that its
// prints lie on. Where it asks for them one way only, or the cloth is no plain rectangle, it is not
// worked out.
func (l layout) fixedSizes(sites []Site) otherSizes {
	if asked := l.pass.Exactly; !l.area.plain() || asked.Across == 0 || asked.Down == 0 {
		return l.asAsked(nil, nil, nil)
	}
	t := sizeTrial{l: l}
	across := Serves{Least: min(l.item.Size.W, t.least(sites, 0, nil))}
	t.down = true
	down := Serves{Least: min(l.item.Size.H, t.least(sites, 0, nil))}
	return l.asAsked(&across, &down, nil)
}

// notSoMany explains why a pass cannot have as many prints as its job asks for, and what would let
// it.
func (l layout) notSoMany() error {
	asked, n := l.pass.Exactly, l.free().counted()
	text := countWords(asked) + " cannot be had"
	moved, key := asked.Across, "across"
	if l.pass.Repeat == job.HalfDrop {
		moved, key = asked.Down, "down"
	}
	if moved == 1 && (l.pass.Repeat.Stepped() || l.pass.Repeat == job.Honeycomb) {
		return fmt.Errorf("%s, as in %s what is moved on has one print less than the rest; write %s = 2 or more", text, words.Article(l.pass.Repeat), key)
	}
	if n.Across > 0 && n.Down > 0 {
		text += ", as " + countWords(n) + " fit"
	}
	ways := l.wouldDo(l.wanted(asked), n)
	if len(ways) == 0 {
		return fmt.Errorf("%s; write fewer", text)
	}
	return fmt.Errorf("%s; %s", text, words.Joined(ways, "or"))
}

// wouldDo says what would let a pass have as many prints as its job asks for, where n fit now.
func (l layout) wouldDo(wanted Wanted, n job.Counts) []string {
	u, w := l.units, wish{l, l.pass.Exactly}
	var ways []string
	if wanted.Cloth != nil {
		size := geometry.Size{W: u.Up(max(l.item.Size.W, wanted.Cloth.W)), H: u.Up(max(l.item.Size.H, wanted.Cloth.H))}
		what := u.FormatSize(size)
		switch {
		case l.item.Shape == job.Round:
			what = u.Format(size.W)
		case l.area.around > 0:
			what = u.Format(size.W) + " round and " + u.Format(size.H) + " high"
		}
		if w.met(w.sized(size)) {
			ways = append(ways, "make the item "+what)
		}
	}
	if across, down, ok := l.lessGap(wanted, n); ok {
		gap, now := u.Down(min(across, down)), l.leastGap()
		set, what := job.Spacing{Across: gap, Down: gap}, "make the gap at most "+u.Format(gap)
		switch both := l.pass.GapEven || l.pass.Repeat.OneGap(); {
		case math.IsInf(float64(down), 1) && !both:
			set.Down, what = now.Down, what+" across"
		case math.IsInf(float64(across), 1) && !both:
			set.Across, what = now.Across, what+" down"
		}
		if w.met(w.gapped(set)) {
			ways = append(ways, what)
		}
	}
	if b := l.pass.Block.Size; wanted.Block != nil && (wanted.Block.W < b.W || wanted.Block.H < b.H) {
		size := geometry.Size{W: u.Down(min(b.W, wanted.Block.W)), H: u.Down(min(b.H, wanted.Block.H))}
		what, place := u.FormatSize(size), size
		if l.pass.Block.Shape.Regular() {
			what = u.Format(size.W) + " wide"
		}
		if l.pass.Turns.AllAside() {
			place = size.Swap()
		}
		if w.alike() && !l.pass.Block.Shape.Regular() {
			// Turned both ways, the longer side is what counts.
			place.W = l.cell.W - max(b.W-size.W, b.H-size.H)
		}
		if w.met(w.faced(place)) {
			ways = append(ways, "make the block at most "+what)
		}
	}
	return ways
}

// lessGap returns the most gap across and down with which as many prints fit as are asked for;
// infinite where the gap may stay. False where no gap does it.
func (l layout) lessGap(w Wanted, n job.Counts) (across, down geometry.Length, ok bool) {
	most := func(g *GapSpan, asked, fit int, now geometry.Length) geometry.Length {
		switch {
		case asked <= fit:
			return geometry.Length(math.Inf(1))
		case g == nil || g.Most >= now:
			return -1
		}
		return g.Most
	}
	gap := l.leastGap()
	across = most(w.GapAcross, w.Across, n.Across, gap.Across)
	down = most(w.GapDown, w.Down, n.Down, gap.Down)
	return across, down, across >= 0 && down >= 0 && !math.IsInf(float64(min(across, down)), 1)
}

// countWords says so many prints across and down; one of which none are asked for is left out.
func countWords(n job.Counts) string {
	var parts []string
	if n.Across > 0 {
		parts = append(parts, fmt.Sprintf("%d across", n.Across))
	}
	if n.Down > 0 {
		parts = append(parts, fmt.Sprintf("%d down", n.Down))
	}
	return words.InWords(parts)
}
