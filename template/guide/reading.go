package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
)

// ReadingStock is the paper of pages that are read: the job's own where that is a sheet for
// the desk, else A4, or Letter where lengths are in inches.
func ReadingStock(j *job.Job) paper.Stock {
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
