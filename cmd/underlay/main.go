// Underlay draws true-size placement guides for hand block printing on cloth.
//
// Each command has a file of its own, named after it: flags in, files and words out. What is
// worked out and drawn is in package template. "underlay help" is the manual.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"underlay/template/words"
)

const manual = `underlay draws true-size guides for printing cloth by hand with carved blocks.

You measure your blocks and your cloth and write them into a job file. underlay
works out how many whole prints fit, where each one goes and in what order, and
draws the guide: a drawing at true size that you tape to the mat and lay the
cloth on. Where the cloth is too thick to see through, the ticks that stick out
on all four sides show where to stretch the tape.

    underlay start > JOB              a job file to begin with
    underlay fit JOB                  what fits, and the borders it leaves
    underlay draw JOB [-o FILE.pdf]   the guides as a PDF, to print at 100 %
    underlay ruler                    a page to check your printer with
    underlay trace PHOTO              measures a block from a photograph
    underlay recover FILE.pdf         the job a guide was drawn from, and pictures
    underlay help COMMAND             all that a command can do
    underlay help job                 every key of a job file; help KEY says more

JOB is the name of a job file, or - for standard input. Every length in it has
its unit: 90 mm, 2.5 cm, 3 1/2 in. For one block on one thing no file is needed:

    underlay fit --item 50x50cm --border 25mm --block 90x90mm --gap 1mm

From nothing to paper:

    underlay start > reading-nook.toml
    underlay fit reading-nook.toml
    underlay draw reading-nook.toml
    underlay draw reading-nook.toml --item "floor cushion" --paper A3

It ends with 0 when all is done, with 1 when the job cannot be done as asked, and
with 2 when the command was not understood. Then standard error says what to
change, and no file is left or changed. Stopped with Ctrl-C it ends with 130, and
leaves every file as it was too.
`

func main() {
	keepRunning()
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, os.LookupEnv))
}

// call is what a command works with.
type call struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	env            func(string) (string, bool)
}

// command is one of the commands: what it is called, what its help says, and what it does with
// what was written after it.
type command struct {
	name string
	help string
	run  func(c *call, args []string) error
}

// commands has one line for each command, in the order of the manual.
func commands() []command {
	return []command{
		{"start", startHelp, (*call).start},
		{"fit", fitHelp, (*call).fit},
		{"draw", drawHelp, (*call).draw},
		{"ruler", rulerHelp, (*call).ruler},
		{"trace", traceHelp, (*call).trace},
		{"recover", recoverHelp, (*call).recover},
	}
}

// usageError is a command line that was not understood.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func usage(format string, args ...any) error { return usageError{fmt.Sprintf(format, args...)} }

// run carries a command line out and returns the exit code: 0 done, 1 the job cannot be done as
// asked, 2 wrong usage.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer, env func(string) (string, bool)) int {
	c := &call{stdin, stdout, stderr, env}
	err := c.dispatch(args)
	var wrong usageError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &wrong):
		c.note(wrong.Error())
		return 2
	case readerGone(err):
		return 1
	}
	c.note(err.Error())
	return 1
}

func (c *call) dispatch(args []string) error {
	if len(args) == 0 {
		return usage("%s", strings.TrimSpace(manual))
	}
	name, rest := args[0], args[1:]
	switch name {
	case "--help", "-h":
		return c.print(manual)
	case "help":
		return c.help(rest)
	}
	cmd, err := commandNamed(name)
	if err != nil {
		return err
	}
	return cmd.run(c, rest)
}

// commandNamed finds a command by its name.
func commandNamed(name string) (command, error) {
	var names []string
	for _, cmd := range commands() {
		if cmd.name == name {
			return cmd, nil
		}
		names = append(names, cmd.name)
	}
	switch near, ok := words.Nearest(name, append(names, "help")); {
	case strings.HasPrefix(name, "-"):
		return command{}, usage("%s stands where a command should; write underlay fit, underlay draw or underlay help", name)
	case ok:
		return command{}, usage("there is no command %q; write underlay %s", name, near)
	case strings.HasSuffix(name, ".toml"):
		return command{}, usage("%q stands where a command should; write underlay fit %s or underlay draw %s", name, name, name)
	}
	return command{}, usage("there is no command %q; underlay help shows those there are", name)
}
