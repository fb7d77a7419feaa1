package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"underlay/paper/pdf"
	"underlay/paper/svg"
	"underlay/template"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/picture"
)

// replaced looks at the file that a drawing is to be written over, if there is one, and refuses
// one that underlay did not draw, unless by force. It returns words on the job it was drawn
// from where that is another than job; "" where there is nothing to say.
func (c *call) replaced(name string, from origin, force bool, job *job.Job) (string, error) {
	to, err := newPlace(name, from)
	if err != nil || !to.there {
		return "", err
	}
	was, ours := drawnJob(to.target)
	if !ours && !force {
		return "", to.problem("there is a file of this name that underlay did not draw; write another name after -o, or --force to write over it")
	}
	if was == nil || job == nil {
		return "", nil
	}
	// Both are read by one name: it is their title where they have none.
	is, err := jobfile.ReadWith(template.CarriedName, job.Source, unseen)
	if err != nil || sameJob(was, is) {
		return "", nil
	}
	return fmt.Sprintf("%s held the papers of another job, %s; they are written over\n", name, contents(was)), nil
}

// unseen takes pictures as they are named: a job is told from another without them.
func unseen(name string) (*picture.Picture, error) { return &picture.Picture{Name: name}, nil }

// sameJob tells whether two jobs are one at different times: the title and an item have kept
// their names.
func sameJob(a, b *job.Job) bool {
	return a.Title == b.Title && slices.ContainsFunc(a.Items, func(x *job.Item) bool {
		return slices.ContainsFunc(b.Items, func(y *job.Item) bool { return x.Name == y.Name })
	})
}

// contents names a carried job by its title, if it has one, and its items.
func contents(job *job.Job) string {
	names := make([]string, len(job.Items))
	for i, it := range job.Items {
		names[i] = it.Name
	}
	what := strings.Join(names, ", ")
	if job.Title+".toml" != template.CarriedName {
		what = job.Title + ": " + what
	}
	return what
}

// mostOfHead is how much is read of a file to see what it is.
const mostOfHead = 64 << 10

// drawnJob returns the job a file was drawn from, nil where it carries none that is read today,
// and whether underlay made the file at all. An empty file holds nothing to lose.
func drawnJob(name string) (job *job.Job, ours bool) {
	info, err := os.Stat(name)
	if err != nil || info.Size() > largestPDF {
		return nil, false
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, false
	}
	defer f.Close()
	head := make([]byte, mostOfHead)
	n, err := f.ReadAt(head, 0)
	switch head = head[:n]; {
	case err != nil && err != io.EOF:
		return nil, false
	case n == 0:
		return nil, true
	case !pdf.Begins(head):
		return nil, svg.Own(head)
	}
	carried, err := template.Recover(f, info.Size(), false)
	if err != nil {
		return nil, pdf.Own(f, info.Size()) // the ruler page carries no job
	}
	job, err = jobfile.ReadWith(template.CarriedName, carried.Job, unseen)
	if err != nil {
		return nil, true
	}
	return job, true
}
