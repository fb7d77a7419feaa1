package template

import (
	"underlay/geometry"
	"underlay/paper"
)

// readingStock is the paper of pages that are read: the job's own where that is a sheet for
// the desk, else A4, or Letter where lengths are in inches.
func (j *Job) readingStock() paper.Stock {
	s := j.Paper.Stock
	if !s.Roll && !s.OneSheet && s.Size.W >= 140 && s.Size.W <= 300 && s.Size.H >= 200 && s.Size.H <= 440 {
		return s
	}
	name := "A4"
	if j.Units == geometry.UnitInch {
		name = "Letter"
	}
	for _, s := range paper.Stocks() {
		if s.Name == name {
			return s
		}
	}
	return s
}

// newFlow begins pages that are read.
func (j *Job) newFlow() *paper.Flow {
	return paper.NewFlow(j.readingStock().Size, max(j.Paper.Margin, 14*geometry.Millimetre))
}
