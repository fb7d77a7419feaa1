package guide

import (
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// Papers are pages that belong together, with their name in the document's contents.
type Papers struct {
	Name   string
	Mark   string // of the guide they go with, or of the set
	Pages  []paper.Page
	Sheets []paper.Sheet // at true size, on the last of the pages
}

// Guide is the guide of a face, drawn and spread over sheets of paper: a page each.
type Guide struct {
	Face    plan.FacePlan
	Drawing *paper.Drawing
	Sheets  []paper.Sheet
	Pages   []paper.Page
}

// Faces draws the guide for each face of an item that differs, where the guides before
// it took so many sheets. The error is of type Problems: more sheets than anyone would tape, a
// paper too small.
func Faces(j *job.Job, ip *plan.ItemPlan, before int) ([]Guide, error) {
	var all []Guide
	for _, face := range ip.Laid() {
		if err := checkSheets(j, face.Item, before); err != nil {
			return nil, err
		}
		drawing, tiling, err := Spread(j, face)
		if err != nil {
			return nil, job.Problems{j.Problem(0, "%s", sheetWords(j, err))}
		}
		sheets, pages := paper.Sheets(drawing, tiling, panel(face, j, drawing))
		if before+len(sheets) > MostSheets {
			return nil, tooManySheets(j, face.Item, len(sheets), before)
		}
		before += len(sheets)
		all = append(all, Guide{face, drawing, sheets, pages})
	}
	return all, nil
}
