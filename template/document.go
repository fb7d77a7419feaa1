package template

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
)

// CarriedName is what the job file inside a PDF is called.
const CarriedName = "job.toml"

// SheetPlace is a sheet of the document that is at true size, and the page it is on, counted
// from 1.
type SheetPlace struct {
	Page  int
	Item  string
	Part  string
	Sheet paper.Sheet
}

// part is one kind of papers: made for each item, or once for the job.
type part struct {
	name    string
	forItem func(d *document, ip *ItemPlan) error
	forJob  func(d *document) error
	usual   bool // printed unless the maker says which
}

// parts has a line for each part of the PDF, in the order they are bound.
func parts() []part {
	return []part{
		{"bench", (*document).addBench, nil, true},
		{"guide", (*document).addGuide, nil, true},
		{"swatch", (*document).addSwatch, nil, false},
		{"tags", nil, (*document).addTags, true},
	}
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

// document is a PDF under way.
type document struct {
	plan   *Plan
	doc    pdf.Document
	places []SheetPlace
	partOf []string // the part each page belongs to
	pages  int
}

// Document draws the parts named, for every item of the plan. The error is of type Problems:
// a guide of more sheets than anyone would tape, a job with nothing to print.
func (p *Plan) Document(names []string) (pdf.Document, []SheetPlace, error) {
	d, err := p.draw(names)
	return d.doc, d.places, err
}

func (p *Plan) draw(names []string) (document, error) {
	job := p.Job
	d := document{plan: p, doc: pdf.Document{
		Title:      job.Title,
		Attachment: pdf.Attachment{Name: CarriedName, Content: job.Source},
	}}
	wanted := slices.DeleteFunc(parts(), func(p part) bool { return !slices.Contains(names, p.name) })
	if slices.Contains(names, "bench") {
		pages := totalsPages(p)
		d.doc.Parts = append(d.doc.Parts, paper.Part{Name: "the whole set", Pages: pages})
		d.pages += len(pages)
		d.claim("bench")
	}
	for _, ip := range p.Items {
		if len(ip.Passes) == 0 {
			return document{}, job.nothingToDraw(ip.Item)
		}
		d.doc.Parts = append(d.doc.Parts, paper.Part{Name: ip.Item.Name})
		for _, part := range wanted {
			if part.forItem == nil {
				continue
			}
			if err := part.forItem(&d, ip); err != nil {
				return document{}, err
			}
			d.claim(part.name)
		}
	}
	for _, part := range wanted {
		if part.forJob == nil {
			continue
		}
		if err := part.forJob(&d); err != nil {
			return document{}, err
		}
		d.claim(part.name)
	}
	return d, nil
}

// nothingToDraw refuses an item without a pass.
func (j *Job) nothingToDraw(item *Item) Problems {
	return Problems{j.problem(item.Line, "item %s has no pass, so there is nothing to draw; add [[item.pass]] with block and gap below it", quote(item.Name))}
}

// claim says what part the pages are that were bound in last.
func (d *document) claim(part string) {
	for len(d.partOf) < d.pages {
		d.partOf = append(d.partOf, part)
	}
}

// add binds pages in, as a part of the item last begun.
func (d *document) add(name string, pages []paper.Page) {
	item := &d.doc.Parts[len(d.doc.Parts)-1]
	item.Children = append(item.Children, paper.Part{Name: name, Pages: pages})
	d.pages += len(pages)
}

// addSheets binds in the sheets of a guide, one for each page, each with its own line in the
// list of contents; front comes before them.
func (d *document) addSheets(item, part, face string, front, pages []paper.Page, sheets []paper.Sheet) {
	name := part
	if face != "" {
		name += ", " + face
	}
	d.add(name, front)
	children := d.doc.Parts[len(d.doc.Parts)-1].Children
	guide := &children[len(children)-1]
	for i, s := range sheets {
		d.pages++
		d.places = append(d.places, SheetPlace{d.pages, item, part, s})
		guide.Children = append(guide.Children, paper.Part{Name: "sheet " + s.Name, Pages: pages[i : i+1]})
	}
}

// checkRoll refuses a roll that does not take in the width of one print: its guide would be
// all joins.
func (j *Job) checkRoll(ip *ItemPlan) error {
	if !j.Paper.Stock.Roll {
		return nil
	}
	across := j.Printer.Scale().OnPage(false).Across
	usable := (j.Paper.Stock.Size.W - 2*j.Paper.Margin) / geometry.Length(across)
	for _, p := range ip.Passes {
		if w := p.layout.cell.W; w > usable+geometry.Tolerance {
			return Problems{j.problem(ip.Item.Line, "item %s: the paper %q shows %s inside its margins, less than one print of the block %s, %s wide; write a wider roll, or a sheet such as \"A4\"",
				quote(ip.Item.Name), j.Paper.Stock.Name, j.Units.Format(usable), quote(p.Pass.Block.Name), j.Units.Format(w))}
		}
	}
	return nil
}

// mostSheets is the most sheets a job may take.
const mostSheets = 2000

// addGuide draws the guide for each face of an item that differs.
func (d *document) addGuide(ip *ItemPlan) error {
	job := d.plan.Job
	for _, face := range ip.Faces() {
		if err := d.checkSheets(ip); err != nil {
			return err
		}
		tiling, err := job.tile(ip)
		if err != nil {
			return Problems{job.problem(0, "%s", job.sheetWords(err))}
		}
		drawing := newGuide(job, face)
		sheets, pages := paper.Sheets(drawing, tiling, face.strip(job))
		d.addSheets(ip.Item.Name, "guide", face.Name(), sheetMap(job, face, drawing, sheets), pages, sheets)
	}
	return nil
}

// layout is the part of the item's frame its guide takes up.
func (ip *ItemPlan) layout(job *Job) geometry.Rect {
	r := ip.Area.cloth
	if path, _ := seamLap(ip); path != nil {
		r = r.Union(path.Bounds())
	}
	return r.Grow(job.Paper.Reach)
}

// tile spreads an item's guide over the job's paper. With the extent "edges" the sheets that
// lie wholly on the cloth, clear of its edge, are left out.
func (j *Job) tile(ip *ItemPlan) (paper.Tiling, error) {
	p := j.Paper
	t, err := paper.Tile(ip.layout(j), j.Setup())
	if cloth := ip.Item.Outline; err == nil && p.Extent == EdgesExtent && !cloth.None() {
		t = t.Without(func(s paper.Sheet) bool {
			return cloth.HoldsClear(geometry.RectOutline(s.Area), 0.01*geometry.Millimetre)
		})
	}
	return t, err
}

// countSheets returns how many sheets tile makes, without making millions of them: a grid of
// n has at least 4 sqrt(n) - 4 along its edges.
func (j *Job) countSheets(ip *ItemPlan) (int, error) {
	p := j.Paper
	n, err := paper.CountSheets(ip.layout(j), j.Setup())
	const tooMany = (mostSheets/4 + 2) * (mostSheets/4 + 2)
	if err != nil || p.Extent != EdgesExtent || n <= mostSheets || n > tooMany {
		return n, err
	}
	t, err := j.tile(ip)
	return len(t.Sheets), err
}

// sheetWords says why a guide cannot be spread over the paper, in the maker's unit.
func (j *Job) sheetWords(err error) string {
	if long, ok := errors.AsType[paper.TooLong](err); ok {
		return long.Words(j.Units)
	}
	return err.Error()
}

// Scale is what the printer needs drawn larger or smaller.
func (p Printer) Scale() paper.Scale { return paper.Correction(p.Across, p.Down) }

// Setup is what the job's guides are printed on.
func (j *Job) Setup() paper.Setup {
	return paper.Setup{Stock: j.Paper.Stock, Margin: j.Paper.Margin, Overlap: j.Paper.Overlap, Scale: j.Printer.Scale()}
}

// checkSheets refuses a guide of more sheets than a job may take, and says what would do.
func (d *document) checkSheets(ip *ItemPlan) error {
	job, p := d.plan.Job, d.plan.Job.Paper
	if err := job.checkRoll(ip); err != nil {
		return err
	}
	n, err := job.countSheets(ip)
	if err != nil {
		return Problems{job.problem(ip.Item.Line, "item %s: %s", quote(ip.Item.Name), job.sheetWords(err))}
	}
	if len(d.places)+n <= mostSheets {
		return nil
	}
	what := "write a larger paper"
	for _, s := range largerStocks() {
		setup := job.Setup()
		setup.Stock = s
		if m, err := paper.CountSheets(ip.layout(job), setup); err == nil && len(d.places)+m <= mostSheets {
			what = fmt.Sprintf("paper %q takes %s", s.Name, plainNumber(float64(m)))
			break
		}
	}
	if p.Extent != EdgesExtent {
		what += `, and extent = "edges" leaves out the sheets inside the cloth`
	}
	return Problems{job.problem(ip.Item.Line, "item %s: its guide takes %s sheets of %s, and a job may take %s; %s",
		quote(ip.Item.Name), plainNumber(float64(n)), p.Stock.Name, plainNumber(mostSheets), what)}
}

// largerStocks are the papers to offer: what most printers take, then ever larger ones.
func largerStocks() []paper.Stock {
	stocks := slices.DeleteFunc(paper.Stocks(), func(s paper.Stock) bool {
		return !slices.Contains([]string{"A0", "A1", "A2", "A3", "A4"}, s.Name)
	})
	slices.SortFunc(stocks, func(a, b paper.Stock) int { return cmp.Compare(a.Size.W, b.Size.W) })
	return stocks
}

// strip is what every sheet of a guide says about itself.
func (f FacePlan) strip(job *Job) paper.Strip {
	lines := []string{f.Label()}
	if len(f.Passes) == 1 {
		lines = append(lines, f.Passes[0].printWords(job.Units), borderWords(job.Units, f.Passes[0].Choice().Border))
	} else {
		for i, p := range f.Passes {
			if i == 2 && len(f.Passes) > 3 {
				lines = append(lines, fmt.Sprintf("and %d passes more", len(f.Passes)-2))
				break
			}
			lines = append(lines, p.printWords(job.Units))
		}
	}
	for i, l := range lines {
		lines[i] = paper.Shorten(l, 2.5, false, 90)
	}
	return paper.Strip{Lines: lines, Mark: job.Mark(), Inches: job.Units == geometry.UnitInch}
}
