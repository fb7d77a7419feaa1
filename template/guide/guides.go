package guide

import (
	"underlay/paper"
	"underlay/paper/sheets"
	"underlay/template/job"
	"underlay/template/plan"
)

// Papers are pages that belong together, with their name in the document's contents.
type Papers struct {
	Name   string
	Mark   string   // of the guide they go with, or of the set
	Pass   string   // the one that they show, where passes are apart
	Left   []string // what they have no room for, a sentence each
	Pages  []paper.Page
	Sheets []paper.Sheet // at true size, on the last of the pages
}

// Guide is the guide of a face, drawn and spread over sheets of paper: a page each.
type Guide struct {
	Face    plan.FacePlan
	Drawing *paper.Drawing
	Sheets  []paper.Sheet
	Pages   []paper.Page
	Unnamed []string // what found no place, in words: names by ticks
}

// Shown returns what the guides of an item show: a face that differs each, or where the job has
// the passes apart, a pass of it.
func Shown(j *job.Job, ip *plan.ItemPlan) []plan.FacePlan {
	faces := ip.Laid()
	if j.Paper.Passes != job.PassesApart {
		return faces
	}
	var shown []plan.FacePlan
	for _, f := range faces {
		shown = append(shown, f.Apart()...)
	}
	return shown
}

// Faces draws the guides of an item, of each face that Shown returns, where the guides before
// it took so many sheets. The error is of type Problems: more sheets than anyone would tape, a
// paper too small.
func Faces(j *job.Job, ip *plan.ItemPlan, before int) ([]Guide, error) {
	var all []Guide
	for _, face := range Shown(j, ip) {
		if err := checkSheets(j, face.Item, before); err != nil {
			return nil, err
		}
		g, tiling, err := spread(j, face)
		if err != nil {
			return nil, job.Problems{j.Problem(0, "%s", sheetWords(j, err))}
		}
		sheets, pages := sheets.Furnish(g.Drawing, tiling, panel(face, j, g.Drawing))
		if before+len(pages) > MostSheets {
			return nil, tooManySheets(j, face.Item, len(pages), before)
		}
		before += len(pages)
		all = append(all, Guide{face, g.Drawing, sheets, pages, g.unnamed})
	}
	return all, nil
}
