package look

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// RolePrint is the kind of the marks of a print. Their number is the print's on this face.
const RolePrint = "print"

// Flat draws a face as it will look in the colours of one colouring, lying flat, as large as goes into
// a box of a page and at its top left. Of a cloth of several pieces it is one piece, or, of what Laid
// returns, the whole cloth with the lines to cut along; a cloth that is moved along is shown whole.
func Flat(j *job.Job, face plan.FacePlan, c job.Colouring, box geometry.Rect) paper.View {
	d := &paper.Drawing{Bounds: box}
	s := Fitted(face.Item.Area.Cloth, box.Grow(-1))
	s.drawCloth(d, face, Cloth(j, face, c))
	sides := sidesOf(face.Item)
	for i, p := range face.Passes {
		stamps := map[*job.Block][]stamp{}
		for k, b := range p.Blocks() {
			stamps[b] = s.stamps(layersOf(j, p, b, c, i+k, s.K, face.Count(), mostPoints))
		}
		for k, print := range p.Prints {
			role := paper.Role{Kind: RolePrint, Number: p.NumberOf(k)}
			if !print.Seam {
				for _, l := range stamps[print.Block] {
					d.StampFill(l.shape, paper.Place{At: s.At(print.Origin), Turn: print.Turn}, l.ink, role)
				}
				continue
			}
			for _, l := range stamps[print.Block] {
				for _, at := range sides.again(print.Site) {
					if path := kept(placed(l.path, at.Site), at.edge.on, at.edge.inwards); len(path) > 0 {
						d.Fills = append(d.Fills, paper.Fill{Shape: paper.Once(path.Map(s.At)), Ink: l.ink, Role: role})
					}
				}
			}
		}
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}

// stamp is a layer as it is put down at many places.
type stamp struct {
	layer
	shape *paper.Shape
}

func (s Scaled) stamps(layers []layer) []stamp {
	all := make([]stamp, len(layers))
	for i, l := range layers {
		all[i] = stamp{l, paper.NewShape(s.Small(l.path))}
	}
	return all
}

// placed returns a path in a face's frame as it lies where the block is put down.
func placed(path geometry.Path, at plan.Site) geometry.Path {
	return path.Map(func(p geometry.Point) geometry.Point { return p.Turn(at.Turn).Add(at.Origin) })
}

// drawCloth draws the edge of the cloth, its hem, the zones kept clear, and where it is cut apart.
func (s Scaled) drawCloth(d *paper.Drawing, face plan.FacePlan, ink paper.Ink) {
	item, area := face.Item.Item, face.Item.Area
	ground(d, area.ClothPath().Map(s.At), ink)
	thin := paper.Pen{Width: thinLine, Ink: paper.Grey(110)}
	for _, z := range item.Zones {
		edge := z.Rect.Polygon().Path().Map(s.At)
		d.Fill(edge, paper.Grey(238))
		d.Stroke(edge, thin)
	}
	hemmed := []geometry.Outline{item.Outline}
	if face.Item.Asked() != item && item.Pieces.Several() {
		hemmed = nil
		for _, p := range face.Item.Pieces() {
			hemmed = append(hemmed, geometry.RectOutline(p.Rect))
			if item.Hem == 0 && item.Pieces.Apart > 0 {
				d.Stroke(p.Rect.Polygon().Path().Map(s.At), thin)
			}
		}
		s.drawCuts(d, face.Item)
	}
	for _, o := range hemmed {
		if item.Hem*s.K > 0.4 && !o.None() {
			if path, _, ok := o.Inset(item.Hem); ok {
				d.Stroke(path.Map(s.At), paper.Pen{Type: paper.Dashed, Width: thinLine})
			}
		}
	}
	d.Stroke(area.ClothPath().Map(s.At), paper.Pen{Width: clothLine})
}

// ground lays the cloth, where it is not drawn as white as the paper.
func ground(d *paper.Drawing, edge geometry.Path, ink paper.Ink) {
	if ink != paper.Grey(255) {
		d.Fills = append(d.Fills, paper.Fill{Shape: paper.Once(edge), Ink: ink, Role: paper.Role{Kind: "cloth"}})
	}
}

// drawCuts draws where the pieces of a cloth are cut apart, from edge to edge.
func (s Scaled) drawCuts(d *paper.Drawing, ip *plan.ItemPlan) {
	cloth := ip.WholeCloth()
	across, down := ip.Cuts()
	pen := paper.Pen{Type: paper.Chain, Width: 0.25 * geometry.Millimetre}
	for _, x := range across {
		d.Stroke(geometry.Line(s.At(geometry.Pt(x, cloth.Min.Y)), s.At(geometry.Pt(x, cloth.Max.Y))), pen)
	}
	for _, y := range down {
		d.Stroke(geometry.Line(s.At(geometry.Pt(cloth.Min.X, y)), s.At(geometry.Pt(cloth.Max.X, y))), pen)
	}
}

// Hero draws a face in the first of its ways of colouring as it will be in use: a shade standing,
// all else flat.
func Hero(j *job.Job, face plan.FacePlan, box geometry.Rect) paper.View {
	if face.Item.Item.Shape.Shade() {
		return Standing(j, face, First(face), box)
	}
	return Flat(j, face, First(face), box)
}
