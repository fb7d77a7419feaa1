package template

import (
	"os"
	"strings"
	"testing"

	"underlay/template/internal/repo"

	"underlay/paper"
)

// papersText draws an example and returns the text of its bench sheets and of the guide's first
// pages, lines joined.
func papersText(t *testing.T, name string) string {
	t.Helper()
	source, err := os.ReadFile(repo.Path(t, "examples", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	doc, _, err := Document(planOf(t, string(source)), UsualParts())
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	var read func(parts []paper.Part)
	read = func(parts []paper.Part) {
		for _, p := range parts {
			for _, page := range p.Pages {
				for _, v := range page.Views {
					for _, l := range v.Drawing.Labels {
						all = append(all, l.Text)
					}
				}
			}
			read(p.Children)
		}
	}
	read(doc.Parts)
	return strings.Join(all, " ")
}

// The papers advise what can be done with the thing in hand: nobody folds a shade, or stretches
// tape along a ring (common practice, no published source).
func TestPapersAdviseWhatCanBeDone(t *testing.T) {
	const fold, tape = "Fold it in half", "stretch masking tape"
	for _, c := range []struct {
		example   string
		says, not []string
	}{
		{"reading-nook", []string{fold, tape, "tape, from tick to tick"}, []string{"shade", "kept clear", "drawn ones"}},
		{"stool-top", []string{fold}, []string{tape, "from tick to tick", "edge of a row", "from a corner"}},
		{"lampshades", []string{"do not fold it", "centre line of the shade"}, []string{fold, "creases on"}},
		{"book-bag", []string{"kept clear: not to print on", "on each face"}, nil},
		{"dark-cushion", []string{"its corners in the four drawn ones"}, []string{"its edges on the wide line"}},
	} {
		text := papersText(t, c.example)
		for _, s := range c.says {
			if !strings.Contains(text, s) {
				t.Errorf("%s does not say %q", c.example, s)
			}
		}
		for _, s := range c.not {
			if strings.Contains(text, s) {
				t.Errorf("%s says %q", c.example, s)
			}
		}
	}
}
