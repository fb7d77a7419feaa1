package bench

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
)

// newFlow begins pages that are read.
func newFlow(j *job.Job) *paper.Flow {
	return paper.NewFlow(guide.ReadingStock(j).Size, max(j.Paper.Margin, 14*geometry.Millimetre))
}
