package template

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/pdfcpu/pdfcpu/pkg/api"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/guide"
	"underlay/template/internal/readback"
	"underlay/template/job"
	"underlay/testdata/pdfread"
)

// sizes are the papers used here, upright: ISO 216, in millimetres, and ASME Y14.1, in inches.
var sizes = map[string]geometry.Size{
	"A3": {W: 297, H: 420}, "A4": {W: 210, H: 297}, "A5": {W: 148, H: 210}, "A6": {W: 105, H: 148},
	"Letter": {W: 8.5 * 25.4, H: 11 * 25.4}, "300 × 500 mm": {W: 300, H: 500}, "480 × 520 mm": {W: 480, H: 520},
}

// checkPages holds every page against the paper it is for. fpdf gives a page's sides to a
// hundredth of a PDF unit, which is 1/72 inch (ISO 32000-1, 8.3.2.3).
func checkPages(t *testing.T, p *papers) {
	const slack = 0.5 / 100 / 72 * 25.4 * 1.01
	same := func(got geometry.Size, want ...geometry.Size) bool {
		return slices.ContainsFunc(want, func(w geometry.Size) bool {
			return math.Abs(float64(got.W-w.W)) <= slack && math.Abs(float64(got.H-w.H)) <= slack
		})
	}
	stock := p.job.Paper.Stock
	sheet := map[int]bool{}
	for _, place := range p.places {
		sheet[place.Page] = true
		want := sizes[stock.Name]
		got, s := p.pages[place.Page-1].Size, place.Sheet
		switch {
		case stock.Roll:
			want = geometry.Size{W: stock.Size.W, H: s.Page.H}
			if s.Page.H == stock.Size.W { // along the roll
				want.H = s.Page.W
			}
		case stock.OneSheet:
			m := p.job.Paper.Margin
			want = geometry.Size{W: s.Area.W() + 2*m, H: s.Area.H() + 2*m}
		}
		if !same(got, want, want.Swap()) || !same(got, s.Page) {
			t.Errorf("page %d is %v on paper of %v; the sheet says %v", place.Page, got, want, s.Page)
		}
	}
	for i, page := range p.pages {
		if !sheet[i+1] && !same(page.Size, sizes["A4"], sizes["A5"], sizes["A3"], sizes["Letter"]) {
			t.Errorf("page %d is %v, no paper for a desk", i+1, page.Size)
		}
	}
}

// checkReading looks on all pages but the sheets at true size for anything where the printer does
// not reach, and for text on other text. Sheets are looked at in template/guide.
func checkReading(t *testing.T, p *papers) {
	atSize := p.atSize()
	for i, page := range p.pages {
		if !atSize[i+1] {
			at := fmt.Sprintf("page %d", i+1)
			readback.CheckMargin(t, at, page, p.job.Paper.Margin)
			readback.CheckTexts(t, at, page)
		}
	}
}

