package template

import (
	"bytes"
	"errors"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"

	"underlay/geometry"
)

// LargestJob is the most bytes a job file may have: 1 MiB.
const LargestJob = 1 << 20

// reader checks one job file and gathers what is wrong with it.
type reader struct {
	name     string // of the file, as shown
	problems Problems
	units    geometry.Unit // what the job asks for on its papers
}

// ReadJob reads and checks a job file. The name is that of the file, "-" for standard input.
// The error is of type Problems: everything wrong with the file, each thing once.
func ReadJob(name string, data []byte) (*Job, error) {
	r := &reader{name: name}
	if name == "-" {
		r.name = "standard input"
	}
	if job := r.read(data); len(r.problems) == 0 {
		job.Source, job.File = bytes.Clone(data), r.name
		return job, nil
	}
	return nil, r.problems.sorted()
}

func (r *reader) add(line int, key, text string) {
	r.problems = append(r.problems, Problem{File: r.name, Line: line, Key: key, Text: text})
}

// unitWords are the units a job can ask for, in the order in which package geometry counts them.
var unitWords = []string{geometry.UnitMM.String(), geometry.UnitCM.String(), geometry.UnitInch.String()}

// show writes a length for a message, in the units of the job, so that it can be written into
// the job as it stands.
func (r *reader) show(l geometry.Length) string { return r.rounded(l, math.Round) }

// showLeast writes the least length that will do, rounded so that it does as written.
func (r *reader) showLeast(l geometry.Length) string {
	return r.rounded(l-geometry.Tolerance/2, math.Ceil)
}

// showMost writes the greatest length that will do, rounded so that it does as written.
func (r *reader) showMost(l geometry.Length) string {
	return r.rounded(l+geometry.Tolerance/2, math.Floor)
}

// rounded writes a length with three decimals at the most.
func (r *reader) rounded(l geometry.Length, round func(float64) float64) string {
	size := geometry.Millimetre
	switch r.units {
	case geometry.UnitCM:
		size = geometry.Centimetre
	case geometry.UnitInch:
		size = geometry.Inch
	}
	number := strconv.FormatFloat(round(float64(l/size)*1000)/1000, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(number, "0"), ".") + " " + r.units.String()
}

// read goes from text to job. The job is good only where no problem was found.
func (r *reader) read(data []byte) *Job {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !r.readable(data) {
		return nil
	}
	root, problems := places(data)
	for _, p := range problems {
		r.add(p.Line, "", p.Text)
	}
	if len(r.problems) > 0 || !r.shaped(root, jobShape()) {
		return nil
	}
	var raw rawJob
	d := toml.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	var broken *toml.DecodeError
	var unknown *toml.StrictMissingError
	switch err := d.Decode(&raw); {
	case errors.As(err, &unknown) && len(r.problems) > 0:
		// Each of them is reported by shaped, with the word that was meant.
	case errors.As(err, &broken):
		line, _ := broken.Position()
		r.add(line, "", syntaxText(strings.Split(string(data), "\n")[line-1], broken.Error()))
		return nil
	case err != nil:
		r.add(0, "", "cannot be read as a job file; begin with the one that underlay start prints")
		return nil
	}
	return r.job(section{r: r, node: root, label: "the job"}, &raw)
}

// readable tells whether the file can be a job file at all.
func (r *reader) readable(data []byte) bool {
	switch {
	case len(data) > LargestJob:
		r.add(0, "", "the file is larger than 1 MiB, too large for a job file; write a smaller one")
	case len(bytes.TrimSpace(data)) == 0:
		r.add(0, "", "the file is empty; begin with the one that underlay start prints")
	case !utf8.Valid(data):
		line := 1
		for rest := data; len(rest) > 0; {
			c, n := utf8.DecodeRune(rest)
			if c == utf8.RuneError && n == 1 {
				break
			}
			if c == '\n' {
				line++
			}
			rest = rest[n:]
		}
		r.add(line, "", "this line is not UTF-8 text; save the file as UTF-8")
	default:
		return true
	}
	return false
}

