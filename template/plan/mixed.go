package plan

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// run is a line of places of several sizes that come again and again, with one gap between any two.
// Place 0 is of kind first; it is on the centre of the area, or where a joint is to be there, next
// after it.
type run struct {
	sizes []geometry.Length
	gap   geometry.Length
	first int
	joint bool
}

// at returns where place i begins, from the centre, and how long it is.
func (r run) at(i int) (from, size geometry.Length) {
	n := len(r.sizes)
	whole := int(math.Floor(float64(i) / float64(n)))
	var period geometry.Length
	for k := range n {
		s := r.sizes[(r.first+k)%n]
		if k < i-whole*n {
			from += s + r.gap
		}
		period += s + r.gap
	}
	from += geometry.Length(whole) * period
	if r.joint {
		from += r.gap / 2
	} else {
		from -= r.sizes[r.first] / 2
	}
	return from, r.sizes[(r.first+i-whole*n)%n]
}

// middle returns the middle of place i, from the centre.
func (r run) middle(i int) geometry.Length {
	from, size := r.at(i)
	return from + size/2
}

// within returns the first and the last place that lie within a reach to both sides of the centre;
// the last before the first: none does. Of n asked for, only those in the middle; n = 0: all.
func (r run) within(reach geometry.Length, n int) (low, high int) {
	fits := func(i int) bool {
		from, size := r.at(i)
		return from >= -reach-geometry.Tolerance && from+size <= reach+geometry.Tolerance && (n == 0 || math.Abs(r.index(i)) <= float64(n-1)/2)
	}
	high = -1
	for fits(high + 1) {
		high++
	}
	for (high >= 0 || r.joint) && fits(low-1) {
		low--
	}
	return low, high
}

// index is how far place i is from the centre, in places.
func (r run) index(i int) float64 {
	if r.joint {
		return float64(i) + 0.5
	}
	return float64(i)
}

// widest returns the widest gap with which places first to last lie within a reach to both sides of
// the centre: how far they go grows evenly with the gap.
func (r run) widest(first, last int, reach geometry.Length) geometry.Length {
	ends := func(gap geometry.Length) (left, right geometry.Length) {
		r.gap = gap
		from, _ := r.at(first)
		to, size := r.at(last)
		return -from, to + size
	}
	left0, right0 := ends(0)
	left1, right1 := ends(1)
	most := geometry.Length(math.Inf(1))
	for _, e := range [][2]geometry.Length{{left0, left1}, {right0, right1}} {
		if grows := e[1] - e[0]; grows > 1e-9 {
			most = min(most, (reach-e[0])/grows)
		}
	}
	return most
}

// inRuns tells whether columns and rows have sizes of their own: where blocks are mixed in straight
// rows on flat cloth. Anywhere else a place is as large as the largest.
func (t lattice) inRuns(l layout) bool {
	return !l.pass.Mix.None() && t.step == nil && t.turn == nil && !l.area.surface.closes()
}

// runs are the columns and the rows of a choice, for a gap.
func (l layout) runs(c Choice, gap job.Spacing) (columns, rows run) {
	columns = run{gap: gap.Across, first: c.start.I, joint: c.Across == job.OnJoint}
	rows = run{gap: gap.Down, first: c.start.J, joint: c.Down == job.OnJoint}
	for i := range l.pass.Mix.Columns() {
		columns.sizes = append(columns.sizes, l.pass.ColumnWidth(i))
	}
	for j := range l.pass.Mix.Height() {
		rows.sizes = append(rows.sizes, l.pass.RowHeight(j))
	}
	return columns, rows
}

// placeInRuns returns the prints of a choice, each in the middle of its place.
func (t lattice) placeInRuns(l layout, c Choice) []Site {
	columns, rows := l.runs(c, c.Gap)
	centre, area := l.area.Centre(), l.area.Rect
	left, right := columns.within(area.W()/2, l.pass.Exactly.Across)
	top, bottom := rows.within(area.H()/2, l.pass.Exactly.Down)
	if right < left || bottom < top {
		return nil
	}
	sites := make([]Site, 0, (right-left+1)*(bottom-top+1))
	xs := make([]geometry.Length, right-left+1)
	for i := range xs {
		xs[i] = centre.X + columns.middle(left+i)
	}
	for j := top; j <= bottom; j++ {
		y := centre.Y + rows.middle(j)
		for i, x := range xs {
			k := geometry.Site{I: left + i, J: j}
			sites = append(sites, Site{
				Origin: geometry.Pt(x, y), Column: k.I, Row: k.J, key: k,
			})
			last := &sites[len(sites)-1]
			*last = l.mixedAt(*last, k.I+c.start.I, k.J+c.start.J)
		}
	}
	return l.number(sites, t.exact(l))
}

