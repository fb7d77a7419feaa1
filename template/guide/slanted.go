package guide

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// slantedDepth is how far out from the cloth, square to its edge, slanted ticks begin, end, and
// have their names.
var slantedDepth = [3]geometry.Length{tickClear, tickClear + tickLength, tickClear + tickLength + 3}

// drawSlanted draws the ticks of diagonal passes: where both edges of every slanted row and
// column would leave the cloth, along the line itself, so that a tape or a rule laid from one
// to its twin is the line.
func (g *guide) drawSlanted() {
	if g.reach < slantedDepth[1] {
		return
	}
	for _, p := range g.face.Passes {
		if !p.Pass.Slanted() {
			continue
		}
		turn := p.Pass.GridTurn
		size := p.Pass.Place()
		g.slantedLines(p, turn, size.H, "row")
		g.slantedLines(p, turn+90, size.W, "column")
	}
}

// slantedLines draws the ticks of all lines that run in the direction turn, of prints as thick
// as depth across it.
func (g *guide) slantedLines(p plan.FacePass, turn geometry.Angle, depth geometry.Length, word string) {
	along := geometry.Pt(1, 0).Turn(turn)
	across := geometry.Pt(0, 1).Turn(turn)
	centre := g.face.Item.Area.Centre()
	var offs []geometry.Length
	for _, print := range p.Prints {
		d := print.Origin.Sub(centre)
		off := d.X*across.X + d.Y*across.Y
		if !slices.ContainsFunc(offs, func(o geometry.Length) bool { return (o - off).Abs() < 0.01 }) {
			offs = append(offs, off)
		}
	}
	slices.SortFunc(offs, cmp.Compare[geometry.Length])
	for i, off := range offs {
		for _, edge := range []geometry.Length{off - depth/2, off + depth/2} {
			at := centre.Add(across.Mul(float64(edge)))
			from, to := exits(g.cloth.Grow(slantedDepth[0]), at, along), exits(g.cloth.Grow(slantedDepth[1]), at, along)
			for end := range from {
				tick := geometry.Line(from[end], to[end])
				g.Stroke(tick, g.pens.Tick)
				g.crowd.Take(tick.Bounds())
			}
		}
		middle := centre.Add(across.Mul(float64(off)))
		for _, q := range exits(g.cloth.Grow(slantedDepth[2]), middle, along) {
			for _, text := range []string{word + " " + strconv.Itoa(i+1), strconv.Itoa(i + 1)} {
				l := paper.Label{Text: text, At: q, Height: tickText, Bold: true}
				if box := l.Extent().Grow(0.3); g.Bounds.Holds(box) && g.crowd.Free(box) {
					g.Write(l)
					g.crowd.Take(box)
					break
				}
			}
		}
	}
}

// exits returns where the line through p, which lies in r, leaves r: backwards and forwards.
func exits(r geometry.Rect, p, along geometry.Point) [2]geometry.Point {
	reach := [2]float64{math.Inf(-1), math.Inf(1)}
	for _, side := range []struct{ to, step geometry.Length }{
		{r.Min.X - p.X, along.X}, {r.Max.X - p.X, along.X}, {r.Min.Y - p.Y, along.Y}, {r.Max.Y - p.Y, along.Y},
	} {
		if side.step.Abs() < geometry.Tolerance {
			continue
		}
		if t := float64(side.to / side.step); t < 0 {
			reach[0] = math.Max(reach[0], t)
		} else {
			reach[1] = math.Min(reach[1], t)
		}
	}
	return [2]geometry.Point{p.Add(along.Mul(reach[0])), p.Add(along.Mul(reach[1]))}
}
