package planner

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// joinGrid is how close the places lie that are tried for a join, at the most.
const joinGrid = 0.2

// direction is one direction of a spread, across or down: n sheets that each show usable and
// share overlap at the least. All of it in millimetres, of the layout.
type direction struct {
	from, to         float64 // what must be shown
	wideFrom, wideTo float64 // what should be
	usable, overlap  float64
	n                int
	free             float64 // how far a join may lie from the middle of the least overlap
	slack, step      float64 // how far a join may be moved in all, and the steps to try
	steps            int
}

// newDirection counts the sheets it takes to show wide, or, where that saves some, least.
func newDirection(wideFrom, wideTo, from, to, usable, overlap float64) direction {
	d := direction{from: wideFrom, to: wideTo, wideFrom: wideFrom, wideTo: wideTo, usable: usable, overlap: overlap}
	d.n = sheetsAlong(wideTo-wideFrom, usable, overlap)
	if n := sheetsAlong(to-from, usable, overlap); n < d.n {
		d.n, d.from, d.to = n, from, to
	}
	// A cross on the join is whole on both sheets, and two joins keep apart.
	d.free = min(max(0, overlap/2-float64(paper.CrossArm)), (usable-overlap)/8)
	d.slack = max(0, float64(d.n)*(usable-overlap)+overlap-(d.to-d.from))
	d.steps = int(math.Ceil(d.slack/joinGrid - 1e-9))
	if d.steps > 0 {
		d.step = d.slack / float64(d.steps)
	}
	return d
}

// latest returns the farthest the middle of the overlap of the sheets i and i+1 can be, counted
// from 1: all sheets from the start share the least. It can be moved back by the slack.
func (d direction) latest(i int) float64 {
	return d.from + float64(i)*(d.usable-d.overlap) + d.overlap/2
}

// place is where two sheets join: middle is that of the least they share, at the line along
// which the one is cut and laid on the other.
type place struct{ middle, at float64 }

// value is what some joins come to: the weight they cut, the least clear distance of any, and
// how far from an even spread they are.
type value struct {
	cost          int
	clear, uneven float64
}

func (v value) and(w value) value {
	return value{v.cost + w.cost, min(v.clear, w.clear), v.uneven + w.uneven}
}

// order says which of two values is better: of less weight cut, and then what.
type order int

const (
	byClear order = iota // of the wider distance
	byEven               // of the more even spread
)

func (o order) better(v, w *value) bool {
	switch {
	case v.cost != w.cost:
		return v.cost < w.cost
	case o == byClear:
		return v.clear > w.clear
	}
	return v.uneven < w.uneven
}

// lone is what a join comes to at a place; ok is false where it cannot lie there.
type lone struct {
	value
	place
	ok bool
}

// join finds the best places for the joins, in their order: of the least weight cut, then of
// the widest clear distance of the nearest, then evenly spread. cut returns the weight that a
// join there cuts, clear how far it is from the nearest line, and within bounds join i. ok is
// false where the bounds leave no way.
func (d direction) join(cut func(float64) int, clear func(float64) float64, within func(i int) (from, to float64)) (places []place, best value, ok bool) {
	if d.n == 1 {
		return nil, value{clear: math.Inf(1)}, true
	}
	tried := make([][]lone, d.n-1)
	reach := 0
	if d.step > 0 {
		reach = int(d.free/d.step + 1e-9)
	} else if d.free > 0 {
		reach = int(d.free / joinGrid)
	}
	for i := range tried {
		tried[i] = d.tries(i+1, reach, cut, clear, within)
	}
	_, best, ok = d.choose(tried, reach, -1, byClear)
	if !ok {
		return nil, value{}, false
	}
	places, even, _ := d.choose(tried, reach, best.clear, byEven)
	best.uneven = even.uneven
	return places, best, true
}

// tries works out the places to try for join i: from reach steps after its latest to reach
// steps before its earliest.
func (d direction) tries(i, reach int, cut func(float64) int, clear func(float64) float64, within func(int) (float64, float64)) []lone {
	step := d.step
	if step == 0 {
		step = joinGrid
	}
	from, to := within(i)
	list := make([]lone, d.steps+1+2*reach)
	for j := range list {
		x := d.latest(i) - float64(j-reach)*step
		if x < from-1e-9 || x > to+1e-9 {
			continue
		}
		list[j] = lone{value: value{cost: cut(x), clear: clear(x)}, place: place{at: x}, ok: true}
	}
	return list
}

// calm is the distance beyond which a line is too far from a join to matter.
const calm = 10

