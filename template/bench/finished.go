package bench

import (
	"math"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
)

// finished draws a face as it will look, as large as goes into a box of a page: the cloth, the
// prints with their numbers, and the quarters.
func finished(face plan.FacePlan, box geometry.Rect) paper.View {
	d := &paper.Drawing{Bounds: box}
	cloth := face.Item.Area.Cloth
	room := box.Grow(-4)
	k := math.Min(float64(room.W()/cloth.W()), float64(room.H()/cloth.H()))
	at := func(p geometry.Point) geometry.Point { return p.Sub(cloth.Centre()).Mul(k).Add(room.Centre()) }
	d.Stroke(face.Item.Area.ClothPath().Map(at), paper.Pen{Width: 0.35})
	for _, z := range face.Item.Item.Zones {
		d.Fill(z.Rect.Polygon().Path().Map(at), paper.Grey(225))
	}
	taken := guide.NewCrowd(box)
	for i, p := range face.Passes {
		size := min(p.Pass.Block.Size.W, p.Pass.Block.Size.H) * geometry.Length(k)
		pen := guide.NewPens(job.FineLines).Pass(i)
		pen.Width = 0.13
		widest := strconv.Itoa(p.First + len(p.Prints) - 1)
		var height geometry.Length
		for _, h := range []geometry.Length{3.5, 2.5, 1.8, 1.3} {
			if height == 0 && h*2 <= size && paper.TextWidth(widest, h, false) <= size*0.8 {
				height = h
			}
		}
		for j, print := range p.Prints {
			if size < 0.3 {
				break
			}
			d.Stroke(print.Footprint.Outline.Path().Map(at), pen)
			for _, up := range []geometry.Length{0, -0.3, 0.3} {
				l := paper.Label{Text: strconv.Itoa(p.First + j), At: at(print.Origin).Add(geometry.Pt(0, up*size)), Height: height}
				// Where passes stand on each other there may be no room for the later number.
				if box := l.Extent(); height > 0 && taken.Free(box) {
					d.Write(l)
					taken.Take(box)
					break
				}
			}
		}
	}
	c := at(face.Item.Area.Centre())
	corner := at(cloth.Min)
	far := at(cloth.Max)
	quarter := paper.Pen{Type: paper.Chain, Width: 0.18, Ink: paper.Grey(90)}
	d.Stroke(geometry.Line(geometry.Pt(c.X, corner.Y-3), geometry.Pt(c.X, far.Y+3)), quarter)
	d.Stroke(geometry.Line(geometry.Pt(corner.X-3, c.Y), geometry.Pt(far.X+3, c.Y)), quarter)
	for _, q := range []struct {
		name   plan.Quarter
		x      geometry.Length
		y      geometry.Length
		anchor paper.Anchor
	}{
		{plan.FarLeft, corner.X - 3, corner.Y, paper.AnchorTopRight},
		{plan.FarRight, far.X + 3, corner.Y, paper.AnchorTopLeft},
		{plan.NearLeft, corner.X - 3, far.Y, paper.AnchorBottomRight},
		{plan.NearRight, far.X + 3, far.Y, paper.AnchorBottomLeft},
	} {
		l := paper.Label{Text: q.name.String(), At: geometry.Pt(q.x, q.y), Anchor: q.anchor, Height: 1.8, Ink: paper.Grey(90)}
		if box.Holds(l.Extent()) {
			d.Write(l)
		}
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}
