package template

import (
	"fmt"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

// checkFeet: every page but the sheets at true size says at its foot, last of all, which page it is
// of how many.
func checkFeet(t *testing.T, p *papers) {
	atSize := p.atSize()
	for i, page := range p.pages {
		want := fmt.Sprintf("page %d of %d · mark ", i+1, len(p.pages))
		lowest := geometry.Length(0)
		var foot *pdfread.Text
		texts := page.Texts()
		for k, w := range texts {
			if strings.HasPrefix(w.Text, want) {
				foot = &texts[k]
			} else {
				lowest = max(lowest, w.Box.Min.Y)
			}
		}
		switch {
		case atSize[i+1]:
			if foot != nil {
				t.Errorf("page %d is a sheet and has a foot line", i+1)
			}
		case foot == nil:
			t.Errorf("page %d has no foot line %q", i+1, want)
		case foot.Box.Max.Y < lowest:
			t.Errorf("page %d: text stands below the foot line", i+1)
		}
	}
}

// TestContentsOfASet: a set's first page names for everything the page it is on; a job of one item
// has no such page.
func TestContentsOfASet(t *testing.T) {
	const blocks = "title = 'reading nook'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n"
	const cushion = "[[item]]\nname = 'floor cushion'\nsize = '300 x 300 mm'\nborder = '25 mm'\nquantity = 3\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss']\n"
	const bag = "[[item]]\nname = 'book bag'\nsize = '380 x 420 mm'\nborder = '30 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss', 'ochre']\n"
	p := readPapers(t, readJob(t, blocks+cushion+bag))
	first := p.pages[0].Text()
	for _, want := range []string{"Reading nook", "3 × floor cushion", "1 × book bag", "fern 90 × 90 mm", "moss for ", "ochre for "} {
		if !strings.Contains(first, want) {
			t.Errorf("the set's first page does not say %q: %s", want, first)
		}
	}
	at := 1
	var walk func(parts []paper.Part)
	walk = func(parts []paper.Part) {
		for _, part := range parts {
			if strings.HasPrefix(part.Name, "sheet ") {
				continue
			}
			n := len(flat([]paper.Part{part}))
			from := at
			if want := pageWords(from, from+n-1); part.Name != "the whole set" && !strings.Contains(first, want) {
				t.Errorf("%s is on %s: %s", part.Name, want, first)
			}
			walk(part.Children)
			at = from + n
		}
	}
	walk(p.doc.Parts)
	if one := readPapers(t, readJob(t, blocks+cushion)); !strings.Contains(one.pages[0].Text(), "As it will look") {
		t.Error("a job of one item does not begin with its card")
	}
}

func pageWords(from, to int) string {
	if from == to {
		return fmt.Sprint(from)
	}
	return fmt.Sprintf("%d to %d", from, to)
}