// choose takes one place for each join such that no sheet shows more than it can: each join is
// moved back as far as the one before it, or farther. Places nearer to a line than least are
// not taken. It works from join to join, keeping the best way to have moved back by each
// number of steps (dynamic programming).
func (d direction) choose(tried [][]lone, reach int, least float64, order order) ([]place, value, bool) {
	type way struct {
		lone
		total value
		moved int32 // of the join before, the steps it is moved back
		ok    bool
	}
	step := d.step
	if step == 0 {
		step = joinGrid
	}
	// Moved back by more than half a sheet all at once, a sheet would be left with little.
	leap := d.steps
	if d.step > 0 {
		leap = int((d.usable - d.overlap) / 2 / d.step)
	}
	ways := make([][]way, len(tried))
	for i := range tried {
		ways[i] = make([]way, d.steps+1)
		// The ways to the join before that may yet be the best to come from, the best first.
		var best []int32
		for k := range ways[i] {
			before, beforeAt := value{clear: math.Inf(1)}, int32(0)
			if i > 0 {
				if w := &ways[i-1][k]; w.ok {
					for len(best) > 0 && order.better(&w.total, &ways[i-1][best[len(best)-1]].total) {
						best = best[:len(best)-1]
					}
					best = append(best, int32(k))
				}
				for len(best) > 0 && int(best[0]) < k-leap {
					best = best[1:]
				}
				if len(best) == 0 {
					continue
				}
				beforeAt = best[0]
				before = ways[i-1][beforeAt].total
			}
			own := &ways[i][k]
			middle := d.latest(i+1) - float64(k)*d.step
			shift := math.Abs(float64(k)*d.step - d.slack/2)
			for j := k; j <= k+2*reach; j++ {
				t := &tried[i][j]
				if !t.ok || t.clear < least-1e-9 || own.lone.ok && t.cost > own.cost {
					continue
				}
				t.uneven = shift + math.Abs(float64(j-k-reach))*step + 4*max(0, calm-t.clear)
				if !own.lone.ok || order.better(&t.value, &own.value) {
					own.lone = *t
				}
			}
			if own.lone.ok {
				own.middle, own.total, own.moved, own.ok = middle, before.and(own.value), beforeAt, true
			}
		}
	}
	last := -1
	final := ways[len(ways)-1]
	for k := range final {
		if w := &final[k]; w.ok && (last < 0 || order.better(&w.total, &final[last].total)) {
			last = k
		}
	}
	if last < 0 {
		return nil, value{}, false
	}
	places := make([]place, len(tried))
	for i, k := len(tried)-1, int32(last); i >= 0; i-- {
		places[i] = ways[i][k].place
		k = ways[i][k].moved
	}
	return places, final[last].total, true
}

// rigid returns the joins of sheets that share the least, all moved back by as much.
func (d direction) rigid(back float64) []place {
	places := make([]place, d.n-1)
	for i := range places {
		x := d.latest(i+1) - back
		places[i] = place{x, x}
	}
	return places
}

// shifts lists how far back the sheets may be moved, by so many millimetres at a time, from not
// at all to by the whole slack.
func (d direction) shifts(every int) []float64 {
	var list []float64
	for back := 0; float64(back) < d.slack; back += every {
		list = append(list, float64(back))
	}
	return append(list, d.slack)
}

// starts returns where each sheet begins: what it shows beyond its joins is shared out evenly
// to both sides, and on the outermost goes beyond the layout first.
func (d direction) starts(places []place) []float64 {
	starts := make([]float64, d.n)
	for i := range starts {
		earliest, latest := d.to-d.usable, d.from
		if i < d.n-1 {
			earliest = places[i].middle + d.overlap/2 - d.usable
		}
		if i > 0 {
			latest = places[i-1].middle - d.overlap/2
		}
		at := (earliest + latest) / 2
		switch {
		case d.n == 1:
			at = (d.wideFrom + d.wideTo - d.usable) / 2
		case i == 0:
			at = min(at, d.wideFrom)
		case i == d.n-1:
			at = max(at, d.wideTo-d.usable)
		}
		starts[i] = min(max(at, earliest), max(latest, earliest))
	}
	return starts
}

// mostAlong keeps the number of sheets one way, and its square, in the range of an int.
const mostAlong = 1 << 30

// sheetsAlong returns how many sheets that each show usable, and share overlap, it takes to
// cover length: ceil((length - overlap) / (usable - overlap)).
func sheetsAlong(length, usable, overlap float64) int {
	n := math.Ceil((length - overlap - float64(geometry.Tolerance)) / (usable - overlap))
	return int(math.Min(math.Max(n, 1), mostAlong))
}

// nearest returns how far x is from the nearest of the lines, which rise.
func nearest(lines []float64, x float64) float64 {
	i, _ := slices.BinarySearch(lines, x)
	far := math.Inf(1)
	if i < len(lines) {
		far = lines[i] - x
	}
	if i > 0 {
		far = min(far, x-lines[i-1])
	}
	return far
}
