package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/paper/svg"
	"underlay/template"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

const drawHelp = `underlay draw JOB [-o FILE] [--item NAME] [--paper NAME] [...]
underlay draw --item SIZE --border LENGTH --block SIZE --gap LENGTH [...]

Draws the papers for every item of a job and writes them as one PDF. Print it at
100 % ("actual size"), and measure the check bars on the sheets before cutting.

JOB is a job file, or - for standard input; the pictures it names are beside it.
Without one, the flags say what one item and one block measure. The PDF is named
after the job file and goes into the current folder, unless -o names another;
-o - sends it to standard output. The job file and its pictures go along inside
the PDF. A name that ends in .svg gives the guides alone, as one drawing at true
size.

    underlay draw reading-nook.toml
    underlay draw reading-nook.toml --item "floor cushion" --paper A3
    underlay draw reading-nook.toml --parts guide,swatch -o cushion.pdf
    underlay draw reading-nook.toml --parts look -o look.pdf     in its colours
    underlay draw reading-nook.toml --item "bench runner" -o runner.svg
    underlay draw reading-nook.toml --sheets 1a,2c -o lost.pdf
    underlay draw --item 50x50cm --border 25mm --block 90x90mm --gap 1mm

A PDF or an SVG that underlay drew is written over, any other file only with
--force.
`

// drawing is what the flags of draw ask for.
type drawing struct {
	from      jobFrom
	overrides jobfile.Overrides
	output    string // "-": standard output
	parts     []string
	sheets    []string // the only ones wanted; nil: all
	force     bool
	asJSON    bool
}

// draw writes the papers.
func (c *call) draw(args []string) error {
	d, done, err := c.drawFlags(args)
	if done || err != nil {
		return err
	}
	job, err := c.overridden(d.from, d.overrides)
	if err != nil {
		return err
	}
	ending, err := endingOf(d.output)
	if err != nil {
		return err
	}
	was := ""
	if d.output != "-" {
		if was, err = c.replaced(d.output, c.origin("the job file", d.from.file), d.force, job); err != nil {
			return err
		}
	}
	plan, err := plan.New(job)
	if err != nil {
		return err
	}
	if ending == ".svg" {
		return c.drawSVG(plan, d, was)
	}
	doc, sheets, left, err := template.Excerpt(plan, d.parts, d.sheets)
	if err != nil {
		return err
	}
	if doc.Date, err = c.date(); err != nil {
		return err
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, doc); err != nil {
		return err
	}
	c.warn(plan)
	for _, l := range left {
		c.note(l)
	}
	pages := countPages(doc.Parts)
	o := output{name: d.output, from: c.origin("the job file", d.from.file), content: file.Bytes()}
	if d.asJSON {
		o.ready = func() error { return c.printJSON(sheetsJSON(d.output, pages, sheets)) }
	} else {
		o.words = wroteText(d.output, pages, template.Leaves(sheets), job.Paper.Stock.Name) + was
	}
	return c.writeOut(o)
}

// drawFlags reads the flags of draw; done: help was asked for, and given.
func (c *call) drawFlags(args []string) (d drawing, done bool, err error) {
	var q jobfile.Quick
	var parts, sheets string
	fs := newFlags("draw")
	textFlag(fs, &d.output, "output", "o", "FILE", "where to write; - is standard output")
	textFlag(fs, &parts, "parts", "", "LIST", "what to draw, of "+strings.Join(template.Parts(), ",")+";\nunless given, "+strings.Join(template.UsualParts(), ","))
	overrides := overrideFlags(fs)
	textFlag(fs, &sheets, "sheets", "", "LIST", "only these, one that was lost: 2b,3a; or a part, bench")
	fs.BoolVar(&d.force, "force", false, "write over a file that underlay did not draw")
	fs.BoolVar(&d.asJSON, "json", false, "say what was written, as JSON")
	quickFlags(fs, &q)
	itemOrSize(fs)
	if done, err = c.parse(fs, drawHelp, args); done || err != nil {
		return d, done, err
	}
	if d.from, err = source("draw", fs.Args(), q, "item", "paper"); err != nil {
		return d, false, err
	}
	d.overrides = *overrides
	if d.parts, err = partsNamed(parts); err != nil {
		return d, false, err
	}
	if sheets != "" {
		d.sheets = strings.Split(strings.ToLower(sheets), ",")
		if parts == "" && slices.ContainsFunc(d.sheets, ofPractice) {
			d.parts = template.Parts()
		}
	}
	if d.output == "" {
		d.output = outputName(d.from.file, ".pdf")
	}
	if d.output == "-" && d.asJSON {
		return d, false, usage("--json and -o - both write to standard output; take out --json, or name a file after -o")
	}
	ending, err := endingOf(d.output)
	if ending == ".svg" && (parts != "" || sheets != "" || d.asJSON) {
		return d, false, usage("%s: an SVG is the guide alone, one drawing without sheets; leave out --parts, --sheets and --json", d.output)
	}
	return d, false, err
}

