package template

import (
	"bytes"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/testdata/pdfread"

	"github.com/google/go-cmp/cmp"
	"github.com/pdfcpu/pdfcpu/pkg/api"
)

// sizes are the papers used here, upright: ISO 216, in millimetres, and ASME Y14.1, in inches.
var sizes = map[string]geometry.Size{
	"A3": {W: 297, H: 420}, "A4": {W: 210, H: 297}, "A5": {W: 148, H: 210}, "A6": {W: 105, H: 148},
	"Letter": {W: 8.5 * 25.4, H: 11 * 25.4}, "300 × 500 mm": {W: 300, H: 500},
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
		got, s := p.pages[place.Page-1].size, place.Sheet
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
		if !sheet[i+1] && !same(page.size, sizes["A4"], sizes["A5"], sizes["A3"], sizes["Letter"]) {
			t.Errorf("page %d is %v, no paper for a desk", i+1, page.size)
		}
	}
}

// checkMargins looks for anything where the printer does not reach.
func checkMargins(t *testing.T, p *papers) {
	for i, page := range p.pages {
		inside := geometry.RectAt(geometry.Point{}, page.size).Grow(off - p.job.Paper.Margin)
		for _, path := range page.paths {
			if b := path.Lines.Bounds(); !inside.Holds(b) {
				t.Errorf("page %d: a line at %v, printable %v", i+1, b, inside)
			}
		}
		for _, w := range page.texts {
			// pdfium takes letters for higher by a 64th than they are, to be on the safe side.
			if !inside.Grow(w.Size / 64).Holds(w.Box) {
				t.Errorf("page %d: %q at %v, printable %v", i+1, w.Text, w.Box, inside)
			}
		}
	}
}

// checkFile holds the file as a whole against what a file must be.
func checkFile(t *testing.T, p *papers) {
	if err := api.Validate(bytes.NewReader(p.pdf), pdfread.Config()); err != nil {
		t.Errorf("pdfcpu: %v", err)
	}
	again, err := pdfOf(p.job)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(p.pdf, again.pdf) {
		t.Error("the same job gives other bytes when it is drawn again")
	}
	// PrintScaling None: the print dialog begins at 100 % (ISO 32000-1, 12.2, Table 150).
	if p.read.ScalesToFit() {
		t.Error("the print dialog would scale the pages")
	}
	if got := p.read.Meta("Title"); got != p.job.Title {
		t.Errorf("the title is %q, want %q", got, p.job.Title)
	}
	want := []pdfread.Attachment{{Name: "job.toml", Content: p.job.Source}}
	if diff := cmp.Diff(want, p.read.Attachments()); diff != "" {
		t.Error(diff)
	}
}

// checkContents holds the list of contents against the plan: a line for each item, below it
// one for each of its guides, which leads to the page before the guide's first sheet or to one
// farther before it.
func checkContents(t *testing.T, p *papers) {
	list := p.read.Bookmarks()
	guides := p.guides
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
		faces := ip.Faces()
		if len(children) != len(faces) {
			t.Fatalf("%q has %d guides and lines %v", item.Title, len(faces), item.Children)
		}
		if item.Page != item.Children[0].Page {
			t.Errorf("%q leads to page %d, its first part to %d", item.Title, item.Page+1, item.Children[0].Page+1)
		}
		for i, face := range faces {
			b, g := children[i], guides[i]
			if face.Name() != "" && !strings.HasSuffix(b.Title, ", "+face.Name()) {
				t.Errorf("the guide for %s is called %q", face.Name(), b.Title)
			}
			if first := g.sheets[0].Page; b.Page+1 >= first || i > 0 && b.Page+1 <= guides[i-1].sheets[len(guides[i-1].sheets)-1].Page {
				t.Errorf("%q leads to page %d, its first sheet is on %d", b.Title, b.Page+1, first)
			}
		}
		guides = guides[len(faces):]
	}
}

