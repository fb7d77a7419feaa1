package guide

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/sheets"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// panel is what every sheet of a guide says about itself.
func panel(f plan.FacePlan, j *job.Job, drawing *paper.Drawing) sheets.Panel {
	p := sheets.Panel{
		Title: f.Label(), Mark: Mark(j, f), Inches: j.Units == geometry.UnitInch,
		Cloth: f.Item.Area.ClothPath(), Far: "far edge", Near: "you stand here",
	}
	if f.Item.Item.Shade != (job.Shade{}) {
		p.Far, p.Near = "", ""
	}
	if len(f.Passes) == 1 {
		p.Lines = []string{printWords(f.Passes[0].PassPlan, j.Units), BorderWords(j.Units, OnRuler(j.Units, f.Passes[0].Choice().Border))}
	} else {
		for i, pass := range f.Passes {
			if i == 2 && len(f.Passes) > 3 {
				p.Lines = append(p.Lines, fmt.Sprintf("and %d passes more", len(f.Passes)-2))
				break
			}
			p.Lines = append(p.Lines, printWords(pass.PassPlan, j.Units))
		}
	}
	if n := LeftOut(f, j, drawing); n > 0 {
		p.Lines = append(p.Lines, words.Counted(n, "print has", "prints have")+" no room for a number: see the bench sheet")
	}
	if j.Paper.Extent != job.EdgesExtent {
		p.Key = panelKey(f)
	}
	return p
}

// panelKey says what the signs in a print mean.
func panelKey(f plan.FacePlan) []sheets.KeyLine {
	const size = 40 * geometry.Millimetre // of the block whose signs are shown
	arrow := paper.Drawing{}
	arrow.StampFill(paper.NewShape(geometry.UpArrow(geometry.Point{}, 3.6, 0)), paper.Place{}, paper.Ink{}, paper.Role{})
	key := []sheets.KeyLine{{Text: "number = order"}, {Sign: arrow, Text: "top of the block"}}
	for i := range f.Passes {
		if i == signKinds {
			break
		}
		corner := paper.Drawing{}
		newSign(i, geometry.Size{W: size, H: size}).draw(&corner, geometry.Point{}, paper.Role{})
		text := "this corner first"
		if len(f.Passes) > 1 && i > 0 {
			text = "of " + paper.Shorten(f.Passes[i].Pass.Name, 2.5, false, 30)
		}
		key = append(key, sheets.KeyLine{Sign: corner, Text: text})
	}
	return key
}
