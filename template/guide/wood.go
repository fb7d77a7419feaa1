package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// bracketArm is the longest arm of a bracket at a corner of the wood.
const bracketArm = 10 * geometry.Millimetre

// drawWood draws the corners of the block's body round every print of a pass: whole lines would
// double every gap.
func (g *guide) drawWood(p plan.FacePass) {
	shapes := map[*job.Block]*paper.Shape{}
	for _, b := range p.Blocks() {
		if !b.Wood.None() {
			shapes[b] = paper.NewShape(Brackets(b.Wood))
		}
	}
	for i, print := range p.Prints {
		wood, shape := print.Block.Wood, shapes[print.Block]
		if shape == nil {
			continue
		}
		role := paper.Role{Kind: RoleWood, Number: p.NumberOf(i)}
		for n, o := range g.face.Item.Area.Again(print, wood.Place(print.Origin, print.Turn)) {
			if n == 0 {
				g.Stamp(shape, paper.Place{At: print.Origin, Turn: print.Turn}, g.pens.Wood, role)
			} else { // what comes in at a seam's other side
				g.Stamp(paper.NewShape(Brackets(o)), paper.Place{}, g.pens.Wood, role)
			}
			g.takeLines(Brackets(o))
		}
	}
}

// Brackets returns the corners of an outline, each arm a quarter of its side long, 10 mm at the
// most; of a circle, which has no corners, as much round each of its four quarters' middles.
func Brackets(o geometry.Outline) geometry.Path {
	var path geometry.Path
	if c, r, round := o.Round(); round {
		arm := min(bracketArm, r*geometry.Length(geometry.Angle(22.5).Radians()))
		sweep := geometry.Degrees(2 * float64(arm/r))
		for _, middle := range []geometry.Angle{45, 135, 225, 315} {
			path = append(path, geometry.Arc(c, r, middle-sweep/2, sweep)...)
		}
		return path
	}
	corners := o.Corners()
	n := len(corners)
	arm := func(from, to geometry.Point) geometry.Point {
		side := to.Sub(from)
		return from.Add(side.Mul(float64(min(bracketArm, side.Norm()/4) / side.Norm())))
	}
	for i, c := range corners {
		// From the corner outwards, so that no gap between dashes falls on it.
		path = append(path, geometry.Line(c, arm(c, corners[(i+n-1)%n]))...)
		path = append(path, geometry.Line(c, arm(c, corners[(i+1)%n]))...)
	}
	return path
}