// shaped reports unknown keys, and tables written as something else. It tells whether the
// rest can be read in spite of them.
func (r *reader) shaped(n *node, s *shape) bool {
	ok := true
	for _, key := range n.order {
		child, below := n.keys[key], s.tables[key]
		known := slices.Contains(s.order, key)
		switch {
		case !known:
			r.unknownKey(n, key, s)
			// A whole table amiss: what is said to be missing later would be in it.
			ok = ok && (child.form == single || child.form == list)
		case below == nil:
		case below.many && child.form == tables:
			for _, item := range child.items {
				ok = r.shaped(item, below) && ok
			}
		case below.many && child.form == list && len(child.items) == 0:
		case !below.many && child.form == table:
			ok = r.shaped(child, below) && ok
		default:
			ok = false
			r.misshapen(child, below)
		}
	}
	return ok
}

// misshapen reports a known table that is not written as one, or as the wrong kind.
func (r *reader) misshapen(n *node, s *shape) {
	last := s.path[strings.LastIndex(s.path, ".")+1:]
	switch {
	case n.form == single || n.form == list:
		r.add(n.line, "", last+" is a table, not a value; write "+s.heading()+" on a line of its own, and its keys below")
	case s.many && !n.opened:
		r.add(n.line, "", "this stands before the first "+s.heading()+"; move it below the "+s.heading()+" it belongs to")
	case s.many:
		r.add(n.line, "", "["+s.path+"] needs two brackets on each side; write "+s.heading())
	default:
		r.add(n.line, "", "there is only one "+last+", so it has one bracket on each side; write "+s.heading())
	}
}

// unknownKey reports a key that no job file has at this place.
func (r *reader) unknownKey(n *node, key string, s *shape) {
	child := n.keys[key]
	child.blamed = true
	what := "unknown key " + quote(key)
	isTable := child.form == table || child.form == tables
	if isTable {
		what = "unknown table " + quote(key)
	}
	write := ""
	if near, ok := Nearest(key, s.order); ok {
		child.meant = near
		write = "write " + quote(near)
		if t := s.tables[near]; t != nil {
			write = "write " + t.heading()
		}
	} else if home := jobShape().home(key); home != "" {
		what += " here"
		write = "it belongs in " + home
		if isTable {
			write = "write " + home
		}
	} else {
		write = "the keys of " + s.heading() + " are " + strings.Join(s.order, ", ")
	}
	text := what + "; " + write
	if child.form == tables {
		for _, item := range child.items {
			r.add(item.line, "", text)
		}
		return
	}
	r.add(child.line, "", text)
}

// job checks all parts of a job.
func (r *reader) job(s section, raw *rawJob) *Job {
	job := &Job{Title: r.titleOf()}
	if title, ok := s.key("title", raw.Title).name("Reading nook"); ok {
		job.Title = title
	}
	if word, ok := s.key("units", raw.Units).word(unitWords, unitWords[0]); ok {
		r.units = geometry.Unit(slices.Index(unitWords, word))
	}
	job.Units = r.units
	job.Paper = checkPaper(s.below("paper"), &raw.Paper)
	job.Printer = checkPrinter(s.below("printer"), &raw.Printer)
	job.Printing = checkPrinting(s.below("printing"), &raw.Printing)
	blocks := map[string]*Block{}
	job.Blocks = checkBlocks(s, raw.Blocks, blocks)
	job.Items = checkItems(s, raw.Items, blocks)
	return job
}

// titleOf is the title of a job that gives none: its file's name without the ending.
func (r *reader) titleOf() string {
	base := filepath.Base(r.name)
	base = strings.TrimSuffix(base, filepath.Ext(base))
	if r.name == "standard input" || strings.Trim(base, ". /\\") == "" {
		return "Untitled"
	}
	return base
}

// below returns a table of the section; one that is not there is empty.
func (s section) below(key string) section {
	n := s.node.keys[key]
	if n == nil {
		n = newTable(s.node.line)
	}
	return section{r: s.r, node: n, label: "[" + key + "]"}
}
