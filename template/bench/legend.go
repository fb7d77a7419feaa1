package bench

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
)

// Measures of the legend.
const (
	legendRow  = 4.8 * geometry.Millimetre
	legendText = 2.5 * geometry.Millimetre // ISO 3098
)

// specimen is a corner of a guide, drawn small and not to scale, each line and sign of it named
// once at the end of a line.
type specimen struct {
	*paper.Drawing
	job   *job.Job
	face  plan.FacePlan
	kinds map[string]bool // of the marks that the guide has
	tape  bool
	tick  bool
	foot  geometry.Length // where the lines that come down end
}

func newSpecimen(j *job.Job, face plan.FacePlan, guided *paper.Drawing) specimen {
	s := specimen{&paper.Drawing{}, j, face, map[string]bool{}, guide.Taped(face), guide.Ticked(face), 0}
	for _, m := range guided.Strokes {
		s.kinds[m.Role.Kind] = true
	}
	return s
}

// row is a line of the legend: what is drawn of the specimen at its height, and its name.
type row struct {
	text string
	draw func(y geometry.Length)
}

// rows lists what the guide shows, from far to near. The lines run from left to right.
func (s specimen) rows(left, right geometry.Length) []row {
	pens := guide.NewPens(s.job.Paper.Lines)
	across := func(from geometry.Length, pen paper.Pen) func(geometry.Length) {
		return func(y geometry.Length) { s.Stroke(geometry.Line(geometry.Pt(from, y), geometry.Pt(right, y)), pen) }
	}
	corner := func(from geometry.Length, pen paper.Pen) func(geometry.Length) {
		return func(y geometry.Length) {
			s.Stroke(geometry.Chain(geometry.Pt(right, y), geometry.Pt(from, y), geometry.Pt(from, s.foot)), pen)
		}
	}
	var all []row
	add := func(on bool, text string, draw func(geometry.Length)) {
		if on {
			all = append(all, row{text, draw})
		}
	}
	upright := func(x geometry.Length, pen paper.Pen, head bool) func(geometry.Length) {
		return func(y geometry.Length) {
			top, foot := geometry.Pt(x, y-1.8), geometry.Pt(x, y+1.8)
			s.Stroke(geometry.Line(top, foot), pen)
			if head {
				s.Fill(geometry.Polygon{foot.Sub(geometry.Pt(0, 2.6)), top.Sub(geometry.Pt(0.8, 0)), top.Add(geometry.Pt(0.8, 0))}.Path(), paper.Ink{})
			}
			s.lead(geometry.Pt(x+1.4, y), right)
		}
	}
	add(s.tape, "outside the cloth: tape, from tick to tick", upright(left+14, pens.Tape, true))
	add(s.tick, "outside the cloth: edge of a row or column", upright(left+24, pens.Tick, false))
	add(s.kinds[guide.RoleEdge], "edge of the cloth", corner(left, pens.Cloth))
	add(s.kinds[guide.RoleHem], "hem", corner(left+4, pens.Hem))
	add(s.kinds[guide.RoleBorder], "border line: no print beyond it", corner(left+8, pens.Border))
	add(s.kinds[guide.RolePiece], "edge of a piece", across(left+12, pens.Piece))
	add(s.kinds[guide.RoleCut], "cut here when dry", across(left, pens.Cut))
	add(s.kinds[guide.RoleSeam], "lap of the seam, not printed", across(left+12, pens.Zone))
	add(s.kinds[guide.RoleZone], "kept clear: not to print on", func(y geometry.Length) {
		r := geometry.Rect{Min: geometry.Pt(right-22, y-1.6), Max: geometry.Pt(right-2, y+1.4)}
		s.Stroke(r.Polygon().Path(), pens.Zone)
		s.Stroke(geometry.Line(geometry.Pt(r.Min.X, r.Max.Y), geometry.Pt(r.Max.X, r.Min.Y)), pens.Zone)
		s.lead(geometry.Pt(r.Max.X, y), right)
	})
	if s.kinds[guide.RolePrint] {
		all = append(all, s.printRows(left, right)...)
	}
	centre := "crease: centre line of the cloth"
	if s.face.Item.Item.Shade != (job.Shade{}) {
		centre = "centre line of the shade"
	}
	add(s.kinds[guide.RoleLaidOn], "next laying: the last row printed lies here", across(left+12, pens.LaidOn))
	add(s.kinds[guide.RoleFarEnd], "end of the cloth, at the last laying", across(left, pens.FarEnd))
	add(s.kinds[guide.RoleCrease], centre, across(left, pens.Crease))
	return all
}

