package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// Moves says how a cloth longer than the table is printed: stretch by stretch, from its near end,
// or where it is wider than high from its left end. The guide is made for one stretch; for the
// next the cloth is moved along, so that the last row printed lies where the row before the
// guide's first one would.
type Moves struct {
	Down    bool            // along the cloth's height, from the near end; else from the left
	Stretch geometry.Length // from laying to laying: a whole number of periods of the repeat
	Lines   int             // rows, or columns, in a stretch
	Times   int             // layings
	Last    int             // rows, or columns, in the last laying
	border  geometry.Length // plain cloth at the end begun with
	pitch   geometry.Length
	cloth   geometry.Rect
	centre  geometry.Point // of the prints of the first stretch
}

// along returns a step of a length away from the end begun with.
func (m *Moves) along(l geometry.Length) geometry.Point {
	if m.Down {
		return geometry.Pt(0, -l)
	}
	return geometry.Pt(l, 0)
}

// period returns after how many rows, or columns, a repeat comes again unmoved and with the same
// turns; false where a step has no such number up to a dozen.
func (t lattice) period(p *job.Pass, down bool) (int, bool) {
	n := p.Turns.Columns()
	if down {
		n = p.Turns.Rows()
	}
	if share := t.share(p); share != 0 && t.columns != down {
		const most = 12
		for q := 1; ; q++ {
			if q > most {
				return 0, false
			}
			if d := share * float64(q); math.Abs(d-math.Round(d)) < 1e-9 {
				n = n / gcd(n, q) * q
				break
			}
		}
	}
	return n, true
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// moved returns the key of the print that lies where a key's does, once the cloth is moved by so
// many rows, or columns, that its pattern comes again.
func (t lattice) moved(p *job.Pass, k geometry.Site, lines int, down bool) geometry.Site {
	slide := int(math.Round(float64(lines) * t.share(p)))
	switch {
	case down && t.columns:
		return geometry.Site{I: k.I, J: k.J + lines}
	case down:
		return geometry.Site{I: k.I - slide, J: k.J + lines}
	case t.columns:
		return geometry.Site{I: k.I - lines, J: k.J + slide}
	}
	return geometry.Site{I: k.I - lines, J: k.J}
}

// movesOf works out the stretches of a pass. The error is a plain sentence: the table is too short.
func (l layout) movesOf(t lattice, c Choice, sites []Site) (*Moves, error) {
	cloth := l.area.Cloth
	m := &Moves{Down: cloth.H() >= cloth.W(), cloth: cloth, border: c.Border.Left, pitch: c.Pitch.Across}
	size := l.cell.W
	if m.Down {
		m.border, m.pitch, size = c.Border.Bottom, c.Pitch.Down, l.cell.H
	}
	period, ok := t.period(l.pass, m.Down)
	if !ok {
		return nil, fmt.Errorf("with this step its rows never come again, so the cloth cannot be moved along; write step = \"1/2\" or \"1/3\"")
	}
	// Where what is moved runs along the cloth, a row is as high as its moved prints reach.
	if share := t.share(l.pass); share != 0 && t.columns == m.Down {
		most := 0.0
		for k := range 12 {
			f := float64(k) * share
			most = max(most, f-math.Floor(f+1e-9))
		}
		size += m.pitch * geometry.Length(most)
	}
	one := m.pitch * geometry.Length(period)
	k := int(math.Floor(float64((l.item.MoveAlong - m.border - size + geometry.Tolerance) / one)))
	if k < 1 {
		return nil, fmt.Errorf("the table, %s, is shorter than the plain end, one period of the repeat and one more row together; write move-along = %q or more",
			l.units.Format(l.item.MoveAlong), l.units.Format(l.units.Up(m.border+one+size)))
	}
	m.Lines = k * period
	m.Stretch = m.pitch * geometry.Length(m.Lines)
	lines := 0
	at := m.lineOf(sites)
	for _, s := range sites {
		lines = max(lines, at(s)+1)
	}
	m.Times = (lines + m.Lines - 1) / m.Lines
	m.Last = lines - (m.Times-1)*m.Lines
	return m, nil
}

// lineOf returns what tells in which row, or column, a site is, counted from 0 at the end begun
// with.
func (m *Moves) lineOf(sites []Site) func(Site) int {
	low, high := sites[0].Column, sites[0].Row
	for _, s := range sites {
		low, high = min(low, s.Column), max(high, s.Row)
	}
	return func(s Site) int {
		if m.Down {
			return high - s.Row
		}
		return s.Column - low
	}
}

// stretches gives each site its stretch, and returns with them the sites of one whole stretch,
// where they lie in the first: those that any stretch has.
func (m *Moves) stretches(t lattice, p *job.Pass, sites []Site, line func(Site) int) (all, one []Site) {
	index := map[geometry.Site]int{} // of one, by key
	all = slices.Clone(sites)
	for i, s := range all {
		n := line(s) / m.Lines
		all[i].Stretch = n + 1
		back := s
		back.key = t.moved(p, s.key, n*m.Lines, m.Down)
		back.Origin = s.Origin.Sub(m.along(m.Stretch * geometry.Length(n)))
		if m.Down {
			back.Row += n * m.Lines
		} else {
			back.Column -= n * m.Lines
		}
		back.Stretch = 1
		if _, have := index[back.key]; !have {
			index[back.key] = len(one)
			one = append(one, back)
		}
		all[i].InStretch = index[back.key] // for now its place in one
	}
	return all, one
}

// arrange puts the sites of a pass in the order they are printed in: stretch by stretch, each in
// the order of one whole stretch.
func arrange(all, one []Site, order []int) (sites, laid []Site) {
	rank := make([]int, len(one))
	for n, i := range order {
		rank[i] = n + 1
		one[i].InStretch = n + 1
		laid = append(laid, one[i])
	}
	for i := range all {
		all[i].InStretch = rank[all[i].InStretch]
	}
	slices.SortStableFunc(all, func(a, b Site) int {
		return cmp.Or(cmp.Compare(a.Stretch, b.Stretch), cmp.Compare(a.InStretch, b.InStretch))
	})
	return all, laid
}

// notes says how the cloth is moved.
func (m *Moves) note(l layout) string {
	if m.Times == 1 {
		return "the whole cloth goes on the table, so it need not be moved"
	}
	what, end := "rows", "near"
	if !m.Down {
		what, end = "columns", "left"
	}
	return fmt.Sprintf("the guide is laid %d times, from the %s end: %d %s a laying, %d in the last; each time the cloth is moved by %s, and an error in laying it can add up to %d times itself",
		m.Times, end, m.Lines, what, m.Last, l.units.Format(m.Stretch), m.Times)
}

// move sets the prints out stretch by stretch.
func (p *PassPlan) move(r repeat, sites []Site, hand job.Hand) error {
	l, t := p.layout, r.lattice
	if l.target != nil {
		l.moves, t = l.target.layout.moves, repeatOf(l.root().layout).lattice
	} else {
		var err error
		if l.moves, err = l.movesOf(*t, p.Choice(), sites); err != nil {
			return err
		}
	}
	pass, line := l.pass, l.moves.lineOf(sites)
	if l.target != nil {
		pass, line = l.root().Pass, l.seatLine()
	}
	m := *l.moves
	all, one := m.stretches(*t, pass, sites, line)
	m.centre = fieldOf(l.pass.Block, one).Centre()
	l.moves = &m
	near := neighbours(one, r.next)
	order := l.order(r, one, near, m.centre, hand)
	if l.pass.On != nil {
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(one[a].InStretch, one[b].InStretch) })
	}
	p.layout = l
	sites, laid := arrange(all, one, order)
	p.Prints, p.laid = l.prints(sites, inOrder(len(sites)), hand), l.prints(laid, inOrder(len(laid)), hand)
	p.extras(r, one, near, order[0])
	switch {
	case l.target == nil:
		p.Notes = append(p.Notes, m.note(l))
	case l.pass.Between != nil && m.Times > 1:
		p.Notes = append(p.Notes, "in the first laying its prints before the first row are left out: they come in between two layings")
	}
	return nil
}

