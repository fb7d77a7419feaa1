package bench

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// scaled maps the frame of an item onto a box of a page, as large as it goes, at its top left.
type scaled struct {
	k    geometry.Length // page lengths are so many times true ones
	from geometry.Point  // the cloth's top left corner
	to   geometry.Point  // and where it lies on the page
}

// fitted lays a cloth into a box.
func fitted(cloth, box geometry.Rect) scaled {
	return scaled{min(box.W()/cloth.W(), box.H()/cloth.H()), cloth.Min, box.Min}
}

// at returns where a point of the item lies on the page.
func (s scaled) at(p geometry.Point) geometry.Point {
	return p.Sub(s.from).Mul(float64(s.k)).Add(s.to)
}

// shape returns a block's face, drawn so small, to be put down at each print.
func (s scaled) shape(face geometry.Outline) *paper.Shape {
	return paper.NewShape(face.Path().Map(func(p geometry.Point) geometry.Point { return p.Mul(float64(s.k)) }))
}

// Lines of the small pictures.
const (
	clothLine = 0.35 * geometry.Millimetre
	thinLine  = 0.18 * geometry.Millimetre
	hatchStep = 1.1 * geometry.Millimetre
)

// hero draws a face as it will look: the cloth with its hem, its plain border, and every print
// hatched, each pass another way, and each block of a pass.
func hero(face plan.FacePlan, box geometry.Rect) paper.View {
	d := &paper.Drawing{Bounds: box}
	s := fitted(face.Item.Area.Cloth, box.Grow(-1))
	s.drawCloth(d, face)
	for i, p := range face.Passes {
		outlines, hatches := map[*job.Block]*paper.Shape{}, map[*job.Block]*paper.Shape{}
		for k, b := range p.Blocks() {
			outlines[b] = s.shape(b.Face)
			hatches[b] = paper.NewShape(s.hatch(b.Face, hatchAngles[(i+k)%len(hatchAngles)]))
		}
		for k, print := range p.Prints {
			outline, lines := outlines[print.Block], hatches[print.Block]
			at := paper.Place{At: s.at(print.Origin), Turn: print.Turn}
			role := paper.Role{Kind: "print", Number: p.First + k}
			d.StampFill(outline, at, paper.Grey(255), role)
			d.Stamp(lines, at, paper.Pen{Width: thinLine}, role)
			d.Stamp(outline, at, paper.Pen{Width: thinLine}, role)
		}
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}

// hatchAngles are the ways the passes are hatched.
var hatchAngles = []geometry.Angle{45, -45, 0, 90}

// drawCloth draws the edge of the cloth, its hem, and the zones kept clear.
func (s scaled) drawCloth(d *paper.Drawing, face plan.FacePlan) {
	item := face.Item.Item
	d.Stroke(face.Item.Area.ClothPath().Map(s.at), paper.Pen{Width: clothLine})
	if item.Hem*s.k > 0.4 && !item.Outline.None() {
		if path, _, ok := item.Outline.Inset(item.Hem); ok {
			d.Stroke(path.Map(s.at), paper.Pen{Type: paper.Dashed, Width: thinLine})
		}
	}
	for _, z := range item.Zones {
		d.Fill(z.Rect.Polygon().Path().Map(s.at), paper.Grey(225))
	}
}

// hatch returns straight lines across a block's face, drawn small, in the direction of an angle.
func (s scaled) hatch(face geometry.Outline, angle geometry.Angle) geometry.Path {
	corners := slices.Clone(face.Corners())
	if centre, radius, ok := face.Round(); ok {
		for i := range 60 {
			corners = append(corners, centre.Add(geometry.Pt(radius, 0).Turn(geometry.Angle(i*6))))
		}
	}
	for i, c := range corners {
		corners[i] = c.Mul(float64(s.k)).Turn(-angle) // lines lie level now
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		low, high = math.Min(low, float64(c.Y)), math.Max(high, float64(c.Y))
	}
	var path geometry.Path
	for y := geometry.Length(low) + hatchStep/2; float64(y) < high; y += hatchStep {
		var cuts []geometry.Length
		for i, a := range corners {
			b := corners[(i+1)%len(corners)]
			if (a.Y <= y) != (b.Y <= y) {
				cuts = append(cuts, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
			}
		}
		slices.Sort(cuts)
		for i := 0; i+1 < len(cuts); i += 2 {
			path = append(path, geometry.Line(geometry.Pt(cuts[i], y).Turn(angle), geometry.Pt(cuts[i+1], y).Turn(angle))...)
		}
	}
	return path
}
