package jobfile

import (
	"bytes"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
)

// LargestJob is the most bytes a job file may have: 1 MiB.
const LargestJob = 1 << 20

// reader checks one job file and gathers what is wrong with it.
type reader struct {
	name     string // of the file, as shown
	problems job.Problems
	units    geometry.Unit     // what the job asks for on its papers
	keys     *keys.KeyTree     // all there are
	pictures Pictures          // nil: there are none
	seen     map[string]*found // pictures, by name
	carried  int               // bytes of those
}

// Read reads and checks a job file that names no pictures; see ReadWith.
func Read(name string, data []byte) (*job.Job, error) { return ReadWith(name, data, nil) }

// ReadWith reads and checks a job file, and the pictures it names, each once. The name is that of
// the file, "-" for standard input. The error is of type Problems: everything wrong with the file
// and its pictures, each thing once.
func ReadWith(name string, data []byte, pictures Pictures) (*job.Job, error) {
	r := &reader{name: name, keys: keys.NewKeyTree(), pictures: pictures, seen: map[string]*found{}}
	if name == "-" {
		r.name = "standard input"
	}
	if job := r.read(data); len(r.problems) == 0 {
		job.Source, job.File = bytes.Clone(data), r.name
		return job, nil
	}
	return nil, r.problems.Sorted()
}

func (r *reader) add(line int, key, text string) {
	r.problems = append(r.problems, job.Problem{File: r.name, Line: line, Key: key, Text: text})
}

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
	return geometry.Decimals(round(float64(l/size)*1000)/1000, 3) + " " + r.units.String()
}

// read goes from text to job. The job is good only where no problem was found.
func (r *reader) read(data []byte) *job.Job {
	text, err := toml.DecodeText(data)
	if err != nil {
		r.add(0, "", err.Error())
		return nil
	}
	data = text
	if !r.readable(data) {
		return nil
	}
	root, problems := toml.Parse(data)
	for _, p := range problems {
		r.add(p.Line, "", p.Text)
	}
	if len(r.problems) > 0 || !r.shaped(root, r.keys) {
		return nil
	}
	return r.job(section{r: r, node: root, keys: r.keys, label: "the job"})
}

// readable tells whether the file can be a job file at all.
func (r *reader) readable(data []byte) bool {
	switch {
	case len(data) > LargestJob:
		r.add(0, "", "the file is larger than 1 MiB, too large for a job file; write a smaller one")
	case bytes.Count(data, []byte{0}) > len(data)/4: // UTF-16 without its mark
		r.add(0, "", "this is not a text in UTF-8; save the file as UTF-8")
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

// job checks all parts of a job.
func (r *reader) job(s section) *job.Job {
	j := &job.Job{Title: r.titleOf()}
	if title, ok := s.key("title").name("Reading nook"); ok {
		j.Title = title
	}
	if word, ok := s.word("units"); ok {
		r.units = geometry.Unit(slices.Index(keys.UnitWords, word))
	}
	j.Units = r.units
	j.Paper = checkPaper(s.below("paper"))
	j.Printer = checkPrinter(s.below("printer"))
	j.Printing = checkPrinting(s.below("printing"))
	blocks := map[string]*job.Block{}
	j.Blocks = checkBlocks(s, blocks)
	j.Paints = checkPaints(s)
	j.Items = checkItems(s, blocks)
	checkPaintNames(s, j)
	return j
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
