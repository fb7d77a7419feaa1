package side

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/paper/svg"
	"underlay/template"
	"underlay/template/guide"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/words"
)

// Papers is how many sheets of which paper a guide takes, and what pages there are.
type Papers struct {
	Problems []Problem `json:"problems"`
	Counts   []Count   `json:"counts"` // of the item asked for
	Pages    []Page    `json:"pages"`  // of the whole document, in the order in which they are printed
}

// Count is how many sheets of a paper the guides of an item take.
type Count struct {
	Guide  string `json:"guide"` // the face, "front"; "" where there is one guide
	Paper  string `json:"paper"`
	Sheets int    `json:"sheets"`
	Fewest bool   `json:"fewest"` // the smallest paper with the fewest sheets
	Own    bool   `json:"own"`    // the job's
	Edits  []Edit `json:"edits"`  // make it the job's
}

// Page is one page of the papers.
type Page struct {
	Name  string  `json:"name"` // "floor cushion · guide · sheet 1a"
	W     float64 `json:"w"`    // in millimetres
	H     float64 `json:"h"`
	Guide bool    `json:"guide"` // at true size
}

// document is the papers of a job, drawn.
type document struct {
	text, name string
	parts      string
	doc        pdf.Document
	places     []template.SheetPlace
	pages      []paper.Page
	names      []string
}

// Papers draws the papers of a job, and counts the sheets that the guides of an item take of each usual
// paper. It takes much longer than Look. No parts are the usual ones.
func (s *Side) Papers(text string, item int, parts []string) Papers {
	out := Papers{Problems: []Problem{}, Counts: []Count{}, Pages: []Page{}}
	refuse := func(err error) Papers {
		var p = Papers{Problems: problemsOf(err, nil), Counts: []Count{}, Pages: []Page{}}
		if tree, broken := treeOf(text); broken == nil {
			p.Problems = problemsOf(err, tree.TreeParser)
		}
		return p
	}
	d, err := s.document(text, parts)
	if err != nil {
		return refuse(err)
	}
	p := s.last.plan
	ip := p.Items[within(item, len(p.Items))]
	for _, face := range guide.Shown(p.Job, ip) {
		for _, c := range guide.SheetCounts(p, face) {
			out.Counts = append(out.Counts, Count{face.Name(), c.Stock.Name, c.Sheets, c.Fewest, c.Stock.Name == p.Job.Paper.Stock.Name, []Edit{{"paper.size", c.Stock.Name}}})
		}
	}
	guides := map[int]bool{}
	for _, place := range d.places {
		guides[place.Page-1] = true
	}
	for i, page := range d.pages {
		out.Pages = append(out.Pages, Page{d.names[i], float64(page.Size.W), float64(page.Size.H), guides[i]})
	}
	return out
}

// document draws a job's papers; what was drawn last is kept.
func (s *Side) document(text string, parts []string) (*document, error) {
	p, err := s.plan(text)
	if err != nil {
		return nil, err
	}
	if plan.IsShelf(p.Job) {
		return nil, errors.New("there is no pass, so there is nothing to draw; add one to an item")
	}
	if len(parts) == 0 {
		parts = template.UsualParts()
	}
	for _, name := range parts {
		if !slices.Contains(template.Parts(), name) {
			return nil, fmt.Errorf("there is no part %s; write %s", words.Quote(name), words.OneOf(template.Parts()))
		}
	}
	which := strings.Join(parts, ",")
	if d := s.drawn; d != nil && d.text == text && d.name == s.name && d.parts == which {
		return d, nil
	}
	doc, places, err := template.Document(p, parts)
	if err != nil {
		return nil, err
	}
	d := &document{text: text, name: s.name, parts: which, doc: doc, places: places}
	d.add(doc.Parts, nil)
	s.drawn = d
	return d, nil
}

// add lists the pages of parts, each with the names it is found under.
func (d *document) add(parts []paper.Part, under []string) {
	for _, p := range parts {
		names := append(slices.Clone(under), words.Shown(p.Name))
		for range p.Pages {
			d.names = append(d.names, strings.Join(names, " · "))
		}
		d.pages = append(d.pages, p.Pages...)
		d.add(p.Children, names)
	}
}

// Sheet returns a page of the papers, counted from 0, as it comes out of the printer: a picture as
// wide as the page, in millimetres.
func (s *Side) Sheet(text string, parts []string, page int) (string, error) {
	d, err := s.document(text, parts)
	if err != nil {
		return "", err
	}
	if page < 0 || page >= len(d.pages) {
		return "", fmt.Errorf("there is no page %d; the papers have %s", page+1, words.Counted(len(d.pages), "page", "pages"))
	}
	var out bytes.Buffer
	err = svg.WritePage(&out, d.names[page], d.pages[page], svg.Options{IDs: fmt.Sprintf("page%d-", page)})
	return out.String(), err
}

// Draw returns the papers as a PDF: byte for byte what the command draws of the same job under the
// same name. No parts are the usual ones.
func (s *Side) Draw(text string, parts []string) ([]byte, error) {
	d, err := s.document(text, parts)
	if err != nil {
		return nil, err
	}
	return written(d.doc)
}

func written(doc pdf.Document) ([]byte, error) {
	var file bytes.Buffer
	err := pdf.Write(&file, doc)
	return file.Bytes(), err
}

// Ruler returns the page on which a printer is checked, as a PDF, for a paper by its name.
func Ruler(paper string) ([]byte, error) { return onPaper(paper, template.Ruler) }

// Window returns the page with the window in which a block is printed once to be measured from a
// photograph, as a PDF, for a paper by its name.
func Window(paper string) ([]byte, error) { return onPaper(paper, template.Window) }

func onPaper(name string, draw func(paper.Stock) (pdf.Document, error)) ([]byte, error) {
	stock, err := jobfile.ParseStock(name)
	if err != nil {
		return nil, err
	}
	doc, err := draw(stock)
	if err != nil {
		return nil, err
	}
	return written(doc)
}
