package template

import (
	"fmt"
	"strings"
	"testing"

	"underlay/template/internal/sample"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// TestFitPapers holds the sheets that the text says a guide takes to those that are drawn.
func TestFitPapers(t *testing.T) {
	for name, job := range sample.Examples(t) {
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		_, sheets, err := Document(plan, []string{"guide"})
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(say.Fit(plan)), " ")
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
			if said := fmt.Sprintf(" takes %s of %s", words.Counted(drawn, "sheet", "sheets"), job.Paper.Stock.Name); len(ip.Faces()) == 1 && !strings.Contains(text, said) {
				t.Errorf("%s: %s is drawn on %d sheets of %s, and the text says\n%s", name, ip.Item.Name, drawn, job.Paper.Stock.Name, text)
			}
		}
		if n := strings.Count(text, "; the smallest paper with the fewest sheets is "); n != faces {
			t.Errorf("%s: %d guides, and papers for %d", name, faces, n)
		}
	}
}
