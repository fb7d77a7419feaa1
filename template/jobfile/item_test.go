package jobfile

import (
	"testing"

	"underlay/template/job"
)

// TestEveryShape: each shape has something that reads it, and a job file to begin with.
func TestEveryShape(t *testing.T) {
	for _, shape := range job.Shapes() {
		if shapeReaders()[shape] == nil {
			t.Errorf("nothing reads a %s", shape)
		}
		if _, err := StartFile(string(shape)); err != nil {
			t.Error(err)
		}
	}
}
