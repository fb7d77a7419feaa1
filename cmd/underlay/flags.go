package main

import (
	"errors"
	"fmt"
	"strings"

	"underlay/template/jobfile"
	"underlay/template/words"

	"github.com/spf13/pflag"
)

// What is wrong with the text of a flag: it is there more than once, or empty.
var (
	errTwice = errors.New("given twice")
	errEmpty = errors.New("empty")
)

// once is the text of a flag that may be given one time only. What is empty is most often a
// variable of the shell that is not set, and never meant.
type once struct {
	to    *string
	holds string // what stands for the text in the help: LENGTH, say
	given bool
}

func (o *once) String() string { return *o.to }

func (o *once) Set(s string) error {
	switch {
	case o.given:
		return errTwice
	case s == "":
		return errEmpty
	}
	*o.to, o.given = s, true
	return nil
}

func (o *once) Type() string { return o.holds }

// newFlags returns the flags of a command, none yet.
func newFlags(name string) *pflag.FlagSet {
	fs := pflag.NewFlagSet(name, pflag.ContinueOnError)
	fs.SortFlags = false
	fs.Usage = func() {}
	return fs
}

// textFlag adds a flag with a text.
func textFlag(fs *pflag.FlagSet, to *string, name, short, holds, usage string) {
	fs.VarP(&once{to: to, holds: holds}, name, short, usage)
}

// parse reads what was written after a command. Where help was asked for it prints that, and
// done is true.
func (c *call) parse(fs *pflag.FlagSet, help string, args []string) (done bool, err error) {
	err = fs.Parse(args)
	if errors.Is(err, pflag.ErrHelp) {
		return true, c.print(help + "\n" + flagsHelp(fs))
	}
	return false, flagError(fs, err)
}

// flagsHelp lists the flags with what they are for. A usage may have several lines.
func flagsHelp(fs *pflag.FlagSet) string {
	var b strings.Builder
	fs.VisitAll(func(f *pflag.Flag) {
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		if f.NoOptDefVal == "" {
			name += " " + f.Value.Type()
		}
		for i, line := range strings.Split(f.Usage, "\n") {
			if i > 0 {
				name = ""
			}
			fmt.Fprintf(&b, "    %-20s%s\n", name, line)
		}
	})
	return b.String()
}

// flagError says in plain words what is wrong with the flags.
func flagError(fs *pflag.FlagSet, err error) error {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var wrong *pflag.InvalidValueError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		return usage("there is no flag -%s; underlay help %s shows those there are", unknown.GetSpecifiedName(), fs.Name())
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		var known []string
		fs.VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		if near, ok := words.Nearest(name, known); ok {
			return usage("there is no flag --%s; write --%s", name, near)
		}
		return usage("there is no flag --%s; underlay help %s shows those there are", name, fs.Name())
	case errors.As(err, &bare):
		return usage("nothing stands after --%s; write its value there", bare.GetFlag().Name)
	case errors.As(err, &wrong) && errors.Is(err, errTwice):
		return usage("--%s is given twice; keep one of them", wrong.GetFlag().Name)
	case errors.As(err, &wrong) && errors.Is(err, errEmpty):
		return usage("nothing stands after --%s; write its value there", wrong.GetFlag().Name)
	case errors.As(err, &wrong):
		return usage("--%s takes no value; write --%s alone", wrong.GetFlag().Name, wrong.GetFlag().Name)
	}
	return usage("%s cannot be read as a flag; underlay help %s shows those there are", strings.TrimPrefix(err.Error(), "bad flag syntax: "), fs.Name())
}

// quickFlags adds the flags that stand in for a job file.
func quickFlags(fs *pflag.FlagSet, q *jobfile.Quick) {
	for _, f := range quickTexts(q) {
		textFlag(fs, f.to, f.name, "", f.holds, f.usage)
	}
}

// quickText is a flag that stands in for a line of a job file.
type quickText struct {
	name, holds, usage string
	to                 *string
}

func quickTexts(q *jobfile.Quick) []quickText {
	return []quickText{
		{"item", "SIZE", "the thing to print on, 50x50cm", &q.Item},
		{"shape", "WORD", "its shape: rectangle or round", &q.Shape},
		{"border", "LENGTH", "plain edge to leave, at the least: 25mm", &q.Border},
		{"hem", "LENGTH", "its stitched edge", &q.Hem},
		{"block", "SIZE", "the block's carved face, 90x90mm", &q.Block},
		{"wood", "SIZE", "the whole block as seen from above", &q.Wood},
		{"gap", "LENGTH", "plain cloth between prints: 1mm, or \"1 mm to 4 mm\"", &q.Gap},
		{"lap", "LENGTH", "in place of a gap, by how much prints lap", &q.Lap},
		{"repeat", "WORD", "how prints are set out: straight, unless given, brick,\nhalf-drop, diagonal, frame and others", &q.Repeat},
		{"order", "WORD", "order of printing: centre-out, unless given, or rows", &q.Order},
		{"hand", "WORD", "the hand you print with: right, unless given, or left", &q.Hand},
		{"units", "WORD", "what to say lengths in: mm, unless given, cm or in", &q.Units},
		{"paper", "NAME", "A4, unless given, Letter, \"610 x 900 mm\" and others", &q.Paper},
	}
}
