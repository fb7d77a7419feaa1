package template

import (
	"fmt"
	"slices"
	"strings"

	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// Excerpt draws what Document does, and of that keeps only the sheets and parts wanted: a sheet
// by its name, for every item that has one of that name, or a part by its name, as "bench".
// Capitals do not count. With nothing wanted everything is kept. Left says, a sentence each, what
// the guides have no room for. The error is of type Problems.
func Excerpt(p *plan.Plan, parts, wanted []string) (doc pdf.Document, places []SheetPlace, left []string, err error) {
	d, err := draw(p, parts)
	if err != nil || len(wanted) == 0 {
		return d.doc, d.places, d.left, err
	}
	keep := make([]bool, len(d.partOf)) // by page
	for _, w := range wanted {
		if err := d.want(keep, strings.TrimSpace(w), parts); err != nil {
			return pdf.Document{}, nil, nil, err
		}
	}
	at := 0
	d.doc.Parts = kept(d.doc.Parts, keep, &at)
	return d.doc, d.keptPlaces(keep), d.left, nil
}

// want marks the pages of a name to be kept.
func (d *binder) want(keep []bool, name string, parts []string) error {
	found := false
	for i, part := range d.partOf {
		if strings.EqualFold(part, name) && slices.Contains(parts, part) {
			keep[i], found = true, true
		}
	}
	var names []string
	for _, s := range d.places {
		if strings.EqualFold(s.Sheet.Name, name) {
			keep[s.Page-1], found = true, true
		}
		if !slices.Contains(names, s.Sheet.Name) {
			names = append(names, s.Sheet.Name)
		}
	}
	if found {
		return nil
	}
	const most = 12
	if n := len(names); n > most {
		names = []string{names[0] + " to " + names[n-1]}
	}
	write := words.Joined(append(names, parts...), "or")
	return job.Problems{{Key: "--sheets", Text: fmt.Sprintf("there is no sheet %s; write %s", words.Quote(name), write)}}
}

// kept returns parts with only the pages to be kept; at is the page that the first of them
// begins with, counted from 0.
func kept(parts []paper.Part, keep []bool, at *int) []paper.Part {
	var out []paper.Part
	for _, p := range parts {
		some := paper.Part{Name: p.Name}
		for _, page := range p.Pages {
			if keep[*at] {
				some.Pages = append(some.Pages, page)
			}
			*at++
		}
		some.Children = kept(p.Children, keep, at)
		if len(some.Pages)+len(some.Children) > 0 {
			out = append(out, some)
		}
	}
	return out
}

// keptPlaces returns the places of the sheets to be kept, by the pages they are on then.
func (d *binder) keptPlaces(keep []bool) []SheetPlace {
	var places []SheetPlace
	for _, s := range d.places {
		if !keep[s.Page-1] {
			continue
		}
		page := 0
		for _, k := range keep[:s.Page] {
			if k {
				page++
			}
		}
		s.Page = page
		places = append(places, s)
	}
	return places
}
