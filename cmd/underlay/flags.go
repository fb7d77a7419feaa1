package main

import (
	"errors"
	"strings"

	"github.com/spf13/pflag"

	"underlay/template"
)

// errTwice is a flag given more than once.
var errTwice = errors.New("given twice")

// once is the text of a flag that may be given one time only.
type once struct {
	to    *string
	given bool
}

func (o *once) String() string {
	if o.to == nil {
		return ""
	}
	return *o.to
}

func (o *once) Set(s string) error {
	if o.given {
		return errTwice
	}
	*o.to, o.given = s, true
	return nil
}

func (o *once) Type() string { return "text" }

// newFlags returns the flags of a command, none yet.
func newFlags(name string) *pflag.FlagSet {
	fs := pflag.NewFlagSet(name, pflag.ContinueOnError)
	fs.SortFlags = false
	fs.Usage = func() {}
	return fs
}

// textFlag adds a flag with a text. In the usage the word in backquotes stands for it.
func textFlag(fs *pflag.FlagSet, to *string, name, short, usage string) {
	fs.VarP(&once{to: to}, name, short, usage)
}

// parse reads what was written after a command. Where help was asked for it prints that, and
// done is true.
func (c *call) parse(fs *pflag.FlagSet, help string, args []string) (done bool, err error) {
	err = fs.Parse(args)
	if errors.Is(err, pflag.ErrHelp) {
		if flags := fs.FlagUsagesWrapped(helpWidth); flags != "" {
			help += "\n" + flags
		}
		return true, c.print(help)
	}
	return false, flagError(fs, err)
}

// helpWidth is the most characters in a line of help.
const helpWidth = 80

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
		if near, ok := template.Nearest(name, known); ok {
			return usage("there is no flag --%s; write --%s", name, near)
		}
		return usage("there is no flag --%s; underlay help %s shows those there are", name, fs.Name())
	case errors.As(err, &bare):
		return usage("nothing stands after --%s; write its value there", bare.GetFlag().Name)
	case errors.As(err, &wrong) && errors.Is(err, errTwice):
		return usage("--%s is given twice; keep one of them", wrong.GetFlag().Name)
	case errors.As(err, &wrong):
		return usage("--%s takes no value; write --%s alone", wrong.GetFlag().Name, wrong.GetFlag().Name)
	}
	return usage("%s cannot be read as a flag; underlay help %s shows those there are", strings.TrimPrefix(err.Error(), "bad flag syntax: "), fs.Name())
}

// quickFlags adds the flags that stand in for a job file.
func quickFlags(fs *pflag.FlagSet, q *template.Quick) {
	for _, f := range quickTexts(q) {
		textFlag(fs, f.to, f.name, "", f.usage)
	}
}

// quickText is a flag that stands in for a line of a job file.
type quickText struct {
	name  string
	to    *string
	usage string
}

func quickTexts(q *template.Quick) []quickText {
	return []quickText{
		{"item", &q.Item, "`SIZE` of the thing to print on, 50x50cm"},
		{"shape", &q.Shape, "its `SHAPE`, rectangle or round"},
		{"border", &q.Border, "plain edge to leave, a `LENGTH` or more: 25mm"},
		{"hem", &q.Hem, "`LENGTH` of the stitched edge"},
		{"block", &q.Block, "`SIZE` of the block's carved face, 90x90mm"},
		{"wood", &q.Wood, "`SIZE` of the whole block"},
		{"gap", &q.Gap, "`LENGTH` of plain cloth between prints: 1mm, \"1 mm to 4 mm\""},
		{"lap", &q.Lap, "`LENGTH` by which prints lap, in place of a gap"},
		{"repeat", &q.Repeat, "how prints are set out, a `WORD`: straight"},
		{"order", &q.Order, "order of printing, a `WORD`: centre-out or rows"},
		{"hand", &q.Hand, "`HAND` you print with, right or left"},
		{"units", &q.Units, "`UNIT` to say lengths in: mm, cm or in"},
		{"paper", &q.Paper, "`NAME` or size of the paper: A4, Letter, \"610 x 900 mm\""},
	}
}