// checkCrosses finds the crosses of every join on both its sheets: at the same points of the
// layout, on the line the one is cut along and laid on the other.
func checkCrosses(t *testing.T, p *papers) {
	if p.job.Paper.Overlap < 2 {
		return // no room for any
	}
	for _, g := range p.guides {
		named := map[string]*sheetRead{}
		for _, s := range g.sheets {
			named[s.Sheet.Name] = s
		}
		for _, s := range g.sheets {
			for _, join := range []struct {
				name string
				line func(*sheetRead, geometry.Point) bool
			}{
				{s.Sheet.Right, func(o *sheetRead, q geometry.Point) bool {
					return (q.X - s.Sheet.Kept.Max.X).Abs() <= off
				}},
				{s.Sheet.Below, func(o *sheetRead, q geometry.Point) bool {
					return (q.Y - s.Sheet.Kept.Max.Y).Abs() <= off
				}},
			} {
				o := named[join.name]
				if o == nil {
					if join.name != "" {
						t.Errorf("%s names %s, which is not there", s.Sheet.Name, join.name)
					}
					continue
				}
				here, there := s.crosses(o, join.line), o.crosses(o, join.line)
				if len(here) < 2 || len(here) != len(there) {
					t.Errorf("%s: %s and %s have crosses at %v and %v", g.face.Label(), s.Sheet.Name, o.Sheet.Name, here, there)
					continue
				}
				for i := range here {
					if here[i].Distance(there[i]) > off {
						t.Errorf("%s: %s and %s have a cross at %v and %v", g.face.Label(), s.Sheet.Name, o.Sheet.Name, here[i], there[i])
					}
				}
			}
		}
	}
}

// crosses returns the middles of the crosses on a join, in the item's frame and in order.
func (s *sheetRead) crosses(other *sheetRead, on func(*sheetRead, geometry.Point) bool) []geometry.Point {
	var middles []geometry.Point
	for _, path := range s.page.paths {
		if len(path.Lines) != 2 || len(path.Lines[0].Steps) != 1 || len(path.Lines[1].Steps) != 1 {
			continue
		}
		a, b := path.Lines[0], path.Lines[1]
		middle := geometry.Rect{Min: a.Start, Max: a.Steps[0].To}.Centre()
		d, e := a.Steps[0].To.Sub(a.Start), b.Steps[0].To.Sub(b.Start)
		upright := math.Abs(float64(d.X*e.X+d.Y*e.Y)) <= float64(off)
		if q := s.layout(middle); upright && middle.Distance(geometry.Rect{Min: b.Start, Max: b.Steps[0].To}.Centre()) <= off && on(other, q) {
			middles = append(middles, q)
		}
	}
	slices.SortFunc(middles, func(a, b geometry.Point) int {
		// Along a join one of the two is the same.
		return int(math.Copysign(1, float64(a.X+a.Y-b.X-b.Y)))
	})
	return middles
}

func TestJobsThatCannotBeDrawn(t *testing.T) {
	huge := "[paper]\nsize = 'A6'\n[[block]]\nname = 'fern'\nprint = '40 x 40 cm'\n[[item]]\nname = 'curtain'\nsize = '5 x 5 m'\nborder = '25 mm'\n"
	pass := "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	refusal := func(text string) (*job.Job, string) {
		j := readJob(t, text)
		_, err := pdfOf(j)
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
			if _, err := pdfOf(&other); err != nil {
				t.Errorf("the paper named would not do: %v", err)
			}
		}
	}
	if strings.Contains(text, "extent") {
		tried++
		other := *j
		other.Paper.Extent = job.EdgesExtent
		if p, err := pdfOf(&other); err != nil {
			t.Errorf("the extent named would not do: %v", err)
		} else if len(p.places) > guide.MostSheets {
			t.Errorf("%d sheets", len(p.places))
		}
	}
	if tried == 0 {
		t.Errorf("nothing is named that would do: %s", text)
	}
}