// inOrder returns the numbers from 0 up to n.
func inOrder(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}

// root is the pass whose repeat the prints follow in the end: that of a pass set on one that is seated
// itself is the one which that is seated by.
func (l layout) root() *PassPlan {
	root := l.target
	for root.layout.target != nil {
		root = root.layout.target
	}
	return root
}

// seatLine returns what tells in which row, or column, of the target a seat is printed: of the
// prints it stands on or between, the one printed last.
func (l layout) seatLine() func(Site) int {
	prints := l.target.Prints
	if l.target.layout.target != nil { // it goes with the stretch of the print it is set on
		stretches := map[geometry.Site]int{}
		for _, p := range prints {
			stretches[p.key] = p.Stretch
		}
		return func(s Site) int { return (stretches[s.key] - 1) * l.moves.Lines }
	}
	sites := make([]Site, len(prints))
	byKey := map[geometry.Site]Site{}
	for i, p := range prints {
		sites[i] = p.Site
		byKey[p.key] = p.Site
	}
	line := l.target.layout.moves.lineOf(sites)
	return func(s Site) int {
		most := 0
		around := []geometry.Site{s.key}
		if l.pass.Between != nil {
			around = append(around, geometry.Site{I: s.key.I + 1, J: s.key.J}, geometry.Site{I: s.key.I, J: s.key.J + 1}, geometry.Site{I: s.key.I + 1, J: s.key.J + 1})
		}
		for _, k := range around {
			if at, ok := byKey[k]; ok {
				most = max(most, line(at))
			}
		}
		return most
	}
}
