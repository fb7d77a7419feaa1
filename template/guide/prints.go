package guide

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// drawPrints draws every print of the face: footprint, wood, sign of the first corner, number,
// arrow.
func (g *guide) drawPrints() {
	for i, p := range g.face.Passes {
		if lapping(p) {
			g.drawLapped(p, g.pens.Pass(i))
		} else {
			g.drawOutlines(p, g.pens.Pass(i))
		}
		g.drawWood(p)
		g.drawSigns(p, i)
	}
	for i, p := range g.face.Passes {
		g.drawNumbers(p, i)
	}
}

// drawOutlines draws the footprint of every print of a pass.
func (g *guide) drawOutlines(p plan.FacePass, pen paper.Pen) {
	shapes := map[*job.Block]*paper.Shape{}
	for _, b := range p.Blocks() {
		shapes[b] = paper.NewShape(b.Face.Path())
	}
	for i, print := range p.Prints {
		role := paper.Role{Kind: RolePrint, Number: p.NumberOf(i)}
		for n, o := range g.face.Item.Area.Again(print, print.Outline) {
			if n == 0 {
				g.Stamp(shapes[print.Block], paper.Place{At: print.Origin, Turn: print.Turn}, pen, role)
			} else { // what comes in at a seam's other side
				g.Stamp(paper.NewShape(o.Path()), paper.Place{}, pen, role)
			}
			if g.layered {
				g.takeLines(o.Path())
			}
		}
	}
}

// layered tells whether lines of one print may run through another: of passes that lie on each
// other, of wood that reaches beyond the gap, of prints that lap.
func layered(f plan.FacePlan) bool {
	for _, p := range f.Passes {
		gap := p.Choice().Gap
		wooden := slices.ContainsFunc(p.Blocks(), func(b *job.Block) bool { return !b.Wood.None() })
		if wooden || min(gap.Across, gap.Down) < 0 {
			return true
		}
	}
	return len(f.Passes) > 1
}

// takeLines remembers where a path runs, so that text keeps off it.
func (g *guide) takeLines(path geometry.Path) {
	const step, air = 3 * geometry.Millimetre, 0.2 * geometry.Millimetre
	take := func(a, b geometry.Point) {
		side, n := b.Sub(a), 1.0
		if side.X != 0 && side.Y != 0 {
			n = math.Ceil(float64(side.Norm() / step))
		}
		for k := range int(n) {
			from, to := a.Add(side.Mul(float64(k)/n)), a.Add(side.Mul(float64(k+1)/n))
			g.lines.Take(geometry.Line(from, to).Bounds().Grow(air))
		}
	}
	for _, piece := range path {
		at := piece.Start
		for _, s := range piece.Steps {
			n := 1.0
			if s.Curved {
				n = max(2, math.Ceil(float64(at.Distance(s.To)/step)))
			}
			from := at
			for i := 1.0; i <= n; i++ {
				t := i / n
				q := s.To
				if s.Curved && t < 1 {
					u := 1 - t
					q = from.Mul(u * u * u).Add(s.C1.Mul(3 * u * u * t)).Add(s.C2.Mul(3 * u * t * t)).Add(s.To.Mul(t * t * t))
				}
				take(at, q)
				at = q
			}
		}
		if piece.Closed {
			take(at, piece.Start)
		}
	}
}
