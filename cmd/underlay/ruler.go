package main

import (
	"bytes"

	"underlay/paper/pdf"
	"underlay/template"
	"underlay/template/job"
	"underlay/template/jobfile"
)

const rulerHelp = `underlay ruler [--window] [--paper NAME] [-o FILE.pdf]

Draws a page with two bars to measure, 180 mm across and 250 mm down, and writes
it as ruler.pdf, unless -o names another; -o - sends it to standard output. Print
it at 100 % ("actual size"), measure the bars with a steel rule, and paste the
lines the page shows into the job:

    [printer]
    across = "179.2 mm"
    down = "248.9 mm"

Everything at true size is then drawn that much larger or smaller. More than 3 %
off is no fault of the printer: the page was printed "fit to page".

With --window it is another page, window.pdf: four marks round an empty window of
150 x 200 mm. Print a block in it once, or cut the window out, with a knife, away
from the hand, on a mat, and lay the sheet over a print on cloth; take a
photograph, and underlay trace measures the block.

    underlay ruler
    underlay ruler --paper Letter -o letter.pdf
    underlay ruler --window
`

// ruler writes the printer check page, or the one to measure a block with.
func (c *call) ruler(args []string) error {
	fs := newFlags("ruler")
	name, file := "A4", ""
	window := fs.Bool("window", false, "the page to measure a block with, from a photograph")
	textFlag(fs, &file, "output", "o", "FILE", "where to write, ruler.pdf unless given, or window.pdf;\n- is standard output")
	textFlag(fs, &name, "paper", "", "NAME", "A4, unless given, Letter, \"610 x 900 mm\" and others")
	force := fs.Bool("force", false, "write over a file that underlay did not draw")
	if done, err := c.parse(fs, rulerHelp, args); done || err != nil {
		return err
	}
	if fs.NArg() > 0 {
		return usage("ruler takes no JOB; write underlay ruler --paper %s", fs.Arg(0))
	}
	page, draw, usual := "ruler", template.Ruler, "ruler.pdf"
	if *window {
		page, draw, usual = "window", template.Window, "window.pdf"
	}
	if file == "" {
		file = usual
	}
	if ending, err := endingOf(file); err != nil {
		return err
	} else if ending == ".svg" {
		return usage("%s: the %s page is a PDF; let the name end in .pdf", file, page)
	}
	if file != "-" {
		if _, err := c.replaced(file, origin{}, *force, nil); err != nil {
			return err
		}
	}
	stock, err := jobfile.ParseStock(name)
	if err != nil {
		return job.Problems{{Key: "--paper", Text: err.Error()}}
	}
	doc, err := draw(stock)
	if err != nil {
		return job.Problems{{Key: "--paper", Text: err.Error()}}
	}
	if doc.Date, err = c.date(); err != nil {
		return err
	}
	var content bytes.Buffer
	if err := pdf.Write(&content, doc); err != nil {
		return err
	}
	return c.writeOut(output{name: file, content: content.Bytes(),
		words: "wrote " + file + ": print it at 100 %, not fitted to the page, and measure the bars\n"})
}
