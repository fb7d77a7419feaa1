package plan

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// setCornered works out a frame with blocks of its own in the four corners, each turned a quarter
// from the last, so that each side has the width of one and the height of the next. The side
// between them, of length L, takes n = floor((L - g) / (w + g)) prints, and its gap is opened to
// (L - n w) / (n + 1).
func (l layout) setCornered() ([]frameSide, error) {
	size, corner, area := l.pass.Block.Size, l.pass.Corner.Size, l.area.Rect
	if err := l.frameRoom(); err != nil {
		return nil, err
	}
	w, first := size.W, geometry.Angle(0)
	if l.pass.Tops == job.TopsIn {
		first = 180
	}
	run := func(side geometry.Length, gap job.Gap) (n int, opened geometry.Length) {
		room := side - corner.W - corner.H
		if room < gap.Least-geometry.Tolerance {
			return -1, 0
		}
		n = max(0, int(math.Floor(float64((room-gap.Least+geometry.Tolerance)/(w+gap.Least)))))
		return n, (room - geometry.Length(n)*w) / geometry.Length(n+1)
	}
	across, gapAcross := run(area.W(), l.pass.Gap.Across)
	down, gapDown := run(area.H(), l.pass.Gap.Down)
	if across < 0 || down < 0 {
		return nil, fmt.Errorf("two blocks %s, %s, have no room in the corners of one side; write a smaller block for the corners, or a smaller border",
			words.Quote(l.pass.Corner.Name), l.units.FormatSize(corner))
	}
	from, to := corner.W+gapAcross+w/2, corner.W+gapDown+w/2
	sides := []frameSide{
		{side: job.TopSide, n: across, gap: gapAcross, along: geometry.Pt(1, 0), first: geometry.Pt(area.Min.X+from, area.Min.Y+size.H/2),
			corner: geometry.Pt(area.Min.X+corner.W/2, area.Min.Y+corner.H/2)},
		{side: job.RightSide, n: down, gap: gapDown, along: geometry.Pt(0, 1), first: geometry.Pt(area.Max.X-size.H/2, area.Min.Y+to),
			corner: geometry.Pt(area.Max.X-corner.H/2, area.Min.Y+corner.W/2)},
		{side: job.BottomSide, n: across, gap: gapAcross, along: geometry.Pt(-1, 0), first: geometry.Pt(area.Max.X-from, area.Max.Y-size.H/2),
			corner: geometry.Pt(area.Max.X-corner.W/2, area.Max.Y-corner.H/2)},
		{side: job.LeftSide, n: down, gap: gapDown, along: geometry.Pt(0, -1), first: geometry.Pt(area.Min.X+size.H/2, area.Max.Y-to),
			corner: geometry.Pt(area.Min.X+corner.H/2, area.Max.Y-corner.W/2)},
	}
	for i := range sides {
		sides[i].corners, sides[i].turn = true, (first + geometry.Angle(i)*90).Normal()
	}
	return sides, l.meetInCorners(sides)
}

// meetInCorners refuses a frame of which the last print of a side comes too near to the first of
// the next, because the block of the corner between them is smaller than the side is deep.
func (l layout) meetInCorners(sides []frameSide) error {
	box := func(s frameSide, i int) geometry.Rect {
		return l.pass.Block.Face.Turn(s.turn).Bounds().Move(s.first.Add(s.along.Mul(float64(i) * float64(l.pass.Block.Size.W+s.gap))))
	}
	least := min(l.pass.Gap.Across.Least, l.pass.Gap.Down.Least)
	for i, s := range sides {
		next := sides[(i+1)%len(sides)]
		if s.n == 0 || next.n == 0 {
			continue
		}
		a, b := box(s, s.n-1), box(next, 0)
		dx, dy := max(b.Min.X-a.Max.X, a.Min.X-b.Max.X), max(b.Min.Y-a.Max.Y, a.Min.Y-b.Max.Y)
		if max(dx, dy) < -geometry.Tolerance || geometry.Pt(max(0, dx), max(0, dy)).Norm() < least-geometry.Tolerance {
			return fmt.Errorf("the prints along the %s come too near to those along the %s, as the block in the corner is smaller than the frame is deep; write a block of %s or more for the corners",
				s.side, next.side, l.units.FormatSize(geometry.Size{W: l.pass.Block.Size.H, H: l.pass.Block.Size.H}))
		}
	}
	return nil
}