// mixedAt is a site with what is printed in a column and a row of the matrix of parts.
func (l layout) mixedAt(s Site, column, row int) Site {
	if mix := l.pass.Mix; !mix.None() {
		s.Part = mix.At(column, row)
		s.Block = mix.Parts[s.Part].Block
	}
	return s
}

// openInRuns widens the gaps of a choice in runs within the job's range, each as far as keeps every
// place in the area's bounds, and on what is no plain rectangle every print on the area.
func (t lattice) openInRuns(l layout, c Choice, sites []Site) Choice {
	low, high := sites[0].key, sites[0].key
	for _, s := range sites {
		low = geometry.Site{I: min(low.I, s.key.I), J: min(low.J, s.key.J)}
		high = geometry.Site{I: max(high.I, s.key.I), J: max(high.J, s.key.J)}
	}
	exact := t.exact(l)
	keeps := func(gap job.Spacing) bool {
		columns, rows := l.runs(c, gap)
		ends := func(r run, first, last int, reach geometry.Length) bool {
			from, _ := r.at(first)
			to, size := r.at(last)
			return from >= -reach-geometry.Tolerance/2 && to+size <= reach+geometry.Tolerance/2
		}
		if !ends(columns, low.I, high.I, l.area.Rect.W()/2) || !ends(rows, low.J, high.J, l.area.Rect.H()/2) {
			return false
		}
		return !slices.ContainsFunc(sites, func(s Site) bool {
			s.Origin = l.area.Centre().Add(geometry.Pt(columns.middle(s.key.I), rows.middle(s.key.J)))
			return !l.holds(s)
		})
	}
	across, down := l.pass.Gap.Across, l.pass.Gap.Down
	if exact {
		columns, rows := l.runs(c, job.Spacing{})
		gx, gy := columns.widest(low.I, high.I, l.area.Rect.W()/2), rows.widest(low.J, high.J, l.area.Rect.H()/2)
		switch {
		case l.pass.GapEven && low != high:
			g := clamp(across, min(gx, gy))
			c.Gap = job.Spacing{Across: g, Down: g}
		case !l.pass.GapEven:
			if low.I < high.I {
				c.Gap.Across = clamp(across, gx)
			}
			if low.J < high.J {
				c.Gap.Down = clamp(down, gy)
			}
		}
		return c
	}
	if l.pass.GapEven {
		if low != high {
			g := widest(across, func(g geometry.Length) bool { return keeps(job.Spacing{Across: g, Down: g}) })
			c.Gap = job.Spacing{Across: g, Down: g}
		}
	} else {
		if low.I < high.I {
			c.Gap.Across = widest(across, func(g geometry.Length) bool { return keeps(job.Spacing{Across: g, Down: down.Least}) })
		}
		if low.J < high.J {
			c.Gap.Down = widest(down, func(g geometry.Length) bool { return keeps(job.Spacing{Across: c.Gap.Across, Down: g}) })
		}
	}
	return c
}

// meanPitch is the mean step from place to place of a choice in runs.
func (l layout) meanPitch(c Choice) job.Spacing {
	mean := func(r run) geometry.Length {
		var sum geometry.Length
		for _, s := range r.sizes {
			sum += s
		}
		return sum/geometry.Length(len(r.sizes)) + r.gap
	}
	columns, rows := l.runs(c, c.Gap)
	return job.Spacing{Across: mean(columns), Down: mean(rows)}
}

// starts lists the columns and rows of the matrix of parts that may stand on the centre, or next
// after it. Round a shade the columns begin at the seam.
func (l layout) starts() []geometry.Site {
	if l.pass.Mix.None() {
		return []geometry.Site{{}}
	}
	starts := l.pass.Mix.Starts()
	if l.area.surface.closes() {
		return slices.DeleteFunc(starts, func(s geometry.Site) bool { return s.I > 0 })
	}
	return starts
}

// begun notes with which column and row of the matrix of parts a choice begins.
func (l layout) begun(c Choice, sites []Site) Choice {
	mix := l.pass.Mix
	if mix.None() {
		return c
	}
	for _, start := range mix.Starts() {
		if !slices.ContainsFunc(sites, func(s Site) bool { return mix.At(s.Column-1+start.I, s.Row-1+start.J) != s.Part }) {
			c.Begins = start
			break
		}
	}
	return c
}

// mostMixed is how many prints the best way of centring allowed holds with the least gap.
func (t lattice) mostMixed(l layout) int {
	if l.area.Rect.W() <= 0 || l.area.Rect.H() <= 0 {
		return 0
	}
	if l.roughCount() > mostPrints {
		return 2 * mostPrints
	}
	most := 0
	for _, w := range t.waysFrom(l, l.leastGap()) {
		if w.allowed(l.pass) {
			most = max(most, w.Count)
		}
	}
	return most
}
