package planner

import (
	"cmp"
	"math"
	"slices"

	"underlay/geometry"
)

// sliver is how far a mark may reach over a join without being on the sheet beyond it: no
// wider than a line.
const sliver = 0.05

// occupied is what is drawn, to tell which sheets have nothing of it: boxes sorted by where
// they begin, across and down. nil: everything is.
type occupied [2][]stretch

func newOccupied(marks []geometry.Rect) *occupied {
	if marks == nil {
		return nil
	}
	list := make([]stretch, len(marks))
	for i, m := range marks {
		list[i] = stretch{from: [2]float64{float64(m.Min.X), float64(m.Min.Y)}, to: [2]float64{float64(m.Max.X), float64(m.Max.Y)}}
	}
	var o occupied
	for d := range o {
		o[d] = slices.Clone(list)
		slices.SortFunc(o[d], func(s, t stretch) int { return cmp.Compare(s.from[d], t.from[d]) })
	}
	return &o
}

// marked is a part of one direction that marks take up.
type marked struct{ from, to float64 }

func (m marked) middle() float64 { return (m.from + m.to) / 2 }

// on tells whether the part lies on a sheet that reaches from one join to the next: by more
// than a sliver, or, of what is no larger itself, with its middle.
func (m marked) on(from, to float64) bool {
	return min(m.to, to)-max(m.from, from) > sliver || m.middle() >= from && m.middle() < to
}

// bands returns for each of the bands that the joins of direction d make, where along the
// other direction there are marks: parts that rise and lie apart.
func (o *occupied) bands(d int, places []place) [][]marked {
	bands := make([][]marked, len(places)+1)
	e := 1 - d
	for i := range o[e] {
		s := &o[e][i]
		own := marked{s.from[d], s.to[d]}
		for k := joinsBefore(places, own.from); k < len(bands); k++ {
			from, to := ends(places, k)
			if from > own.to {
				break
			}
			if !own.on(from, to) {
				continue
			}
			if n := len(bands[k]); n > 0 && bands[k][n-1].to >= s.from[e] {
				bands[k][n-1].to = max(bands[k][n-1].to, s.to[e])
			} else {
				bands[k] = append(bands[k], marked{s.from[e], s.to[e]})
			}
		}
	}
	return bands
}

// joinsBefore returns how many of the joins lie before x.
func joinsBefore(places []place, x float64) int {
	low, high := 0, len(places)
	for low < high {
		if middle := (low + high) / 2; places[middle].at < x {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

// holdsOf tells whether some of the parts, none of which ends before it, lie on a sheet between two
// joins.
func holdsOf(parts []marked, from, to float64) bool {
	for i := 0; i < len(parts) && parts[i].from <= to; i++ {
		if parts[i].on(from, to) {
			return true
		}
	}
	return false
}

// holds tells whether some of the parts lie on a sheet between two joins.
func holds(parts []marked, from, to float64) bool {
	i, _ := slices.BinarySearchFunc(parts, from, func(m marked, x float64) int { return cmp.Compare(m.to, x) })
	return holdsOf(parts[i:], from, to)
}

// ends returns the joins at both ends of sheet i of a direction.
func ends(places []place, i int) (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	if i > 0 {
		from = places[i-1].at
	}
	if i < len(places) {
		to = places[i].at
	}
	return from, to
}

// count returns how many sheets between the joins hold something of the bands, or, where that is
// more than most, some number more than that.
func count(bands [][]marked, places []place, most int) int {
	n := 0
	for _, parts := range bands {
		first := 0 // the first part that ends on the sheet or beyond it
		for i := range len(places) + 1 {
			from, to := ends(places, i)
			for first < len(parts) && parts[first].to < from {
				first++
			}
			if holdsOf(parts[first:], from, to) {
				n++
			}
		}
		if n > most {
			break
		}
	}
	return n
}

// sheets returns how many sheets hold something.
func (o *occupied) sheets(across, down []place) int {
	if o == nil {
		return (len(across) + 1) * (len(down) + 1)
	}
	return count(o.bands(1, down), across, math.MaxInt)
}

// bounds returns for each join of a direction how far it may be moved and leave every sheet
// empty that is so; bands are those of the other direction.
func bounds(bands [][]marked, places []place) []marked {
	list := make([]marked, len(places))
	for i := range list {
		list[i] = marked{math.Inf(-1), math.Inf(1)}
	}
	for _, parts := range bands {
		for i := range len(places) + 1 {
			from, to := ends(places, i)
			if holds(parts, from, to) {
				continue
			}
			after, _ := slices.BinarySearchFunc(parts, from, func(m marked, x float64) int { return cmp.Compare(m.middle(), x) })
			if i > 0 && after > 0 {
				list[i-1].from = max(list[i-1].from, min(from, parts[after-1].to))
			}
			if i < len(places) && after < len(parts) {
				list[i].to = min(list[i].to, max(to, parts[after].from))
			}
		}
	}
	return list
}
