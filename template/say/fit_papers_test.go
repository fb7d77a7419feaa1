package say

import (
	"fmt"
	"strings"
	"testing"
	"underlay/template/guide"
	"underlay/template/internal/sample"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/words"
)

// TestFitPapers holds the sheets that the text says a guide takes to those that are drawn.
func TestFitPapers(t *testing.T) {
	jobs := sample.Examples(t)
	jobs["passes apart"] = sample.Hard(t)["passes apart"]
	for name, job := range jobs {
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(Fit(plan)), " ")
		faces := 0
		for _, ip := range plan.Items {
			guides, err := guide.Faces(job, ip, 0)
			if err != nil {
				t.Fatal(err)
			}
			faces += len(guides)
			for _, g := range guides {
				what := "The guide takes"
				if g.Face.Name() != "" {
					what = "The guide for " + g.Face.Name() + " takes"
				}
				said := fmt.Sprintf("%s %s of %s", what, words.Counted(len(g.Pages), "sheet", "sheets"), job.Paper.Stock.Name)
				if !strings.Contains(text, said) {
					t.Errorf("%s: %s is drawn on %d sheets of %s, and the text says\n%s", name, g.Face.Label(), len(g.Pages), job.Paper.Stock.Name, text)
				}
			}
		}
		if n := strings.Count(text, "; the smallest paper with the fewest sheets is "); n != faces {
			t.Errorf("%s: %d guides, and papers for %d", name, faces, n)
		}
	}
}

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
