package template

import (
	"testing"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/words"
)

// TestStartFileDraws draws the file that a maker begins with, of every shape.
func TestStartFileDraws(t *testing.T) {
	for _, shape := range words.Texts(job.Shapes()) {
		text, err := jobfile.StartFile(shape)
		if err != nil {
			t.Fatal(err)
		}
		if _, sheets, err := Document(planOf(t, text), Parts()); err != nil || len(sheets) == 0 {
			t.Errorf("%s: %d sheets, %v", shape, len(sheets), err)
		}
	}
}
