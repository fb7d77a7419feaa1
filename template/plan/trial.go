package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// trial is a repeat with moved rows or columns, tried on other sizes: how many prints the best
// way of centring allowed would hold on a plain rectangle, without setting them out.
type trial struct {
	lattice
	pass *job.Pass
	room geometry.Size // of the printable area
	cell geometry.Size
	gap  job.Spacing
}

// best returns the most prints of any way of centring the job allows.
func (t trial) best() int {
	most := 0
	pitch := t.pitch(layout{cell: t.cell}, t.gap)
	for _, across := range []job.Centring{job.OnPrint, job.OnJoint} {
		for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
			if c := (Choice{Across: across, Down: down}); c.allowed(t.pass) {
				most = max(most, t.count(c, pitch))
			}
		}
	}
	return most
}

// count adds up the lines of prints, rows or columns. Along a line the origins are at
// (i + shift) pitch from the centre, and half the room less half the face is what they may
// be away from it.
func (t trial) count(c Choice, pitch job.Spacing) int {
	joint := func(on job.Centring) float64 {
		if on == job.OnJoint {
			return 0.5
		}
		return 0
	}
	along := reachLine{float64((t.room.W - t.cell.W) / 2 / pitch.Across), joint(c.Across)}
	over := reachLine{float64((t.room.H - t.cell.H) / 2 / pitch.Down), joint(c.Down)}
	if t.columns {
		along, over = over, along
	}
	share, n := t.share(t.pass), 0
	first, last := over.span(0)
	for k := first; k <= last; k++ {
		part := float64(k)*share - math.Floor(float64(k)*share+1e-9)
		if low, high := along.span(part); low <= high {
			n += high - low + 1
		}
	}
	return n
}

// reachLine is a line of places i + shift, of which those up to reach from 0 fit.
type reachLine struct{ reach, shift float64 }

// span returns the least and the greatest i that fit where the line is moved on by a part. It
// takes what fits but for rounding, and nothing more: a change is to be large enough.
func (l reachLine) span(part float64) (low, high int) {
	const rounding = 1e-11
	if l.reach < -rounding {
		return 1, 0
	}
	s := l.shift + part
	return int(math.Ceil(-l.reach - s - rounding)), int(math.Floor(l.reach - s + rounding))
}

// sizes works out, by trying, what other cloths the guide of a repeat with moved rows or
// columns serves, and what the next print more would take.
func (t lattice) sizes(l layout, c Choice) otherSizes {
	switch {
	case !l.area.Plain():
		return noSizes("the printable area is not a plain rectangle")
	case t.turn != nil:
		return noSizes("the grid lies askew on the cloth")
	case !l.sameBounds():
		return noSizes("prints lie both ways round")
	}
	now := trial{t, l.pass, l.area.Rect.Size(), l.cell, l.leastGap()}
	across, down := l.axes()
	extent, _ := t.extent(l, t.place(l, c))
	var s otherSizes
	for _, a := range []axis{across, down} {
		isDown := len(s.misses) > 0
		miss := now.miss(l, c, a, isDown)
		both := a.borders[0] + a.borders[1] + a.inside
		reach := extent.X
		if isDown {
			reach = extent.Y
		}
		if miss.Cloth != nil {
			served := &Serves{2*reach + a.face + both, a.room + *miss.Cloth + both}
			if isDown {
				s.down = served
			} else {
				s.across = served
			}
		}
		s.misses = append(s.misses, miss)
	}
	return s
}

// miss finds the least change of each kind that gives more prints than there are.
func (t trial) miss(l layout, c Choice, a axis, down bool) NearMiss {
	with := func(change func(*trial, geometry.Length)) func(geometry.Length) int {
		return func(d geometry.Length) int {
			u := t
			change(&u, d)
			return u.best()
		}
	}
	cloth := with(func(u *trial, d geometry.Length) { *side(&u.room, down) += d })
	border := with(func(u *trial, d geometry.Length) { *side(&u.room, down) += 2 * d })
	gap := with(func(u *trial, d geometry.Length) {
		if down && !t.oneGap {
			u.gap.Down -= d
		} else {
			u.gap.Across -= d
		}
	})
	block := with(func(u *trial, d geometry.Length) {
		if t.oneGap {
			k := (u.cell.W - d) / u.cell.W
			u.cell = geometry.Size{W: u.cell.W * k, H: u.cell.H * k}
			return
		}
		*side(&u.cell, down) -= d
	})
	miss := NearMiss{Down: down}
	// A moved row may be too short for a print of its own: what is a row or two more then
	// gives none, and only a good many do.
	for n := geometry.Length(4); miss.Cloth == nil && n <= 4096; n *= 4 {
		miss.Cloth = least(n*(a.face+a.gap.Least), c.Count, cloth)
	}
	miss.Border = least(min(a.borders[0], a.borders[1])-a.hem, c.Count, border)
	miss.Gap = least(a.gap.Least-leastOf(a.gap), c.Count, gap)
	miss.Block = least(a.face-job.LeastFace, c.Count, block)
	if miss.Cloth != nil {
		miss.Prints = cloth(*miss.Cloth)
	}
	return miss
}

func side(s *geometry.Size, down bool) *geometry.Length {
	if down {
		return &s.H
	}
	return &s.W
}

// least returns the least change up to a limit that gives more than n prints, by halving; nil:
// none does. More of a change never gives fewer prints.
func least(limit geometry.Length, n int, prints func(geometry.Length) int) *geometry.Length {
	if limit <= 0 || prints(limit) <= n {
		return nil
	}
	low, high := geometry.Length(0), limit
	for high-low > 1e-11 && (low+high)/2 > low && (low+high)/2 < high {
		if mid := (low + high) / 2; prints(mid) > n {
			high = mid
		} else {
			low = mid
		}
	}
	// What is written to a millionth of a millimetre is what was meant.
	if round := geometry.Length(math.Round(float64(high)*1e6) / 1e6); (round - high).Abs() < 1e-9 {
		high = round
	}
	return &high
}
