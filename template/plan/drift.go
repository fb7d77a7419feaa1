package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// Drift is how far errors can add up without a guide: an error e a placement can reach k e
// after k placements in a chain. With ticks it stays e.
type Drift struct {
	FromCentre int // k, the longest chain in the order printed
	FromCorner int // k, had it begun at a corner
	// Harmless is the error a placement that the longest chain from the centre turns into
	// the gap (or lap) itself: gap / k. 0 where there is no gap.
	Harmless geometry.Length
}

// driftOf finds the longest chains of prints, each next to the one before.
func driftOf(sites []Site, near [][]int32, first int, gap job.Spacing) Drift {
	corner := 0
	for i, s := range sites {
		c := sites[corner].Origin
		if s.Origin.Y-s.Origin.X > c.Y-c.X {
			corner = i
		}
	}
	return newDrift(chain(near, first), chain(near, corner), gap)
}

// driftAround is the drift of prints that go round, each set against the last: the chain is
// as long as the longest run, wherever it begins.
func driftAround(runs []Run, gap job.Spacing) Drift {
	k := 0
	for _, r := range runs {
		k = max(k, r.Count-1)
	}
	return newDrift(k, k, gap)
}

func newDrift(centre, corner int, gap job.Spacing) Drift {
	d := Drift{FromCentre: centre, FromCorner: corner}
	if centre > 0 {
		d.Harmless = min(gap.Across.Abs(), gap.Down.Abs()) / geometry.Length(centre)
	}
	return d
}

// chain returns how many placements away the farthest print is that can be reached.
func chain(near [][]int32, from int) int {
	steps := make([]int32, len(near))
	for i := range steps {
		steps[i] = -1
	}
	steps[from] = 0
	queue, last := []int32{int32(from)}, int32(0)
	for len(queue) > 0 {
		i := queue[0]
		queue = queue[1:]
		last = steps[i]
		for _, n := range near[i] {
			if steps[n] < 0 {
				steps[n] = last + 1
				queue = append(queue, n)
			}
		}
	}
	return int(last)
}
