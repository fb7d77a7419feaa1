package side

import (
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// Side answers the page's calls. It keeps the pictures given to it, and what was last worked out.
type Side struct {
	name     string // of the job file; "": it has none yet
	last     worked
	drawn    *document        // nil: nothing yet
	pictures map[string]given // by the names that jobs give them
}

// worked is a job worked out.
type worked struct {
	text string
	name string
	plan *plan.Plan
	err  error
}

// New returns a Side that has been given nothing.
func New() *Side { return &Side{} }

// Name says under which name the job's file is known, with or without its ending; "" for none. It is
// the job's title where the job gives none.
func (s *Side) Name(name string) { s.name = strings.TrimSuffix(plainName(name), ".toml") }

// plainName is the last part of a name with folders in it.
func plainName(name string) string { return name[strings.LastIndexAny(name, `/\`)+1:] }

// file is the name of the job's file.
func (s *Side) file() string {
	if s.name == "" {
		return "untitled.toml"
	}
	return s.name + ".toml"
}

// read checks a job's text.
func (s *Side) read(text string) (*job.Job, error) {
	return jobfile.ReadWith(s.file(), []byte(text), s.find)
}

// plan works a job out; what was worked out last is kept. The error is of type job.Problems.
func (s *Side) plan(text string) (*plan.Plan, error) {
	if s.last.text != text || s.last.name != s.name || s.last.plan == nil && s.last.err == nil {
		s.last = worked{text: text, name: s.name}
		j, err := s.read(text)
		if err == nil {
			s.last.plan, err = plan.New(j)
		}
		s.last.err = err
	}
	return s.last.plan, s.last.err
}
