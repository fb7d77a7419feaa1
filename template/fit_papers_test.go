package template

import (
	"fmt"
	"strings"
	"testing"
)

// TestFitPapers holds the sheets that the text says a guide takes to those that are drawn.
func TestFitPapers(t *testing.T) {
	for name, job := range exampleJobs(t) {
		plan, err := NewPlan(job)
		if err != nil {
			t.Fatal(err)
		}
		_, sheets, err := Document(plan, []string{"guide"})
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(plan.FitText()), " ")
		faces := 0
		for _, ip := range plan.Items {
			drawn := 0
			for _, s := range sheets {
				if s.Item == ip.Item.Name {
					drawn++
				}
			}
			faces += len(ip.Faces())
			// Where an item has more than one guide the sheets of each are not told apart here.
			if said := fmt.Sprintf(" takes %s of %s", counted(drawn, "sheet", "sheets"), job.Paper.Stock.Name); len(ip.Faces()) == 1 && !strings.Contains(text, said) {
				t.Errorf("%s: %s is drawn on %d sheets of %s, and the text says\n%s", name, ip.Item.Name, drawn, job.Paper.Stock.Name, text)
			}
		}
		if n := strings.Count(text, "; the smallest paper with the fewest sheets is "); n != faces {
			t.Errorf("%s: %d guides, and papers for %d", name, faces, n)
		}
	}
}

// TestFitPapersLarge leaves papers out of a job whose guide takes long to draw.
func TestFitPapersLarge(t *testing.T) {
	// 3.98 m hold floor(3981 / 26) = 153 prints: 23409 in all.
	for block, want := range map[string]bool{"25x25mm": false, "200x200mm": true} {
		job, err := QuickJob(Quick{Item: "4x4m", Border: "10mm", Block: block, Gap: "1mm"})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := NewPlan(job)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(plan.FitText(), "The guide takes "); got != want {
			t.Errorf("%s: papers are said: %v", block, got)
		}
	}
}