// checkFile holds the file as a whole against what a file must be.
func checkFile(t *testing.T, p *papers) {
	if err := api.Validate(bytes.NewReader(p.pdf), pdfread.Config()); err != nil {
		t.Errorf("pdfcpu: %v", err)
	}
	again, err := docOf(p.job)
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, again.doc); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(p.pdf, file.Bytes()) {
		t.Error("the same job gives other bytes when it is drawn again")
	}
	// PrintScaling None: the print dialog begins at 100 % (ISO 32000-1, 12.2, Table 150).
	if p.read.ScalesToFit() {
		t.Error("the print dialog would scale the pages")
	}
	if got := p.read.Meta("Title"); got != p.job.Title {
		t.Errorf("the title is %q, want %q", got, p.job.Title)
	}
	want := map[string][]byte{"job.toml": p.job.Source}
	for _, b := range p.job.Blocks {
		if b.Picture != nil {
			want[b.Picture.Name] = b.Picture.File
		}
	}
	got := map[string][]byte{}
	for _, a := range p.read.Attachments() {
		if got[a.Name] != nil {
			t.Errorf("%s is carried twice", a.Name)
		}
		got[a.Name] = a.Content
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// checkContents holds the list of contents against the plan: a line for each item, below it
// one for each of its guides, which leads to the page before the guide's first sheet or to one
// farther before it.
func checkContents(t *testing.T, p *papers) {
	list := p.read.Bookmarks()
	guides := p.guideSheets()
	page := -1
	for _, ip := range p.plan.Items {
		at := slices.IndexFunc(list, func(b pdfread.Bookmark) bool { return b.Title == ip.Item.Name })
		if at < 0 {
			t.Fatalf("no line for %q in %v", ip.Item.Name, list)
		}
		item := list[at]
		list = list[at+1:]
		var children []pdfread.Bookmark
		for _, b := range item.Children {
			if b.Page <= page {
				t.Errorf("%q of %q leads to page %d, after one that leads to %d", b.Title, item.Title, b.Page+1, page+1)
			}
			page = b.Page
			if strings.HasPrefix(b.Title, "guide") {
				children = append(children, b)
			}
		}
		faces := guide.Shown(p.job, ip)
		if len(children) != len(faces) {
			t.Fatalf("%q has %d guides and lines %v", item.Title, len(faces), item.Children)
		}
		if item.Page != item.Children[0].Page {
			t.Errorf("%q leads to page %d, its first part to %d", item.Title, item.Page+1, item.Children[0].Page+1)
		}
		for i, face := range faces {
			b := children[i]
			if face.Name() != "" && !strings.HasSuffix(b.Title, ", "+face.Name()) {
				t.Errorf("the guide for %s is called %q", face.Name(), b.Title)
			}
			if first := guides[i][0]; b.Page+1 >= first || i > 0 && b.Page+1 <= guides[i-1][len(guides[i-1])-1] {
				t.Errorf("%q leads to page %d, its first sheet is on %d", b.Title, b.Page+1, first)
			}
		}
		guides = guides[len(faces):]
	}
}

func TestJobsThatCannotBeDrawn(t *testing.T) {
	huge := "[paper]\nsize = 'A6'\n[[block]]\nname = 'fern'\nprint = '40 x 40 cm'\n[[item]]\nname = 'curtain'\nsize = '5 x 5 m'\nborder = '25 mm'\n"
	pass := "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	refusal := func(text string) (*job.Job, string) {
		j := readJob(t, text)
		_, err := docOf(j)
		var problems job.Problems
		if !errors.As(err, &problems) || len(problems) != 1 || problems[0].Line == 0 {
			t.Fatalf("not refused with a line of the job: %v", err)
		}
		return j, problems[0].Text
	}
	if _, text := refusal(huge); !strings.Contains(text, "curtain") || !strings.Contains(text, "pass") {
		t.Errorf("an item without a pass: %s", text)
	}

	// 5 x 5 m and 25 mm more all round on A6, 91 x 134 mm inside the margins, 12 mm shared:
	// (5050 - 12) / (91 - 12) and (5050 - 12) / (134 - 12), rounded up, are 64 x 42 sheets.
	j, text := refusal(huge + pass)
	if !strings.Contains(text, "2,688 sheets") || !strings.Contains(text, "2,000") {
		t.Errorf("too many sheets: %s", text)
	}
	// What it names would do.
	tried := 0
	for _, s := range paper.Stocks() {
		if strings.Contains(text, `"`+s.Name+`"`) {
			tried++
			other := *j
			other.Paper.Stock = s
			if _, err := docOf(&other); err != nil {
				t.Errorf("the paper named would not do: %v", err)
			}
		}
	}
	if strings.Contains(text, "extent") {
		tried++
		other := *j
		other.Paper.Extent = job.EdgesExtent
		if p, err := docOf(&other); err != nil {
			t.Errorf("the extent named would not do: %v", err)
		} else if len(p.places) > guide.MostSheets {
			t.Errorf("%d sheets", len(p.places))
		}
	}
	if tried == 0 {
		t.Errorf("nothing is named that would do: %s", text)
	}
}
