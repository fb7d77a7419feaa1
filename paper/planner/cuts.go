package planner

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// stretch is a box as the planner sees it: from its lesser sides to its greater, across and
// down.
type stretch struct {
	from, to [2]float64
	weight   int
}

// hair is how near to its edge a join may come to a box and not cut it.
const hair = 1e-6

// boxes are the boxes not to be cut, sorted both ways.
type boxes struct {
	all          []stretch
	byFrom, byTo [2][]int32
}

func newBoxes(list []Box) *boxes {
	b := &boxes{all: make([]stretch, 0, len(list))}
	for _, w := range list {
		if w.Weight > 0 {
			b.all = append(b.all, stretch{
				[2]float64{float64(w.Min.X), float64(w.Min.Y)}, [2]float64{float64(w.Max.X), float64(w.Max.Y)}, w.Weight,
			})
		}
	}
	slices.SortStableFunc(b.all, func(s, t stretch) int { return cmp.Compare(s.weight, t.weight) })
	for d := range 2 {
		for _, o := range []struct {
			list *[]int32
			key  func(*stretch) float64
		}{
			{&b.byFrom[d], func(s *stretch) float64 { return s.from[d] }},
			{&b.byTo[d], func(s *stretch) float64 { return s.to[d] }},
		} {
			*o.list = make([]int32, len(b.all))
			for i := range *o.list {
				(*o.list)[i] = int32(i)
			}
			slices.SortFunc(*o.list, func(i, j int32) int { return cmp.Compare(o.key(&b.all[i]), o.key(&b.all[j])) })
		}
	}
	return b
}

// cutBy tells which boxes the joins cut.
func (b *boxes) cutBy(d int, places []place) []bool {
	cut := make([]bool, len(b.all))
	for i := range b.all {
		// The first join beyond the box's start is the one to cut it.
		s := &b.all[i]
		k := joinsUpTo(places, s.from[d]+hair)
		cut[i] = k < len(places) && places[k].at < s.to[d]-hair
	}
	return cut
}

// joinsUpTo returns how many of the joins lie before x or at it.
func joinsUpTo(places []place, x float64) int {
	return joinsBefore(places, math.Nextafter(x, math.Inf(1)))
}

// weigher returns the function that tells the weight a join cuts, of the boxes not cut yet.
func (b *boxes) weigher(d int, already []bool) func(float64) int {
	gather := func(order []int32, key func(*stretch) float64) (at []float64, sums []int) {
		at, sums = make([]float64, 0, len(order)), make([]int, 1, len(order)+1)
		for _, i := range order {
			if s := &b.all[i]; s.to[d]-s.from[d] > 3*hair && (already == nil || !already[i]) {
				at = append(at, key(s))
				sums = append(sums, sums[len(sums)-1]+s.weight)
			}
		}
		return at, sums
	}
	begun, begunSums := gather(b.byFrom[d], func(s *stretch) float64 { return s.from[d] })
	ended, endedSums := gather(b.byTo[d], func(s *stretch) float64 { return s.to[d] })
	return func(x float64) int {
		i, _ := slices.BinarySearch(begun, x-hair)
		j, _ := slices.BinarySearch(ended, x+hair)
		return begunSums[i] - endedSums[j]
	}
}

// weightOf returns the weight of the boxes in either set.
func (b *boxes) weightOf(one, other []bool) int {
	sum := 0
	for i := range b.all {
		if one[i] || other[i] {
			sum += b.all[i].weight
		}
	}
	return sum
}

// boxSet is a set of boxes: those of one weight share words with no others.
type boxSet []uint64

// classes tells how sets of boxes are laid out in words.
type classes struct {
	slots   []int32 // of each box
	weights []int   // of each word
}

func (b *boxes) classes() classes {
	c := classes{slots: make([]int32, len(b.all))}
	next := 0
	for i, s := range b.all {
		if i > 0 && s.weight != b.all[i-1].weight {
			next = (next + 63) / 64 * 64
		}
		c.slots[i] = int32(next)
		for len(c.weights) <= next/64 {
			c.weights = append(c.weights, s.weight)
		}
		next++
	}
	return c
}

func (c classes) set(in []bool) boxSet {
	m := make(boxSet, len(c.weights))
	for i, is := range in {
		if is {
			m[c.slots[i]/64] |= 1 << (c.slots[i] % 64)
		}
	}
	return m
}

// union returns the weight of the boxes in either set.
func (c classes) union(m, n boxSet) int {
	sum := 0
	for i, w := range m {
		sum += c.weights[i] * bits.OnesCount64(w|n[i])
	}
	return sum
}
