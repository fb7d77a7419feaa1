package job

import (
	"fmt"
	"slices"
	"strings"

	"underlay/template/words"
)

// Problem makes one thing wrong with the job, found when it was worked out.
func (j *Job) Problem(line int, format string, args ...any) Problem {
	return Problem{File: j.File, Line: line, Text: fmt.Sprintf(format, args...)}
}

// Problem is one thing wrong with a job: where it stands, what it is, and what to write
// instead.
type Problem struct {
	File string // as shown to the maker; "" for a job given by flags
	Line int    // counted from 1; 0: the file as a whole
	Key  string // the key at fault, or the flag; "" where it is no single one
	Text string
}

// String returns "file:line: key: text", less what is not known.
func (p Problem) String() string {
	var b strings.Builder
	if p.File != "" {
		b.WriteString(p.File + ":")
		if p.Line > 0 {
			fmt.Fprintf(&b, "%d:", p.Line)
		}
		b.WriteString(" ")
	}
	if p.Key != "" {
		b.WriteString(p.Key + ": ")
	}
	b.WriteString(p.Text)
	return b.String()
}

// Problems is everything wrong with a job, in the order of its lines.
type Problems []Problem

// Error returns one line for each problem.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, q := range p {
		lines[i] = q.String()
	}
	return strings.Join(lines, "\n")
}

// Sorted returns the problems by line, each once; those of one line stay in the order they
// were found.
func (p Problems) Sorted() Problems {
	var q Problems
	seen := map[Problem]bool{}
	for _, x := range p {
		if !seen[x] {
			q = append(q, x)
		}
		seen[x] = true
	}
	slices.SortStableFunc(q, func(a, b Problem) int { return a.Line - b.Line })
	return q
}

// NothingToDraw refuses an item without a pass.
func (j *Job) NothingToDraw(item *Item) Problems {
	return Problems{j.Problem(item.Line, "item %s has no pass, so there is nothing to draw; add [[item.pass]] with block and gap below it", words.Quote(item.Name))}
}
