package plan

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// frame sets prints out along the sides of the printable area, the tops of the blocks facing
// out, or in. With all four sides the corners belong to the top and bottom rows, and the gaps
// are opened so that the frame closes. With only some sides each is a row, centred.
func frame(surface) repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			sides, err := l.setFrame()
			if err != nil {
				return nil, err
			}
			return []way{l.describeFrame(sides)}, nil
		},
		next:  []geometry.Site{{I: 1}},
		order: goFrame,
		taped: true,
		sizes: func(l layout, c Choice, sites []Site) otherSizes {
			return l.triedSizes(c, sites, false, mostInFrame)
		},
	}
}

// describeFrame says what the frame gives, side by side.
func (l layout) describeFrame(sides []frameSide) way {
	sites := l.placeFrame(sides)
	c := l.describe(Choice{Gap: l.leastGap()}, sites)
	c.RowCounts, c.ColumnCounts = nil, nil
	for _, s := range sides {
		run := Run{Name: string(s.side)}
		for _, site := range sites {
			if site.Block == nil && job.AllSides()[site.key.J] == s.side {
				run.Count++
			}
		}
		if run.Count == 0 {
			continue
		}
		if s.n > 1 || s.corners {
			run.Gap = s.gap
			if s.along.Y == 0 {
				c.Gap.Across = s.gap
			} else {
				c.Gap.Down = s.gap
			}
		}
		c.Runs = append(c.Runs, run)
	}
	if n := cornersOf(sites); n > 0 {
		c.Runs = append(c.Runs, Run{Name: "corners", Count: n})
	}
	c.Pitch = job.Spacing{Across: l.cell.W + c.Gap.Across, Down: l.cell.W + c.Gap.Down}
	return c
}

// frameSide is the run along one side, in the order in which one goes round clockwise.
type frameSide struct {
	side    job.Side
	n       int
	gap     geometry.Length
	corners bool           // it runs between corner prints, and keeps its gap to them
	first   geometry.Point // origin of its first print
	corner  geometry.Point // origin of the block in the corner before it, where that has one of its own
	along   geometry.Point // of length 1
	turn    geometry.Angle
}

// setFrame works out the runs in the order top, right, bottom, left.
func (l layout) setFrame() ([]frameSide, error) {
	if l.pass.Corner != nil {
		return l.setCornered()
	}
	size, area, gap := l.pass.Block.Size, l.area.Rect, l.pass.Gap
	has := l.pass.Sides.Has
	all := has(job.TopSide) && has(job.RightSide) && has(job.BottomSide) && has(job.LeftSide)
	if err := l.frameRoom(); err != nil {
		return nil, err
	}
	across := newRun(area.W(), size.W, gap.Across, all)
	if all && across.n < 2 {
		return nil, l.noCorners()
	}
	// The runs down stand between the rows that share their corners, a gap from each.
	free := geometry.Rect{Min: area.Min, Max: area.Max}
	if has(job.TopSide) {
		free.Min.Y += size.H + gap.Down.Least
	}
	if has(job.BottomSide) {
		free.Max.Y -= size.H + gap.Down.Least
	}
	down := newRun(free.H(), size.W, gap.Down, false)
	if all {
		between := area.H() - 2*size.H
		down.gap = (between - geometry.Length(down.n)*size.W) / geometry.Length(down.n+1)
		down.start = free.Min.Y - gap.Down.Least + down.gap
	} else {
		down.start += free.Min.Y
	}
	across.start += area.Min.X
	if down.n > 0 && has(job.LeftSide) && has(job.RightSide) && area.W()-2*size.H < gap.Across.Least-geometry.Tolerance {
		return nil, errors.New(`the prints along the left side would lie on those along the right; write a smaller block, or sides = ["top", "bottom"]`)
	}
	half := size.W / 2
	last := func(r frameRun) geometry.Length { return r.start + r.span(size.W) - half }
	tops := geometry.Angle(0)
	if l.pass.Tops == job.TopsIn {
		tops = 180
	}
	var sides []frameSide
	for _, s := range []frameSide{
		{side: job.TopSide, n: across.n, gap: across.gap, turn: 0, along: geometry.Pt(1, 0), first: geometry.Pt(across.start+half, area.Min.Y+size.H/2)},
		{side: job.RightSide, n: down.n, gap: down.gap, turn: 90, along: geometry.Pt(0, 1), first: geometry.Pt(area.Max.X-size.H/2, down.start+half), corners: all},
		{side: job.BottomSide, n: across.n, gap: across.gap, turn: 180, along: geometry.Pt(-1, 0), first: geometry.Pt(last(across), area.Max.Y-size.H/2)},
		{side: job.LeftSide, n: down.n, gap: down.gap, turn: 270, along: geometry.Pt(0, -1), first: geometry.Pt(area.Min.X+size.H/2, last(down)), corners: all},
	} {
		if has(s.side) {
			s.turn = (s.turn + tops).Normal()
			sides = append(sides, s)
		}
	}
	return sides, nil
}

// frameRoom refuses a frame whose opposite sides would lie on each other.
func (l layout) frameRoom() error {
	size, area, gap := l.pass.Block.Size, l.area.Rect, l.leastGap()
	top, bottom := l.pass.Sides.Has(job.TopSide), l.pass.Sides.Has(job.BottomSide)
	if size.W > area.W()+geometry.Tolerance && (top || bottom) {
		return fmt.Errorf("no print fits along the top: the block %s is %s wide and the printable area %s; write a smaller block or a smaller border",
			words.Quote(l.pass.Block.Name), l.units.Format(size.W), l.units.Format(area.W()))
	}
	if top && bottom && area.H()-2*size.H < gap.Down-geometry.Tolerance {
		return errors.New(`the prints along the top would lie on those along the bottom; write a smaller block, or sides = ["top"]`)
	}
	return nil
}

