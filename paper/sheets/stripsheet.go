package sheets

import (
	"underlay/geometry"
	"underlay/paper"
)

// framePen draws the edges that strips are cut out along.
var framePen = paper.Pen{Type: paper.Continuous, Width: 0.25, Ink: paper.Ink{}}

// furnishStrip returns the furniture of one strip of several on a page: its frame, its joins, and
// a panel and check bars as far as it has room. sp keeps off the frame.
func (f furnisher) furnishStrip(s paper.Sheet, sp *space, names []paper.Name) *paper.Drawing {
	b := board{space: sp, drawing: paper.Drawing{Bounds: s.Usable()}}
	usable := s.Usable()
	half := framePen.Width / 2
	b.drawing.Stroke(usable.Grow(-half).Polygon().Path(), framePen)
	for _, j := range s.Joined {
		f.drawStripJoin(&b, s, j)
	}
	b.putNames(names, s)
	calm := usable.Grow(-breath)
	for _, j := range s.Joined {
		near := s.OnPage(geometry.Rect{Min: j.From, Max: j.To}.Centre())
		b.putFree(neighbourSigns(j.Name, j.Side), wish{calm, near})
		if j.Cut {
			b.putFree(cutSigns(), wish{calm, near})
		}
	}
	whole := f.panels.strip(s)
	placed := b.putFree(whole, wish{calm, calm.Centre()})
	// A bar across a strip is short enough to stand beside the cloth's edge.
	across, down := usable.W(), usable.H()
	if across < down {
		across = 0
	} else {
		down = 0
	}
	// Beside the panel, so that no tick is taken for the end of one.
	beside := calm
	if placed {
		r := sp.signs[len(sp.signs)-1].Grow(3 * breath)
		if across == 0 {
			beside.Min.X, beside.Max.X = max(calm.Min.X, r.Min.X), min(calm.Max.X, r.Max.X)
		} else {
			beside.Min.Y, beside.Max.Y = max(calm.Min.Y, r.Min.Y), min(calm.Max.Y, r.Max.Y)
		}
	}
	b.putBarsOf(barsAcross, across, s.Scale.Across, f.panels.Inches, beside)
	b.putBarsOf(barsDown, down, s.Scale.Down, f.panels.Inches, beside)
	if !placed {
		b.putParts(whole, f.panels.parts(s))
	}
	return &b.drawing
}

// drawStripJoin draws the line of a join and its crosses, which both strips have at the same two
// points of the layout.
func (f furnisher) drawStripJoin(b *board, s paper.Sheet, j paper.Join) {
	pen := coverPen
	if j.Cut {
		pen = trimPen
	}
	from, to := s.OnPage(j.From), s.OnPage(j.To)
	b.drawing.Stroke(geometry.Line(from, to), pen)
	b.space.markLine(from, to)
	if f.tiling.Overlap < LeastCrossed {
		return
	}
	arm := min(crossReach(f.tiling.Overlap), j.From.Distance(j.To)/8)
	for _, part := range []float64{1. / 4, 3. / 4} {
		path := cross(j.From.Add(j.To.Sub(j.From).Mul(part)), arm).Map(s.OnPage)
		b.drawing.Stroke(path, crossPen)
		b.space.signs = append(b.space.signs, path.Bounds())
	}
}
