package template

import (
	"bytes"
	"runtime"
	"testing"

	"underlay/paper/pdf"
	"underlay/template/internal/sample"
	"underlay/template/plan"
)

// TestSameBytesOnAnyNumberOfCores draws an example of several items with one core, and with
// more than this machine may have.
func TestSameBytesOnAnyNumberOfCores(t *testing.T) {
	plan, err := plan.New(sample.Example(t, "reading-nook"))
	if err != nil {
		t.Fatal(err)
	}
	was := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(was)
	var first []byte
	for _, cores := range []int{1, 2, 7} {
		runtime.GOMAXPROCS(cores)
		doc, _, err := Document(plan, Parts())
		if err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		if err := pdf.Write(&file, doc); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = file.Bytes()
		} else if !bytes.Equal(first, file.Bytes()) {
			t.Errorf("%d cores make other bytes than one", cores)
		}
	}
}
