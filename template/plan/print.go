package plan

import (
	"math"
	"slices"
	"sync"

	"underlay/geometry"
	"underlay/template/job"
)

// Print is one impression.
type Print struct {
	Site
	Number    int
	Outline   geometry.Outline // of the face as it lies on the cloth
	TouchDown geometry.Point   // the corner put down first
	Quarter   Quarter
	Seam      bool // it lies across the seam of a shade, and is printed in two goes
	Piece     int  // of a cloth of several pieces, as it lies: the number of its piece
}

// Blocks returns the blocks of a pass, in the order in which they are first printed.
func (p *PassPlan) Blocks() []*job.Block {
	var blocks []*job.Block
	for _, print := range p.Prints {
		if !slices.Contains(blocks, print.Block) {
			blocks = append(blocks, print.Block)
		}
	}
	return blocks
}

// PrintsOf returns how many prints of a pass are made with a block.
func (p *PassPlan) PrintsOf(b *job.Block) int {
	n := 0
	for _, print := range p.Prints {
		if print.Block == b {
			n++
		}
	}
	return n
}

// prints works out the prints at the sites, in their order, on all cores.
func (l layout) prints(sites []Site, order []int, hand job.Hand) []Print {
	prints := make([]Print, len(order))
	const share = 2048
	var work sync.WaitGroup
	for from := 0; from < len(order); from += share {
		work.Go(func() {
			for i := from; i < min(from+share, len(order)); i++ {
				prints[i] = l.print(sites[order[i]], hand)
			}
		})
	}
	work.Wait()
	return prints
}

// print works out one print at a site.
func (l layout) print(s Site, hand job.Hand) Print {
	centre := l.area.Centre()
	if m := l.moves; m != nil {
		centre = m.centre.Add(m.along(m.Stretch * geometry.Length(s.Stretch-1)))
	}
	s.Block = s.block(l.pass.Block)
	f := s.Block.Face.Place(s.Origin, s.Turn)
	var corner geometry.Point
	if l.pass.Order == job.RowByRow || l.pass.Order == job.ByColumn && hand != job.LeftHand {
		corner = lowerLeft(f)
	} else if l.pass.Order == job.ByColumn {
		corner = lowerRight(f)
	} else {
		corner = touchDown(f, centre, hand)
	}
	return Print{
		Site: s, Outline: f, TouchDown: corner, Quarter: quarterOf(s.Origin, centre, hand),
		Seam: l.area.surface.crossesSeam(l.area, s.Block, s),
	}
}

// touchDown returns the corner of a print that goes down first: the one nearest the centre of
// the area; on a tie the near (lower) one, on the printer's off-hand side. Never one that points
// inwards: the block could not be swung round it. Of a round face it is the point of the edge in
// the direction of the centre, or, right on the centre, in that of the corner a square would
// have put down.
func touchDown(f geometry.Outline, centre geometry.Point, hand job.Hand) geometry.Point {
	if c, r, round := f.Round(); round && c.Near(centre) {
		offHand := -r
		if hand == job.LeftHand {
			offHand = r
		}
		centre = c.Add(geometry.Pt(offHand, r))
	}
	return bestCorner(f.Rim(centre), func(p, q geometry.Point) geometry.Length {
		return q.Distance(centre) - p.Distance(centre)
	}, hand)
}

// lowerRight returns the corner that goes down first where a left-handed printer goes column by
// column.
func lowerRight(f geometry.Outline) geometry.Point {
	corner := f.Bounds().Max
	return bestCorner(f.Rim(corner), func(p, q geometry.Point) geometry.Length {
		return q.Distance(corner) - p.Distance(corner)
	}, job.LeftHand)
}

// lowerLeft returns the corner that goes down first where prints follow row by row.
func lowerLeft(f geometry.Outline) geometry.Point {
	b := f.Bounds()
	corner := geometry.Pt(b.Min.X, b.Max.Y)
	return bestCorner(f.Rim(corner), func(p, q geometry.Point) geometry.Length {
		return q.Distance(corner) - p.Distance(corner)
	}, job.RightHand)
}

// bestCorner returns the corner that is ahead of all others by lead; on a tie the lower one,
// then the one on the off-hand side.
func bestCorner(corners []geometry.Point, lead func(p, q geometry.Point) geometry.Length, hand job.Hand) geometry.Point {
	best := corners[0]
	for _, p := range corners[1:] {
		offHand := best.X - p.X
		if hand == job.LeftHand {
			offHand = -offHand
		}
		for _, d := range []geometry.Length{lead(p, best), p.Y - best.Y, offHand} {
			if math.Abs(float64(d)) > float64(geometry.Tolerance) {
				if d > 0 {
					best = p
				}
				break
			}
		}
	}
	return best
}
