package say

import (
	"strings"
	"testing"

	"underlay/template/jobfile"
	"underlay/template/plan"
)

// TestFitPapersLarge leaves papers out of a job whose guide takes long to draw.
func TestFitPapersLarge(t *testing.T) {
	// 3.98 m hold floor(3981 / 26) = 153 prints: 23409 in all.
	for block, want := range map[string]bool{"25x25mm": false, "200x200mm": true} {
		job, err := jobfile.FromFlags(jobfile.Quick{Item: "4x4m", Border: "10mm", Block: block, Gap: "1mm"})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(Fit(plan), "The guide takes "); got != want {
			t.Errorf("%s: papers are said: %v", block, got)
		}
	}
}
