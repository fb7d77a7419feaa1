package bench

import (
	"strings"
	"testing"

	"underlay/template/guide"
	"underlay/template/internal/sample"
	"underlay/template/job"
)

// TestGuidesOfPassesApart holds the marks that a bench sheet names its guides by, where passes are
// apart, against those of the guides; a cloth that is moved along is shown in one stretch by both.
func TestGuidesOfPassesApart(t *testing.T) {
	for name, j := range map[string]*job.Job{
		"covers": sample.Hard(t)["passes apart"],
		"long cloth": readJob(t, "[paper]\npasses = 'apart'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[block]]\nname = 'seed'\nprint = '20 x 20 mm'\n"+
			"[[item]]\nname = 'runner'\nsize = '30 x 200 cm'\nborder = '20 mm'\nmove-along = '90 cm'\n"+
			"[[item.pass]]\nblock = 'fern'\ngap = '30 mm'\n[[item.pass]]\nname = 'seeds'\nblock = 'seed'\nbetween = 'fern'\n"),
	} {
		p := workedOut(t, j)
		sheets := Sheets(p, p.Items[0])
		if len(sheets) != 1 {
			t.Errorf("%s: %d bench sheets for one face", name, len(sheets))
		}
		text := textOf(sheets[0].Pages)
		guides, err := guide.Faces(p.Job, p.Items[0], 0)
		if err != nil {
			t.Fatal(err)
		}
		if len(guides) != 2 {
			t.Fatalf("%s: %d guides, want one for each pass", name, len(guides))
		}
		for _, g := range guides {
			if said := g.Face.Pass() + " " + guide.Mark(p.Job, g.Face); !strings.Contains(text, said) {
				t.Errorf("%s: the bench sheet does not say %q: %s", name, said, text)
			}
		}
	}
}
