package main

import (
	"fmt"
	"os"
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/words"
)

const startHelp = `underlay start [--shape rectangle] [-o JOB]

Prints a job file to begin with, with a remark beside each line, or writes it
into a file that is not there yet. Change the measures to those of your own
block and cloth. The shapes are rectangle, for covers, towels, bags and runners;
round; outline, for anything with corners; drum and cone, for lampshades.

    underlay start -o reading-nook.toml
    underlay start --shape drum > lampshade.toml
`

// start prints a job file to begin with.
func (c *call) start(args []string) error {
	fs := newFlags("start")
	shapes := words.Texts(job.Shapes())
	shape := shapes[0]
	textFlag(fs, &shape, "shape", "", "WORD", strings.Join(shapes, ", ")+";\nrectangle, unless given")
	file := "-"
	textFlag(fs, &file, "output", "o", "JOB", "where to write; - is standard output")
	if done, err := c.parse(fs, startHelp, args); done || err != nil {
		return err
	}
	if fs.NArg() > 0 {
		return usage("start takes no name; write underlay start -o %s", fs.Arg(0))
	}
	text, err := jobfile.StartFile(shape)
	if err != nil {
		return usage("--shape: %s", err)
	}
	if _, err := os.Lstat(file); err == nil && file != "-" {
		return fmt.Errorf("%s: there is a file or folder of this name; write another name after -o", file)
	}
	return c.writeOut(output{name: file, content: []byte(text),
		words: fmt.Sprintf("wrote %s: change it to what you measured, then underlay fit %s\n", file, file)})
}
