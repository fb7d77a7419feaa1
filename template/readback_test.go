package template

import (
	"testing"

	"underlay/paper/pdf"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/testdata/pdfread"
)

// papers is a job drawn, and its PDF as pdfium reads it.
type papers struct {
	job    *job.Job
	plan   *plan.Plan
	doc    pdf.Document
	places []SheetPlace
	pdf    []byte
	read   *pdfread.Doc
	pages  []*readback.Page
}

// docOf plans and draws a job, with all parts there are.
func docOf(j *job.Job) (*papers, error) {
	p := &papers{job: j}
	var err error
	if p.plan, err = plan.New(j); err != nil {
		return nil, err
	}
	p.doc, p.places, err = Document(p.plan, Parts())
	return p, err
}

// readPapers draws a job and reads its PDF back.
func readPapers(t *testing.T, j *job.Job) *papers {
	t.Helper()
	p, err := docOf(j)
	if err != nil {
		t.Fatal(err)
	}
	p.pdf, p.read = readback.Open(t, p.doc)
	p.pages = readback.Pages(p.read)
	return p
}

// atSize tells which pages, counted from 1, are sheets at true size.
func (p *papers) atSize() map[int]bool {
	sheets := map[int]bool{}
	for _, s := range p.places {
		sheets[s.Page] = true
	}
	return sheets
}

// guideSheets returns the pages of each guide's sheets, in the order of the plan. Those of one
// guide follow each other.
func (p *papers) guideSheets() [][]int {
	var all [][]int
	last := SheetPlace{}
	for _, place := range p.places {
		if place.Part != "guide" {
			continue
		}
		if len(all) == 0 || place.Item != last.Item || place.Page > last.Page+1 {
			all = append(all, nil)
		}
		all[len(all)-1] = append(all[len(all)-1], place.Page)
		last = place
	}
	return all
}
