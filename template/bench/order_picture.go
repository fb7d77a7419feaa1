package bench

import (
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
)

// numberHeight is how high the numbers in the order's picture are (ISO 3098).
const numberHeight = 2.5 * geometry.Millimetre

// orderPicture draws the order of printing: the prints with their numbers, a path through them
// from the first to the last, and the quarters, every other one shaded. Where not every number
// finds room, those that begin a row of the path and every fifth come first; all tells whether
// none was left out.
func orderPicture(face plan.FacePlan, box geometry.Rect) (view paper.View, all bool) {
	d := &paper.Drawing{Bounds: box}
	s := fitted(face.Item.Area.Cloth, box.Grow(-1))
	s.shadeQuarters(d, face)
	d.Stroke(face.Item.Area.ClothPath().Map(s.At), paper.Pen{Width: clothLine})
	taken := guide.NewCrowd(box)
	all = true
	for _, p := range face.Passes {
		outlines := map[*job.Block]*paper.Shape{}
		for _, b := range p.Blocks() {
			outlines[b] = s.shape(b.Face)
		}
		for i, print := range p.Prints {
			d.Stamp(outlines[print.Block], paper.Place{At: s.At(print.Origin), Turn: print.Turn}, paper.Pen{Width: thinLine, Ink: paper.Grey(120)}, paper.Role{Kind: "print", Number: p.First + i})
		}
		s.drawPath(d, p)
		all = s.number(d, p, taken) && all
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}, all
}

// shadeQuarters shades the far left and near right quarters of the cloth, where some pass is
// printed by quarters.
func (s scaled) shadeQuarters(d *paper.Drawing, face plan.FacePlan) {
	if _, upright := face.Item.Item.Outline.Upright(); !upright || !byQuarters(face) {
		return
	}
	cloth, c := face.Item.Area.Cloth, face.Item.Area.Centre()
	for _, r := range []geometry.Rect{{Min: cloth.Min, Max: c}, {Min: c, Max: cloth.Max}} {
		d.Fill(r.Polygon().Path().Map(s.At), paper.Grey(232))
	}
}

// byQuarters tells whether some pass of a face is printed one quarter at a time.
func byQuarters(face plan.FacePlan) bool {
	for _, p := range face.Passes {
		if len(p.Choice().Runs) == 0 && p.Pass.Order == job.CentreOut && !p.Pass.EveryOther && (!p.Pass.Repeat.Single() || p.Pass.Repeat == job.Tossed) {
			return true
		}
	}
	return false
}

// mostOnPath is the most prints of a pass that a path is drawn through; of more it would be a
// tangle, and the shaded quarters and the numbers show the way.
const mostOnPath = 60

// drawPath draws the way from each print to the next, where that is beside it.
func (s scaled) drawPath(d *paper.Drawing, p plan.FacePass) {
	if len(p.Prints) > mostOnPath {
		return
	}
	c, size := p.Choice(), p.Pass.Block.Size
	reach := 1.6 * max(size.W+c.Gap.Across, size.H+c.Gap.Down, c.Pitch.Across, c.Pitch.Down)
	for i := 1; i < len(p.Prints); i++ {
		from, to := p.Prints[i-1].Origin, p.Prints[i].Origin
		if from.Distance(to) <= reach {
			d.Stroke(geometry.Line(s.At(from), s.At(to)), paper.Pen{Width: 0.25 * geometry.Millimetre})
		}
	}
}

// number writes the numbers of a pass, each on white ground; false where some find no room.
func (s scaled) number(d *paper.Drawing, p plan.FacePass, taken *guide.Crowd) bool {
	written := make([]bool, len(p.Prints))
	write := func(i int) {
		if written[i] {
			return
		}
		l := paper.Label{Text: strconv.Itoa(p.First + i), At: s.At(p.Prints[i].Origin), Height: numberHeight, Bold: i == 0, Ground: true,
			Role: paper.Role{Kind: "number", Number: p.First + i}}
		ground := l.GroundBox()
		if !d.Bounds.Holds(ground) || !taken.Free(ground) {
			return
		}
		taken.Take(ground)
		written[i] = true
		d.Write(l)
	}
	write(0)
	write(len(p.Prints) - 1)
	for i := range p.Prints {
		if i > 0 && p.Prints[i].Row != p.Prints[i-1].Row && p.Prints[i].Quarter != p.Prints[i-1].Quarter {
			write(i)
		}
	}
	for i := range p.Prints {
		if (p.First+i)%5 == 0 {
			write(i)
		}
	}
	whole := true
	for i := range p.Prints {
		write(i)
		whole = whole && written[i]
	}
	return whole
}