// noCorners refuses a frame along whose top only one print fits: it takes one for each corner.
func (l layout) noCorners() error {
	most := (l.area.Rect.W() - l.pass.Gap.Across.Least) / 2
	return fmt.Errorf(`only one print fits along the top, and a frame with all four sides has one in either corner; write a block of at most %s wide, or sides = ["top", "bottom"]`,
		l.units.Format(l.units.Down(most)))
}

// frameRun is a row of n prints in some room: where it starts and its gap.
type frameRun struct {
	n     int
	start geometry.Length
	gap   geometry.Length
}

// newRun centres as many prints as fit with the least gap, and then opens the gap: as far as
// its range allows, or so that the row fills the room.
func newRun(room, size geometry.Length, g job.Gap, fill bool) frameRun {
	n := int(math.Floor(float64((room + g.Least + geometry.Tolerance) / (size + g.Least))))
	r := frameRun{n: max(0, n), gap: g.Least}
	if r.n > 1 {
		r.gap = (room - geometry.Length(r.n)*size) / geometry.Length(r.n-1)
		if !fill {
			r.gap = clamp(g, r.gap)
		}
	}
	r.start = (room - r.span(size)) / 2
	return r
}

// span is the length of the row.
func (r frameRun) span(size geometry.Length) geometry.Length {
	return geometry.Length(r.n)*size + geometry.Length(max(0, r.n-1))*r.gap
}

// cornersOf counts the prints that have a block of the corners.
func cornersOf(sites []Site) int {
	n := 0
	for _, s := range sites {
		if s.Block != nil {
			n++
		}
	}
	return n
}

// placeFrame returns the prints of the runs, clockwise, each after the block of the corner before
// it. A print's key is its place on its side, that of such a block the one before the first, and
// the side.
func (l layout) placeFrame(sides []frameSide) []Site {
	var sites []Site
	for _, s := range sides {
		if l.pass.Corner != nil {
			site := Site{Origin: s.corner, Turn: s.turn, Block: l.pass.Corner, key: geometry.Site{I: -1, J: slices.Index(job.AllSides(), s.side)}}
			if l.holds(site) {
				sites = append(sites, site)
			}
		}
		for i := range s.n {
			at := s.first.Add(s.along.Mul(float64(i) * float64(l.cell.W+s.gap)))
			site := Site{Origin: at, Turn: s.turn, key: geometry.Site{I: i, J: slices.Index(job.AllSides(), s.side)}}
			if l.holds(site) {
				sites = append(sites, site)
			}
		}
	}
	return sites
}

// goFrame goes round the frame: clockwise from the far left corner, or for a left-handed
// printer anticlockwise from the far right one. The row along the top comes first either way.
func goFrame(sites []Site, hand job.Hand) []int {
	order := make([]int, len(sites))
	top := 0
	for i, s := range sites {
		order[i] = i
		if s.key.J == 0 {
			top = i + 1
		}
	}
	if hand == job.LeftHand {
		// The block of the far right corner, where it has one, comes before the row along the top.
		corner := top
		if top < len(sites) && sites[top].Block != nil {
			corner++
		}
		order = append(append(slices.Clone(order[top:corner]), order[:top]...), order[corner:]...)
		slices.Reverse(order[corner-top : corner])
		slices.Reverse(order[corner:])
	}
	return order
}

// mostInFrame is how many prints the frame of a layout holds.
func mostInFrame(l layout) int {
	if l.area.Rect.Empty() || l.roughCount() > 2*mostPrints {
		return 0
	}
	sides, err := l.setFrame()
	switch {
	case err != nil:
		return 0
	case len(l.area.zones) > 0:
		return len(l.placeFrame(sides))
	}
	n := 0
	for _, s := range sides {
		n += s.n
	}
	if l.pass.Corner != nil {
		n += len(sides)
	}
	return n
}

// insideFrames returns the area left to a pass by the frames printed before it on a face they
// share: drawn in on each side that a frame runs along by the depth of its deepest block and the gap
// of the pass. A pass that is seated by another, has places of its own or is a frame itself has the
// whole area.
func (l layout) insideFrames(before []*PassPlan) (Area, bool) {
	a := l.area
	if l.pass.Seated() || l.pass.Repeat.Framed() || l.pass.Repeat == job.Placed || !a.upright || a.surface.closes() {
		return a, false
	}
	var in geometry.Edges
	for _, p := range before {
		shares := p.Pass.Face == "" || l.pass.Face == "" || p.Pass.Face == l.pass.Face
		if !p.Pass.Framed() || !shares {
			continue
		}
		depth := newLayout(l.area, p.Pass).cell.H
		if c := p.Pass.Corner; c != nil {
			depth = max(depth, c.Size.W, c.Size.H)
		}
		for _, side := range []struct {
			side job.Side
			edge *geometry.Length
			gap  geometry.Length
		}{
			{job.TopSide, &in.Top, l.pass.Gap.Down.Least}, {job.RightSide, &in.Right, l.pass.Gap.Across.Least},
			{job.BottomSide, &in.Bottom, l.pass.Gap.Down.Least}, {job.LeftSide, &in.Left, l.pass.Gap.Across.Least},
		} {
			if p.Pass.Sides.Has(side.side) {
				*side.edge = max(*side.edge, depth+max(0, side.gap))
			}
		}
	}
	if in == (geometry.Edges{}) {
		return a, false
	}
	a.Rect = a.Rect.In(in)
	a.edge = a.Rect.Polygon().Path()
	return a, true
}
