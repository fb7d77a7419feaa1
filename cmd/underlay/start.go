package main

import (
	"slices"

	"underlay/template"
)

const startHelp = `underlay start [--shape rectangle] > JOB

Prints a job file to begin with, with a remark beside each line. Send it into a
file and change the measures to those of your own block and cloth.

    underlay start > reading-nook.toml
`

// start prints a job file to begin with.
func (c *call) start(args []string) error {
	fs := newFlags("start")
	var shape string
	textFlag(fs, &shape, "shape", "", "WORD", "shape of the thing to print on: rectangle, unless given")
	if done, err := c.parse(fs, startHelp, args); done || err != nil {
		return err
	}
	if fs.NArg() > 0 {
		return usage("start takes no name; write underlay start > %s", fs.Arg(0))
	}
	if shape == "" {
		shape = template.StartShapes()[0]
	}
	text, err := template.StartFile(shape)
	switch {
	case err != nil && !slices.Contains(template.StartShapes(), shape):
		return usage("--shape: %s", err)
	case err != nil:
		return template.Problems{{Key: "--shape", Text: err.Error()}}
	}
	return c.print(text)
}
