package geometry

import (
	"cmp"
	"slices"
)

// chain is a closed run of curves, each starting where the one before ends.
type chain []curve

// joint is a way to go on from the end of one curve to the start of another.
type joint struct {
	from, to int
	gap      Length
}

// widestGap is the most by which the end of a curve may miss the start of the next: far
// below what can be drawn, far above what rounding leaves where curves meet at a slant.
const widestGap = 0.01 * Millimetre

// chains puts curves end to end, the nearest ends first.
func chains(curves []curve) []chain {
	var joints []joint
	for i, c := range curves {
		for j, e := range curves {
			if (c.b.X-e.a.X).Abs() > widestGap || (c.b.Y-e.a.Y).Abs() > widestGap {
				continue
			}
			joints = append(joints, joint{i, j, c.b.Distance(e.a)})
		}
	}
	slices.SortStableFunc(joints, func(a, b joint) int { return cmp.Compare(a.gap, b.gap) })
	next := slices.Repeat([]int{-1}, len(curves))
	taken := make([]bool, len(curves))
	for _, j := range joints {
		if next[j.from] < 0 && !taken[j.to] {
			next[j.from], taken[j.to] = j.to, true
		}
	}
	var all []chain
	used := make([]bool, len(curves))
	for i := range curves {
		var c chain
		for k := i; k >= 0 && !used[k]; k = next[k] {
			used[k] = true
			c = append(c, curves[k])
		}
		if c != nil {
			all = append(all, c)
		}
	}
	return all
}

// area returns the area c goes round: positive where it does so clockwise as seen.
func (c chain) area() float64 {
	var sum float64
	for _, e := range c {
		sum += e.under(c[0].a)
	}
	return sum
}

func (c chain) length() Length {
	var sum Length
	for _, e := range c {
		sum += e.length()
	}
	return sum
}

func (c chain) bounds() Rect {
	r := c[0].bounds()
	for _, e := range c[1:] {
		r = r.Union(e.bounds())
	}
	return r
}

// piece returns the closed way of the pen round c.
func (c chain) piece() Piece {
	p := Piece{Start: c[0].a, Closed: true}
	for _, e := range c {
		p.Steps = append(p.Steps, e.steps()...)
	}
	last := len(p.Steps) - 1
	p.Steps[last].To = p.Start
	if !p.Steps[last].Curved {
		p.Steps = p.Steps[:last] // closing draws it
	}
	return p
}
