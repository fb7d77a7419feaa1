package main

import (
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/words"
)

const startHelp = `underlay start [--shape rectangle] > JOB

Prints a job file to begin with, with a remark beside each line. Send it into a
file and change the measures to those of your own block and cloth. The shapes
are rectangle, for covers, towels, bags and runners; round; outline, for
anything with corners; drum and cone, for lampshades.

    underlay start > reading-nook.toml
    underlay start --shape drum > lampshade.toml
`

// start prints a job file to begin with.
func (c *call) start(args []string) error {
	fs := newFlags("start")
	shapes := words.Texts(job.Shapes())
	shape := shapes[0]
	textFlag(fs, &shape, "shape", "", "WORD", strings.Join(shapes, ", ")+";\nrectangle, unless given")
	if done, err := c.parse(fs, startHelp, args); done || err != nil {
		return err
	}
	if fs.NArg() > 0 {
		return usage("start takes no name; write underlay start > %s", fs.Arg(0))
	}
	text, err := jobfile.StartFile(shape)
	if err != nil {
		return usage("--shape: %s", err)
	}
	return c.print(text)
}
