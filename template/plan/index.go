package plan

import (
	"underlay/geometry"
)

// keyIndex finds a site by its key. Keys of one J lie close together, so that each J has a
// short list of its own, from its least I.
type keyIndex struct {
	low  int // least J
	rows []keyRow
}

type keyRow struct {
	low   int     // least I
	sites []int32 // index of the site, from 1; 0: there is none
}

func newKeyIndex(sites []Site) keyIndex {
	if len(sites) == 0 {
		return keyIndex{}
	}
	low, high := sites[0].key.J, sites[0].key.J
	for _, s := range sites {
		low, high = min(low, s.key.J), max(high, s.key.J)
	}
	type reach struct {
		low, high int
		used      bool
	}
	reaches := make([]reach, high-low+1)
	for _, s := range sites {
		k := &reaches[s.key.J-low]
		if !k.used {
			*k = reach{s.key.I, s.key.I, true}
		}
		k.low, k.high = min(k.low, s.key.I), max(k.high, s.key.I)
	}
	x := keyIndex{low, make([]keyRow, len(reaches))}
	for i, k := range reaches {
		if k.used {
			x.rows[i] = keyRow{k.low, make([]int32, k.high-k.low+1)}
		}
	}
	for i, s := range sites {
		r := x.rows[s.key.J-low]
		r.sites[s.key.I-r.low] = int32(i + 1)
	}
	return x
}

// find returns the index of the site with a key.
func (x keyIndex) find(k geometry.Site) (int, bool) {
	j := k.J - x.low
	if j < 0 || j >= len(x.rows) {
		return 0, false
	}
	r := x.rows[j]
	i := k.I - r.low
	if i < 0 || i >= len(r.sites) || r.sites[i] == 0 {
		return 0, false
	}
	return int(r.sites[i]) - 1, true
}

// neighbours lists, for each site, those it stands next to in its repeat.
func neighbours(sites []Site, next []geometry.Site) [][]int32 {
	at := newKeyIndex(sites)
	near := make([][]int32, len(sites))
	all := make([]int32, 0, 2*len(next)*len(sites))
	for i, s := range sites {
		from := len(all)
		for _, step := range next {
			for _, sign := range []int{1, -1} {
				if n, ok := at.find(geometry.Site{I: s.key.I + sign*step.I, J: s.key.J + sign*step.J}); ok {
					all = append(all, int32(n))
				}
			}
		}
		near[i] = all[from:len(all):len(all)]
	}
	return near
}
