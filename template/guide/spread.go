package guide

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/planner"
	"underlay/template/job"
	"underlay/template/plan"
)

// What a print cut by a join weighs, and a join beside a crease or a tape line, against a cut
// number, arrow or name, which weigh 1. A join beside a line that things are laid by is taken
// for it, and worse than any print in two parts.
const (
	wholePrint = 1_000
	clearLine  = 10_000_000
)

// linePart is half the width of the widest line: a join on the edge of a print cuts it.
const linePart = 0.2 * geometry.Millimetre

// SetupOf is what the job's guides are printed on.
func SetupOf(j *job.Job) paper.Setup {
	return paper.Setup{Stock: j.Paper.Stock, Margin: j.Paper.Margin, Overlap: j.Paper.Overlap, Scale: j.Printer.Scale()}
}

// rimmed is the part of the item's frame its guide takes up with some reach.
func rimmed(ip *plan.ItemPlan, reach geometry.Length) geometry.Rect {
	r := ip.Area.Cloth
	if path, _ := seamLap(ip); path != nil {
		r = r.Union(path.Bounds())
	}
	return r.Grow(reach)
}

// shown is what a guide has to show with some reach: the row too on which the last one printed is
// laid, where the cloth is moved along.
func shown(ip *plan.ItemPlan, reach geometry.Length) geometry.Rect {
	r := rimmed(ip, reach)
	if ip.LaidOn != (geometry.Rect{}) {
		r = r.Union(ip.LaidOn.Grow(linePart))
	}
	return r
}

// bounds is the part of the item's frame its guide takes up.
func bounds(ip *plan.ItemPlan, j *job.Job) geometry.Rect { return shown(ip, j.Paper.Reach) }

// reachOf returns how far a guide with some bounds runs past the cloth, on its shortest side.
func reachOf(ip *plan.ItemPlan, bounds geometry.Rect) geometry.Length {
	r := rimmed(ip, 0)
	return slices.Min([]geometry.Length{
		r.Min.X - bounds.Min.X, r.Min.Y - bounds.Min.Y, bounds.Max.X - r.Max.X, bounds.Max.Y - r.Max.Y,
	})
}

// Spread draws a face's guide and spreads it over the job's paper. Where the reach is cut short
// to save sheets the guide is drawn anew, to go with that. The error tells what of the paper to
// change.
func Spread(j *job.Job, face plan.FacePlan) (*paper.Drawing, paper.Tiling, error) {
	g, tiling, err := spread(j, face)
	if err != nil {
		return nil, tiling, err
	}
	return g.Drawing, tiling, nil
}

func spread(j *job.Job, face plan.FacePlan) (*guide, paper.Tiling, error) {
	g := drawIn(j, face, bounds(face.Item, j))
	l := g.sheetLayout(shortest(j, face))
	tiling, err := g.spread(planner.NewPlanner(l), SetupOf(j))
	if err != nil {
		return nil, tiling, err
	}
	if tiling.Strips {
		return g, tiling, nil
	}
	if short := shortened(g.Bounds, l.Bounds, tiling.Layout); short != g.Bounds {
		g = drawIn(j, face, short)
	}
	return g, tiling, nil
}

// spread spreads the guide over sheets: one that shows the edges alone over strips, where they
// take less paper.
func (g *guide) spread(thePlanner *planner.Planner, setup paper.Setup) (paper.Tiling, error) {
	tiling, err := thePlanner.Plan(setup)
	if err != nil || g.job.Paper.Extent != job.EdgesExtent || len(tiling.Sheets) == 1 {
		return tiling, err
	}
	rim := planner.Rim{Edge: g.face.Item.Area.ClothPath(), Sides: [4]string{"far", "right", "near", "left"}, Rest: "edge"}
	if strips, ok := planner.PlanStrips(g.sheetLayout(g.reach), rim, setup); ok && strips.Leaves() < len(tiling.Sheets) {
		return strips, nil
	}
	return tiling, nil
}

// shortened returns bounds with each side drawn in that was cut short: at shown, and not at all.
func shortened(bounds, all, shown geometry.Rect) geometry.Rect {
	side := func(to *geometry.Length, all, shown geometry.Length) {
		if d := all - shown; d > geometry.Tolerance || d < -geometry.Tolerance {
			*to = shown
		}
	}
	side(&bounds.Min.X, all.Min.X, shown.Min.X)
	side(&bounds.Min.Y, all.Min.Y, shown.Min.Y)
	side(&bounds.Max.X, all.Max.X, shown.Max.X)
	side(&bounds.Max.Y, all.Max.Y, shown.Max.Y)
	return bounds
}

// sheetLayout is the guide as it is spread over sheets. The reach may be as short as least
// where that saves sheets, and a shade has none where nothing is drawn on it.
func (g *guide) sheetLayout(least geometry.Length) planner.Layout {
	l := planner.Layout{
		Bounds: g.Bounds, Least: shown(g.face.Item, least), Marks: planner.Boxes(g.Drawing),
	}
	line := func(to *[]planner.Rule, weight int, at ...geometry.Length) {
		for _, x := range at {
			*to = append(*to, planner.Rule{At: x, Weight: weight})
		}
	}
	middle := g.cloth.Centre()
	if level, _, ok := g.face.Item.Area.Creases(); ok {
		middle = level.Middle()
	}
	if down, ok := moved(g.face); !ok || down {
		line(&l.Upright, clearLine, middle.X)
	}
	if down, ok := moved(g.face); !ok || !down {
		line(&l.Level, clearLine, middle.Y)
	}
	across, down := g.face.Item.Cuts()
	line(&l.Upright, clearLine, across...)
	line(&l.Level, clearLine, down...)
	if g.face.Item.Item.Shade != (job.Shade{}) {
		drawn := rimmed(g.face.Item, 0)
		for _, b := range l.Marks {
			drawn = drawn.Union(b)
		}
		l.Bounds = l.Bounds.Intersect(drawn.Grow(linePart))
		l.Least = l.Least.Intersect(l.Bounds)
	}
	for _, label := range g.Labels {
		l.Whole = append(l.Whole, planner.Box{Rect: label.Extent(), Weight: 1})
	}
	for _, p := range g.face.Passes {
		if p.Tape != nil {
			line(&l.Upright, clearLine, p.Tape.Across...)
			line(&l.Level, clearLine, p.Tape.Down...)
		}
	}
	for _, s := range g.Strokes {
		if s.Role.Kind != RolePrint {
			continue
		}
		box := s.Bounds()
		l.Whole = append(l.Whole, planner.Box{Rect: box.Grow(linePart), Weight: wholePrint})
		line(&l.Upright, 0, box.Min.X, box.Max.X)
		line(&l.Level, 0, box.Min.Y, box.Max.Y)
	}
	for _, f := range g.Fills {
		if f.Role.Kind == RoleArrow {
			l.Whole = append(l.Whole, planner.Box{Rect: f.Bounds(), Weight: 1})
		}
	}
	return l
}
