package pdf

import (
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

func TestContents(t *testing.T) {
	a4, lying := paper.Page{Size: geometry.Size{W: 210, H: 297}}, paper.Page{Size: geometry.Size{W: 297, H: 210}}
	doc := Document{
		Title: "Lesekissen №1 🌿 (nook)",
		Date:  time.Date(2024, 2, 29, 12, 30, 59, 0, time.FixedZone("", 3600)),
		Parts: []paper.Part{
			{Name: "Bench sheet", Pages: []paper.Page{a4}},
			{Name: "Kissen – ☐ 🌿\n1", Children: []paper.Part{
				{Name: "nothing"},
				{Name: "front", Pages: []paper.Page{lying, a4}, Children: []paper.Part{{Name: "A1", Pages: []paper.Page{a4}}}},
				{Name: "back", Pages: []paper.Page{a4}},
			}},
			{Name: "nothing either", Children: []paper.Part{{Name: "at all"}}},
			{Name: "Tags", Pages: []paper.Page{lying}},
		},
	}
	pdf := pdfread.Open(t, write(t, doc))
	want := []pdfread.Bookmark{
		{Title: "Bench sheet", Page: 0},
		{Title: "Kissen – ☐ 🌿 1", Page: 1, Children: []pdfread.Bookmark{
			{Title: "front", Page: 1, Children: []pdfread.Bookmark{{Title: "A1", Page: 3}}},
			{Title: "back", Page: 4},
		}},
		{Title: "Tags", Page: 5},
	}
	if diff := cmp.Diff(want, pdf.Bookmarks(), near, cmpopts.IgnoreFields(pdfread.Bookmark{}, "Down")); diff != "" {
		t.Error(diff)
	}
	for _, b := range pdf.Bookmarks() {
		if math.Abs(float64(b.Down)) > 0.01 {
			t.Errorf("%s leads to %v mm below the top of its page", b.Title, b.Down)
		}
	}
	if got := pdf.Meta("Title"); got != doc.Title {
		t.Errorf("the title is %q", got)
	}
	if got := pdf.Meta("CreationDate") + pdf.Meta("Producer"); got != "D:20240229113059underlay" {
		t.Errorf("made at and with: %q", got)
	}
	if pdf.ScalesToFit() {
		t.Error("print dialogs are not told to leave the size alone")
	}
}

// fpdf takes one height, one PDF unit more than the last page's, for something else.
func TestContentsLeadToTheTopOfPagesOfAnyHeight(t *testing.T) {
	const unit = geometry.Inch / 72
	var parts []paper.Part
	for _, h := range []geometry.Length{301, 299, 300, 20000, 300} {
		parts = append(parts, paper.Part{Name: "part", Pages: []paper.Page{{Size: geometry.Size{W: 200, H: h * unit}}}})
	}
	for i, b := range pdfread.Open(t, write(t, Document{Parts: parts})).Bookmarks() {
		if b.Page != i || math.Abs(float64(b.Down)) > 0.01 {
			t.Errorf("entry %d leads to page %d, %v mm below its top", i, b.Page, b.Down)
		}
	}
}
