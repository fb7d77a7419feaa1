package bench

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
)

// legendRow is the height of one line of the legend.
const legendRow = 5.2 * geometry.Millimetre

// legendLine is a line type and what it stands for.
type legendLine struct {
	pen  paper.Pen
	text string
}

// legendLines lists the line types a guide uses.
func legendLines(j *job.Job, face plan.FacePlan) []legendLine {
	p, item := guide.NewPens(j.Paper.Lines), face.Item.Item
	centre := "crease: centre line of the cloth"
	if item.Shade != (job.Shade{}) {
		centre = "centre line of the shade"
	}
	lines := []legendLine{{p.Cloth, "edge of the cloth"}, {p.Crease, centre}}
	if j.Paper.Extent != job.EdgesExtent {
		if item.Hem > 0 {
			lines = append(lines, legendLine{p.Hem, "hem"})
		}
		if item.Border != (geometry.Edges{}) {
			lines = append(lines, legendLine{p.Border, "border line: no print beyond it"})
		}
		if len(item.Zones) > 0 {
			lines = append(lines, legendLine{p.Zone, "kept clear: not to print on"})
		}
		wood := false
		for i, pass := range face.Passes {
			text := "a print, its number, its top, its first corner"
			if len(face.Passes) > 1 {
				text = "a print of " + pass.Pass.Name
			}
			lines = append(lines, legendLine{p.Pass(i), text})
			wood = wood || !pass.Pass.Block.Wood.None()
		}
		if wood {
			lines = append(lines, legendLine{p.Wood, "wood of the block"})
		}
	}
	if guide.Taped(face) {
		lines = append(lines, legendLine{p.Tape, "outside the cloth: tape, from tick to tick"})
	}
	if guide.Ticked(face) {
		lines = append(lines, legendLine{p.Tick, "outside the cloth: edge of a row or column"})
	}
	return lines
}

func legendHeight(face plan.FacePlan, job *job.Job) geometry.Length {
	return legendRow * geometry.Length((len(legendLines(job, face))+1)/2)
}

// legend draws the line types in two columns.
func legend(job *job.Job, face plan.FacePlan, box geometry.Rect) paper.View {
	d := &paper.Drawing{Bounds: box}
	lines := legendLines(job, face)
	rows := (len(lines) + 1) / 2
	const sample, height = 18 * geometry.Millimetre, 2.5 * geometry.Millimetre
	for i, l := range lines {
		x := box.Min.X + geometry.Length(i/rows)*box.W()/2
		y := box.Min.Y + legendRow*(geometry.Length(i%rows)+0.5)
		d.Stroke(geometry.Line(geometry.Pt(x, y), geometry.Pt(x+sample, y)), l.pen)
		text := paper.Shorten(l.text, height, false, box.W()/2-sample-6)
		d.Write(paper.Label{Text: text, At: geometry.Pt(x+sample+3, y), Anchor: paper.AnchorLeft, Height: height})
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}
