package template

import "underlay/paper"

// Papers are pages that belong together, with their name in the document's contents.
type Papers struct {
	Name   string
	Pages  []paper.Page
	Sheets []paper.Sheet // at true size, on the last of the pages
}

// DrawnGuide is the guide of a face, drawn and spread over sheets of paper: a page each.
type DrawnGuide struct {
	Face    FacePlan
	Drawing *paper.Drawing
	Sheets  []paper.Sheet
	Pages   []paper.Page
}

// drawGuides draws the guide for each face of an item that differs, where the guides before
// it took so many sheets. The error is of type Problems: more sheets than anyone would tape, a
// paper too small.
func drawGuides(job *Job, ip *ItemPlan, before int) ([]DrawnGuide, error) {
	var all []DrawnGuide
	for _, face := range ip.Faces() {
		if err := job.checkSheets(ip, before); err != nil {
			return nil, err
		}
		tiling, err := job.tile(ip)
		if err != nil {
			return nil, Problems{job.problem(0, "%s", job.sheetWords(err))}
		}
		drawing := newGuide(job, face)
		sheets, pages := paper.Sheets(drawing, tiling, face.strip(job))
		before += len(sheets)
		all = append(all, DrawnGuide{face, drawing, sheets, pages})
	}
	return all, nil
}
