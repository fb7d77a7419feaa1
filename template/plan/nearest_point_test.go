package plan

import (
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
)

// TestNearestPoint compares with looking at every point.
func TestNearestPoint(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 9))
	at := func(side float64) geometry.Point {
		return geometry.Pt(geometry.Length(random.Float64()*side-100), geometry.Length(random.Float64()*side-100))
	}
	for _, n := range []int{1, 2, 7, 300} {
		points := make([]geometry.Point, n)
		for i := range points {
			points[i] = at(500)
		}
		points[n-1].X = 4000 // one far off makes the cells large
		near := newNearestPoint(points)
		for range 200 {
			p, want := at(900), geometry.Length(math.Inf(1))
			for _, q := range points {
				want = min(want, p.Distance(q))
			}
			if got := near.distance(p, geometry.Length(math.Inf(1))); math.Abs(float64(got-want)) > 1e-9 {
				t.Fatalf("%d points: the nearest to %v is %v off, found %v", n, p, want, got)
			}
			if got := near.distance(p, want/2); got > want/2+1e-9 {
				t.Fatalf("with a limit of %v: %v", want/2, got)
			}
		}
	}
}

// TestNeighbours compares with looking at every pair of keys.
func TestNeighbours(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 10))
	next := []geometry.Site{{I: 1}, {J: 1}, {I: -1, J: 1}}
	seen := map[geometry.Site]bool{}
	var sites []Site
	for range 400 {
		j := random.IntN(30) - 15
		if k := (geometry.Site{I: random.IntN(20) - 3*j, J: j}); !seen[k] {
			seen[k] = true
			sites = append(sites, Site{key: k})
		}
	}
	near := neighbours(sites, next)
	for i, s := range sites {
		want := map[int32]bool{}
		for j, u := range sites {
			d := geometry.Site{I: u.key.I - s.key.I, J: u.key.J - s.key.J}
			for _, n := range next {
				if d == n || d == (geometry.Site{I: -n.I, J: -n.J}) {
					want[int32(j)] = true
				}
			}
		}
		if len(want) != len(near[i]) {
			t.Fatalf("%v has %d beside it, %d found", s.key, len(want), len(near[i]))
		}
		for _, n := range near[i] {
			if !want[n] {
				t.Fatalf("%v is not beside %v", sites[n].key, s.key)
			}
		}
	}
}