// ofPractice tells the names of practice sheets, which are not among the usual parts.
func ofPractice(name string) bool {
	name = strings.TrimSpace(name)
	return name == "swatch" || strings.HasPrefix(name, "practice")
}

// partsNamed takes a list of parts apart; the usual ones where it is empty.
func partsNamed(list string) ([]string, error) {
	if list == "" {
		return template.UsualParts(), nil
	}
	var parts []string
	for _, name := range strings.Split(list, ",") {
		name = strings.TrimSpace(name)
		if !slices.Contains(template.Parts(), name) {
			write := strings.Join(template.Parts(), ",")
			if near, ok := words.Nearest(name, template.Parts()); ok {
				write = near
			}
			return nil, usage("--parts: there is no part %q; write %s", name, write)
		}
		parts = append(parts, name)
	}
	return parts, nil
}

// drawSVG writes the guides as one drawing at true size.
func (c *call) drawSVG(plan *plan.Plan, d drawing, was string) error {
	layout, err := guide.Layout(plan)
	if err != nil {
		return err
	}
	var file bytes.Buffer
	if err := svg.Write(&file, plan.Job.Title, layout, svg.Options{Face: true}); err != nil {
		return err
	}
	c.warn(plan)
	size := plan.Job.Units.FormatSize(layout.Bounds.Size())
	return c.writeOut(output{name: d.output, from: c.origin("the job file", d.from.file), content: file.Bytes(),
		words: fmt.Sprintf("wrote %s: one drawing of %s at true size\n", d.output, size) + was})
}

// misfits says which pictures have not the shape of their blocks' faces.
func (c *call) misfits(job *job.Job) {
	for _, text := range say.Misfits(job) {
		c.note(text)
	}
}

// warn says which names will not come out as they are written, and which passes lie on others.
func (c *call) warn(plan *plan.Plan) {
	for _, w := range guide.Warnings(plan.Job) {
		c.note(w)
	}
	c.misfits(plan.Job)
	for _, ip := range plan.Items {
		for _, cloth := range ip.Cloths() {
			name := words.Quote(ip.Item.Name)
			if len(ip.Turned) > 0 {
				name += ", " + words.InWords(cloth.FaceNames)
			}
			for _, o := range cloth.Overlaps {
				c.note(fmt.Sprintf("item %s: %s", name, say.Overlap(plan.Job.Units, o)))
			}
		}
	}
}

func countPages(parts []paper.Part) int {
	n := 0
	for _, p := range parts {
		n += len(p.Pages) + countPages(p.Children)
	}
	return n
}

// wroteText says in a line what was written.
func wroteText(file string, pages, sheets int, stock string) string {
	text := fmt.Sprintf("wrote %s: %s", file, words.Counted(pages, "page", "pages"))
	if sheets > 0 {
		on := words.Counted(sheets, "sheet", "sheets") + " of " + stock
		if stock == "one sheet" {
			on = words.Counted(sheets, "sheet", "sheets, each") + " as large as its guide"
		}
		text += fmt.Sprintf(", %s at true size; print at 100 %%, not fitted to the page", on)
	}
	return text + "\n"
}
