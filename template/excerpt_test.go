package template

import (
	"bytes"
	"slices"
	"testing"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/jobfile"
	"underlay/template/plan"

	"github.com/google/go-cmp/cmp"
)

// TestExcerpt takes sheets out of the papers of two items: they are the pages they are among
// all the others, in the same order, and each has its own line in the list of contents.
func TestExcerpt(t *testing.T) {
	job, err := jobfile.Read("nook.toml", []byte(`
[[block]]
name = "fern"
print = "90 x 90 mm"
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
[[item]]
name = "bench"
size = "30 x 100 cm"
border = "25 mm"
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
`))
	if err != nil {
		t.Fatal(err)
	}
	plan, err := plan.New(job)
	if err != nil {
		t.Fatal(err)
	}
	all, places, err := Document(plan, UsualParts())
	if err != nil {
		t.Fatal(err)
	}
	pages := flat(all.Parts)
	first, last := places[0].Sheet.Name, places[len(places)-1].Sheet.Name
	for _, c := range []struct {
		wanted []string
		keep   func(page int, place *SheetPlace) bool // page counted from 1; place: nil where it is no sheet
		least  int
	}{
		{[]string{last, " " + first}, func(_ int, p *SheetPlace) bool {
			return p != nil && (p.Sheet.Name == first || p.Sheet.Name == last)
		}, 3},
		{[]string{"bench"}, func(page int, _ *SheetPlace) bool { return partAt(all.Parts, page) == "bench" }, 3},
		{[]string{"TAGS", first}, func(page int, p *SheetPlace) bool {
			return page == len(pages) || p != nil && p.Sheet.Name == first
		}, 3},
		{nil, func(int, *SheetPlace) bool { return true }, len(pages)},
	} {
		var want []paper.Page
		var wantPlaces []SheetPlace
		for i, page := range pages {
			at := slices.IndexFunc(places, func(p SheetPlace) bool { return p.Page == i+1 })
			var place *SheetPlace
			if at >= 0 {
				place = &places[at]
			}
			if !c.keep(i+1, place) {
				continue
			}
			want = append(want, page)
			if place != nil {
				p := *place
				p.Page = len(want)
				wantPlaces = append(wantPlaces, p)
			}
		}
		if len(want) < c.least {
			t.Fatalf("%v: only %d pages", c.wanted, len(want))
		}
		got, gotPlaces, _, err := Excerpt(plan, UsualParts(), c.wanted)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(pdfOfPages(t, flat(got.Parts)), pdfOfPages(t, want)) {
			t.Errorf("%v: other pages", c.wanted)
		}
		if d := cmp.Diff(wantPlaces, gotPlaces); d != "" {
			t.Errorf("%v: %s", c.wanted, d)
		}
		for _, p := range gotPlaces {
			if name := lastPart(got.Parts, p.Page); name != "sheet "+p.Sheet.Name {
				t.Errorf("%v: page %d, sheet %s, is called %q in the contents", c.wanted, p.Page, p.Sheet.Name, name)
			}
		}
	}
}

// lastPart is the name of the innermost part that a page, counted from 1, belongs to.
func lastPart(parts []paper.Part, page int) string {
	for _, p := range parts {
		n := len(p.Pages) + len(flat(p.Children))
		switch {
		case page > n:
			page -= n
		case page <= len(p.Pages):
			return p.Name
		default:
			return lastPart(p.Children, page-len(p.Pages))
		}
	}
	return ""
}

// partAt is "bench" for a page of a bench sheet and of the set's own, which are called otherwise
// in the list of contents.
func partAt(parts []paper.Part, page int) string {
	name := lastPart(parts, page)
	if name == "bench sheet" || name == "the whole set" {
		return "bench"
	}
	return name
}

func pdfOfPages(t *testing.T, pages []paper.Page) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, pdf.Document{Parts: []paper.Part{{Name: "pages", Pages: pages}}}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
