package say

import (
	"strings"
	"testing"

	"underlay/template/jobfile"
	"underlay/template/plan"
)

// TestFitPapersLarge holds that papers are told of a job of any size.
func TestFitPapersLarge(t *testing.T) {
	// 3.98 m hold floor(3981 / 26) = 153 prints: 23409 in all.
	for _, block := range []string{"25x25mm", "200x200mm"} {
		job, err := jobfile.FromFlags(jobfile.Quick{Item: "4x4m", Border: "10mm", Block: block, Gap: "1mm"})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(Fit(plan), "The guide takes ") {
			t.Errorf("%s: no papers are told", block)
		}
	}
}