// printRows lists what is drawn on a print, shown on a print of the first pass that is four rows
// high and stands at the specimen's right; and where there are several passes, for each its line
// and its sign.
func (s specimen) printRows(left, right geometry.Length) []row {
	const wide = 30 * geometry.Millimetre
	pens := guide.NewPens(s.job.Paper.Lines)
	block := geometry.Size{W: 90, H: 90}
	x := geometry.Pt(right-8, 0)
	wood := false
	for _, p := range s.face.Passes {
		for _, b := range p.Blocks() {
			wood = wood || !b.Wood.None()
		}
	}
	first := func(y geometry.Length) geometry.Rect {
		return geometry.Rect{Min: geometry.Pt(x.X-wide, y-0.6), Max: geometry.Pt(x.X, y+3.4*legendRow)}
	}
	at := func(draw func(print geometry.Rect, y geometry.Length), n int) func(geometry.Length) {
		return func(y geometry.Length) { draw(first(y-geometry.Length(n)*legendRow), y) }
	}
	rows := []row{
		{"a print", at(func(r geometry.Rect, y geometry.Length) {
			s.Stroke(r.Polygon().Path(), pens.Pass(0))
			if wood {
				s.Stroke(guide.Brackets(geometry.RectOutline(r.Grow(1.8))), pens.Wood)
			}
			s.lead(geometry.Pt(r.Max.X, y), right)
		}, 0)},
		{"its number in the order of printing", at(func(r geometry.Rect, y geometry.Length) {
			l := paper.Label{Text: fmt.Sprint(s.face.Passes[0].First), At: geometry.Pt(r.Min.X+8, y), Anchor: paper.AnchorMiddle, Height: 3.5, Bold: true}
			s.Write(l)
			s.lead(geometry.Pt(l.Extent().Max.X+1, y), right)
		}, 1)},
		{"arrow: top of the block", at(func(r geometry.Rect, y geometry.Length) {
			s.Fill(geometry.UpArrow(geometry.Pt(r.Min.X+15, y), 4.4, 0), paper.Ink{})
			s.lead(geometry.Pt(r.Min.X+17.2, y), right)
		}, 2)},
		{"this corner goes down first", at(func(r geometry.Rect, y geometry.Length) {
			p := geometry.Pt(r.Max.X-2.2, y)
			guide.DrawSign(s.Drawing, 0, block, p)
			s.lead(p.Add(geometry.Pt(1.6, 0)), right)
		}, 3)},
	}
	if wood {
		rows = append(rows, row{"corners of the wood", at(func(r geometry.Rect, y geometry.Length) {
			s.lead(geometry.Pt(r.Max.X+1.8, r.Max.Y+1.2), right-1.2)
			s.Stroke(geometry.Line(geometry.Pt(right-1.2, r.Max.Y+1.2), geometry.Pt(right, y)), paper.Pen{Width: 0.25})
		}, 4)})
	}
	if s.kinds[guide.RoleLap] {
		rows = append(rows, row{"where prints lap: the middle; at its ends how far", func(y geometry.Length) {
			line := func(from, to, off geometry.Length) {
				s.Stroke(geometry.Line(geometry.Pt(right-from, y+off), geometry.Pt(right-to, y+off)), pens.Pass(0))
			}
			line(27, 8, 0)
			for _, off := range []geometry.Length{-0.6, 0.6} {
				line(32, 27, off)
				line(8, 3, off)
			}
			s.lead(geometry.Pt(right-3, y), right)
		}})
	}
	if len(s.face.Passes) < 2 {
		return rows
	}
	for i, p := range s.face.Passes {
		rows = append(rows, row{fmt.Sprintf("prints %d to %d: %s", p.First, p.Last(), p.Pass.Name), func(y geometry.Length) {
			s.Stroke(geometry.Line(geometry.Pt(right-32, y), geometry.Pt(right-8, y)), pens.Pass(i))
			guide.DrawSign(s.Drawing, i, block, geometry.Pt(right-4, y))
		}})
	}
	return rows
}

// lead draws the line from a mark to its name.
func (s specimen) lead(from geometry.Point, right geometry.Length) {
	s.Stroke(geometry.Line(from, geometry.Pt(right, from.Y)), paper.Pen{Width: 0.25})
}

// legendHeight is how high a legend is.
func legendHeight(j *job.Job, face plan.FacePlan, guided *paper.Drawing) geometry.Length {
	return legendRow * geometry.Length(len(newSpecimen(j, face, guided).rows(0, 60)))
}

// drawLegend draws the specimen and the names of what is in it.
func drawLegend(j *job.Job, face plan.FacePlan, guided *paper.Drawing, box geometry.Rect) paper.View {
	s := newSpecimen(j, face, guided)
	s.Bounds, s.foot = box, box.Max.Y
	right := box.Min.X + min(72, box.W()*0.4)
	for i, r := range s.rows(box.Min.X, right) {
		y := box.Min.Y + legendRow*(geometry.Length(i)+0.5)
		r.draw(y)
		text := paper.Shorten(r.text, legendText, false, box.Max.X-right-3)
		s.Write(paper.Label{Text: text, At: geometry.Pt(right+2.5, y), Anchor: paper.AnchorLeft, Height: legendText})
	}
	return paper.View{Drawing: s.Drawing, Area: box, At: box.Min}
}
