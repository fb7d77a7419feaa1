package template

import (
	"fmt"
	"slices"
	"strings"

	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/bench"
	"underlay/template/guide"
	"underlay/template/plan"
	"underlay/template/words"
)

// SheetPlace is a sheet of the document that is at true size, and the page it is on, counted
// from 1.
type SheetPlace struct {
	Page  int
	Item  string
	Part  string
	Pass  string // the one that the sheet shows, where passes are apart
	Sheet paper.Sheet
}

// Leaves returns how many pages the sheets are on: strips share one.
func Leaves(places []SheetPlace) int {
	pages := map[int]bool{}
	for _, p := range places {
		pages[p.Page] = true
	}
	return len(pages)
}

// part is one kind of papers: made for each item, or once for the job.
type part struct {
	name string
	// forItem draws an item's papers, where the papers before it took so many sheets.
	forItem func(p *plan.Plan, ip *plan.ItemPlan, sheets int) ([]guide.Papers, error)
	forJob  func(p *plan.Plan) guide.Papers
	usual   bool // printed unless the maker says which
}

// parts has a line for each part of the PDF, in the order they are bound.
func parts() []part {
	return []part{
		{"bench", func(p *plan.Plan, ip *plan.ItemPlan, _ int) ([]guide.Papers, error) { return bench.Sheets(p, ip), nil }, nil, true},
		{"look", func(p *plan.Plan, ip *plan.ItemPlan, _ int) ([]guide.Papers, error) { return bench.Looks(p, ip), nil }, nil, false},
		{"guide", guides, nil, true},
		{"swatch", func(p *plan.Plan, ip *plan.ItemPlan, _ int) ([]guide.Papers, error) { return guide.Swatches(p, ip) }, nil, false},
		{"tags", nil, bench.Tags, true},
	}
}

// guides draws the guides of an item, each with the overview of its sheets first.
func guides(p *plan.Plan, ip *plan.ItemPlan, sheets int) ([]guide.Papers, error) {
	drawn, err := guide.Faces(p.Job, ip, sheets)
	var all []guide.Papers
	for _, g := range drawn {
		front := bench.Overview(p.Job, g)
		all = append(all, guide.Papers{Name: g.Face.Titled("guide"), Mark: guide.Mark(p.Job, g.Face), Pass: g.Face.Pass(), Left: g.Left(p.Job), Pages: append(front, g.Pages...), Sheets: g.Sheets})
	}
	return all, err
}

// Parts returns the names of all parts.
func Parts() []string { return partNames(func(part) bool { return true }) }

// UsualParts returns the names of the parts made unless the maker says which.
func UsualParts() []string { return partNames(func(p part) bool { return p.usual }) }

func partNames(keep func(part) bool) []string {
	var names []string
	for _, p := range parts() {
		if keep(p) {
			names = append(names, p.name)
		}
	}
	return names
}

// binder is a document under way.
type binder struct {
	doc    pdf.Document
	places []SheetPlace
	partOf []string // the part each page belongs to
	marks  []string // the mark of each page
	left   []string // what the guides have no room for, a sentence each
}

// Document draws the parts named, for every item of the plan. The error is of type Problems:
// a guide of more sheets than anyone would tape, a job with nothing to print.
func Document(p *plan.Plan, names []string) (pdf.Document, []SheetPlace, error) {
	b, err := draw(p, names)
	return b.doc, b.places, err
}

func draw(p *plan.Plan, names []string) (binder, error) {
	job := p.Job
	b := binder{doc: pdf.Document{
		Title:       job.Title,
		Attachments: attachments(job),
	}}
	wanted := slices.DeleteFunc(parts(), func(p part) bool { return !slices.Contains(names, p.name) })
	for _, ip := range p.Items {
		if len(ip.Item.Passes) == 0 {
			return binder{}, job.NothingToDraw(ip.Item)
		}
		b.doc.Parts = append(b.doc.Parts, paper.Part{Name: ip.Item.Name})
		for _, part := range wanted {
			if part.forItem == nil {
				continue
			}
			papers, err := part.forItem(p, ip, Leaves(b.places))
			if err != nil {
				return binder{}, err
			}
			for _, papers := range papers {
				b.bindFor(ip.Item.Name, part.name, papers)
			}
		}
	}
	for _, part := range wanted {
		if part.forJob != nil {
			b.bind(part.name, part.forJob(p))
		}
	}
	if slices.Contains(names, "bench") && len(p.Items) > 1 {
		b.bindFirst("bench", guide.Papers{Name: "the whole set", Mark: guide.SetMark(p.Job), Pages: bench.Set(p, b.contents(), Leaves(b.places))})
	}
	b.foot(p)
	return b, nil
}

