package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/picture"
	"underlay/template/say"
	"underlay/template/trace"
	"underlay/template/words"
)

const traceHelp = `underlay trace PHOTO [-o FILE.png] [--name NAME]

Measures a block from a photograph, or a scan, of one print of it in the window
that underlay ruler --window makes. PHOTO is a PNG or JPEG file, or - for standard
input. The print is written, at true size, as a picture named after NAME, or after
the photograph; and the lines to put into a job go to standard output:

    [[block]]
    name = "fern"
    print = "61.4 x 80.2 mm"
    inked = 0.42
    picture = "fern.png"

Read what standard error says of how sure that is, and look at the picture before
you rely on it: it is to show your print, whole and nothing else. The picture goes
beside the job file. A file that is there already is left alone, unless --force is
given.

Measure the window page's two bars. Where they are not 150 mm across and 200 mm
down, say what they are, and the print is measured as much larger or smaller.

    underlay trace photo.jpg --name fern
    underlay trace photo.jpg --name fern >> reading-nook.toml
    underlay trace photo.jpg --name fern --across "149.2 mm" --down "199.5 mm"
`

// trace measures a print in a photograph.
func (c *call) trace(args []string) error {
	fs := newFlags("trace")
	var file, name, across, down string
	textFlag(fs, &file, "output", "o", "FILE", "where to write the print's picture, a PNG")
	textFlag(fs, &name, "name", "", "NAME", "what the block is called")
	textFlag(fs, &across, "across", "", "LENGTH", "what the window page's bar of 150 mm measures")
	textFlag(fs, &down, "down", "", "LENGTH", "what its bar of 200 mm measures")
	force := fs.Bool("force", false, "write over a file that is there already")
	if done, err := c.parse(fs, traceHelp, args); done || err != nil {
		return err
	}
	photo, err := photoNamed(fs.Args(), name)
	if err != nil {
		return err
	}
	if name == "" {
		name = strings.TrimSuffix(filepath.Base(photo), filepath.Ext(photo))
	}
	if name = strings.TrimSpace(name); name == "" {
		return usage("the block has no name; write --name fern")
	}
	if file, err = tracedName(file, name); err != nil {
		return err
	}
	wide, err := printedBar("across", across, guide.WindowAcross)
	if err != nil {
		return err
	}
	high, err := printedBar("down", down, guide.WindowDown)
	if err != nil {
		return err
	}
	from := c.origin("the photograph", photo)
	if _, err := unusedPlace(file, from, *force, "fern.png"); err != nil {
		return err
	}

	p, err := c.traced(photo)
	if err != nil {
		return err
	}
	p = p.Scaled(wide, high)
	var content bytes.Buffer
	if err := picture.WritePNG(&content, p.Mask, trace.PixelsPerMM*1000); err != nil {
		return err
	}
	err = c.writeOut(output{name: file, from: from, content: content.Bytes(),
		ready: func() error { return c.print("\n" + say.TracedBlock(name, filepath.Base(file), p)) }})
	if err != nil {
		return err
	}
	c.note("wrote " + file + ", the print as it was measured: look at it before you rely on it\n" + say.Traced(p))
	return nil
}

// photoNamed returns the one photograph that is named.
func photoNamed(args []string, block string) (string, error) {
	switch {
	case len(args) == 0:
		return "", usage("trace needs a photograph of a print in the window page; write underlay trace photo.jpg, and underlay ruler --window makes that page")
	case len(args) > 1:
		return "", usage("trace takes one PHOTO, and %d are given; name one, and put quotes round a name with spaces", len(args))
	case args[0] == "":
		return "", usage("the name of the PHOTO is empty; write underlay trace photo.jpg")
	case args[0] == "-" && block == "":
		return "", usage("a photograph from standard input has no name for the block; write underlay trace - --name fern")
	}
	return args[0], nil
}

// tracedName returns the name of the file that the picture goes into: after the block, unless the
// maker says which. A job can name it then.
func tracedName(file, block string) (string, error) {
	switch {
	case file == "-":
		return "", usage("standard output takes the lines for the job; write the picture into a file, such as -o fern.png")
	case file == "":
		if file = block + ".png"; picture.CheckName(file) != nil {
			return "", usage("%s cannot be the name of a picture; write one after -o, such as -o fern.png", words.Quote(file))
		}
	case isFolder(file): // checkNew says so
	case strings.ToLower(filepath.Ext(file)) != ".png":
		return "", usage("%s: the picture is a PNG; let the name end in .png", file)
	case picture.CheckName(filepath.Base(file)) != nil:
		return "", usage("%s: a job cannot name this file; write another name after -o, such as -o fern.png", file)
	}
	return file, nil
}

// printedBar returns how much longer than drawn a bar of the window page came out.
func printedBar(flag, measured string, drawn geometry.Length) (float64, error) {
	if measured == "" {
		return 1, nil
	}
	l, err := geometry.ParsePositive(measured)
	if err != nil {
		return 0, job.Problems{{Key: "--" + flag, Text: err.Error()}}
	}
	if math.Abs(float64(l-drawn)) > float64(drawn*job.MostOff+geometry.Tolerance) {
		show := geometry.UnitMM.Format
		return 0, job.Problems{{Key: "--" + flag, Text: fmt.Sprintf("%s is more than 3 %% off the %s that the bar is drawn: the page was printed “fit to page”; print it again at 100 %%, and take the photograph again", show(l), show(drawn))}}
	}
	return float64(l / drawn), nil
}

// traced reads a photograph and measures the print in it.
func (c *call) traced(name string) (trace.Print, error) {
	const most = picture.MostBytes + 1
	var file []byte
	var err error
	if name == "-" {
		if file, err = io.ReadAll(io.LimitReader(c.stdin, most)); err != nil {
			return trace.Print{}, fmt.Errorf("standard input cannot be read: %w; send it a photograph, or write the name of one", cause(err))
		}
		name = "standard input"
	} else if file, err = readFile(name, most, "check its name and folder", "write the name of a photograph in it"); err != nil {
		return trace.Print{}, err
	}
	grey, err := picture.Gray(file)
	if err != nil {
		return trace.Print{}, errors.New(name + ": " + err.Error())
	}
	p, err := trace.Photo(grey)
	if err != nil {
		return trace.Print{}, errors.New(name + ": " + err.Error())
	}
	return p, nil
}
