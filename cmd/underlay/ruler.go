package main

import (
	"bytes"

	"underlay/paper/pdf"
	"underlay/template"
)

const rulerHelp = `underlay ruler [--paper NAME] [-o FILE.pdf]

Draws a page with two bars to measure, 180 mm across and 250 mm down, and writes
it as ruler.pdf, unless -o names another; -o - sends it to standard output. Print
it at 100 % ("actual size"), measure the bars with a steel rule, and paste the
lines the page shows into the job:

    [printer]
    across = "179.2 mm"
    down = "248.9 mm"

Everything at true size is then drawn that much larger or smaller. More than 3 %
off is no fault of the printer: the page was printed "fit to page".

    underlay ruler
    underlay ruler --paper Letter -o letter.pdf
`

// ruler writes the printer check page.
func (c *call) ruler(args []string) error {
	fs := newFlags("ruler")
	name, output := "A4", "ruler.pdf"
	textFlag(fs, &output, "output", "o", "FILE", "where to write; - is standard output")
	textFlag(fs, &name, "paper", "", "NAME", "A4, unless given, Letter, \"610 x 900 mm\" and others")
	if done, err := c.parse(fs, rulerHelp, args); done || err != nil {
		return err
	}
	if fs.NArg() > 0 {
		return usage("ruler takes no JOB; write underlay ruler --paper %s", fs.Arg(0))
	}
	if ending, err := endingOf(output); err != nil {
		return err
	} else if ending == ".svg" {
		return usage("%s: the ruler page is a PDF; let the name end in .pdf", output)
	}
	stock, err := template.ParseStock(name)
	if err != nil {
		return template.Problems{{Key: "--paper", Text: err.Error()}}
	}
	doc, err := template.RulerPage(stock)
	if err != nil {
		return template.Problems{{Key: "--paper", Text: err.Error()}}
	}
	if doc.Date, err = c.date(); err != nil {
		return err
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, doc); err != nil {
		return err
	}
	if err := c.writeOut(output, "", file.Bytes()); err != nil || output == "-" {
		return err
	}
	return c.print("wrote " + output + ": print it at 100 %, not fitted to the page, and measure the bars\n")
}