// contents lists what is bound so far.
func (b *binder) contents() []bench.Entry {
	var entries []bench.Entry
	page := 1
	for _, p := range b.doc.Parts {
		all := bench.Entry{Name: p.Name, Page: page, Pages: len(flat([]paper.Part{p}))}
		entries = append(entries, all)
		page += len(p.Pages)
		for _, c := range p.Children {
			n := len(flat([]paper.Part{c}))
			entries = append(entries, bench.Entry{Name: c.Name, Page: page, Pages: n, Inner: true})
			page += n
		}
	}
	return entries
}

// flat returns the pages of parts, in their order.
func flat(parts []paper.Part) []paper.Page {
	var pages []paper.Page
	for _, p := range parts {
		pages = append(append(pages, p.Pages...), flat(p.Children)...)
	}
	return pages
}

// bindFirst puts papers of the whole job before all others.
func (b *binder) bindFirst(part string, papers guide.Papers) {
	n := len(papers.Pages)
	b.doc.Parts = slices.Insert(b.doc.Parts, 0, paper.Part{Name: papers.Name, Pages: papers.Pages})
	b.partOf = slices.Insert(b.partOf, 0, slices.Repeat([]string{part}, n)...)
	b.marks = slices.Insert(b.marks, 0, slices.Repeat([]string{papers.Mark}, n)...)
	for i := range b.places {
		b.places[i].Page += n
	}
}

// foot writes the foot line on every page but the sheets at true size, which say themselves what
// they are.
func (b *binder) foot(p *plan.Plan) {
	atSize := map[int]bool{}
	for _, s := range b.places {
		atSize[s.Page] = true
	}
	page, job := 0, p.Job
	var walk func(parts []paper.Part, left string)
	walk = func(parts []paper.Part, left string) {
		for i := range parts {
			name := left + " · " + parts[i].Name
			for k := range parts[i].Pages {
				page++
				if !atSize[page] {
					bench.Foot(job, &parts[i].Pages[k], name, fmt.Sprintf("page %d of %d · mark %s", page, len(b.partOf), b.marks[page-1]))
				}
			}
			walk(parts[i].Children, name)
		}
	}
	walk(b.doc.Parts, words.UpperFirst(job.Title))
}

// bind adds papers of the whole job.
func (b *binder) bind(part string, papers guide.Papers) {
	b.doc.Parts = append(b.doc.Parts, paper.Part{Name: papers.Name, Pages: papers.Pages})
	b.claim(part, papers)
}

// bindFor adds papers of the item last begun; each sheet has its own line in the list of
// contents.
func (b *binder) bindFor(item, part string, papers guide.Papers) {
	leaves := 0
	var names [][]string // of the sheets on each
	for _, s := range papers.Sheets {
		if leaves = max(leaves, s.Leaf+1); len(names) < leaves {
			names = append(names, nil)
		}
		names[s.Leaf] = append(names[s.Leaf], s.Name)
	}
	front := len(papers.Pages) - leaves
	bound := paper.Part{Name: papers.Name, Pages: papers.Pages[:front]}
	for _, s := range papers.Sheets {
		b.places = append(b.places, SheetPlace{len(b.partOf) + front + s.Leaf + 1, item, part, papers.Pass, s})
	}
	for i, on := range names {
		name := "sheet " + on[0]
		if len(on) > 1 {
			name = "strips " + strings.Join(on, ", ")
		}
		bound.Children = append(bound.Children, paper.Part{Name: name, Pages: papers.Pages[front+i : front+i+1]})
	}
	for _, left := range papers.Left {
		b.left = append(b.left, fmt.Sprintf("item %s%s: %s", words.Quote(item), strings.TrimPrefix(papers.Name, "guide"), left))
	}
	last := &b.doc.Parts[len(b.doc.Parts)-1]
	last.Children = append(last.Children, bound)
	b.claim(part, papers)
}

// claim says what part the pages bound in last belong to.
func (b *binder) claim(part string, papers guide.Papers) {
	for range papers.Pages {
		b.partOf, b.marks = append(b.partOf, part), append(b.marks, papers.Mark)
	}
}

// Ruler binds the printer check page for a paper. The error is a plain sentence: the paper is too
// small, and which would do.
func Ruler(stock paper.Stock) (pdf.Document, error) {
	pages, err := guide.RulerPage(stock)
	return pdf.Document{Title: "Ruler page", Parts: []paper.Part{{Name: "ruler page", Pages: pages}}}, err
}

// Window binds the page to measure a block with for a paper. The error is a plain sentence: the
// paper is too small, and which would do.
func Window(stock paper.Stock) (pdf.Document, error) {
	pages, err := guide.WindowPage(stock)
	return pdf.Document{Title: "Window page", Parts: []paper.Part{{Name: "window page", Pages: pages}}}, err
}
