package bench

import (
	"strings"
	"testing"

	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/internal/sample"
)

// papersText draws what is read of an example, and returns its text, lines joined.
func papersText(t *testing.T, name string) string {
	t.Helper()
	p := workedOut(t, sample.Examples(t)[name+".toml"])
	pages := append(Set(p, nil, 0), Tags(p).Pages...)
	for _, ip := range p.Items {
		for _, papers := range Sheets(p, ip) {
			pages = append(pages, papers.Pages...)
		}
		guides, err := guide.Faces(p.Job, ip, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range guides {
			pages = append(pages, Overview(p.Job, g)...)
		}
	}
	return textOf(pages)
}

// textOf returns all labels of pages, in the order they are written.
func textOf(pages []paper.Page) string {
	var all []string
	for _, page := range pages {
		for _, v := range page.Views {
			for _, l := range v.Drawing.Labels {
				all = append(all, l.Text)
			}
		}
	}
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
		{"dark-cushion", []string{"its edges on the wide line"}, []string{"corners in"}},
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
