package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"underlay/paper/pdf"
	"underlay/template"
)

const recoverHelp = `underlay recover FILE.pdf [-o JOB] [--force]

Brings back the job file that every PDF written by draw carries inside, byte
for byte, and the pictures of its blocks beside it: from a guide kept in a drawer
to the job it was drawn from. Where draw had flags such as --item or --paper, they
are written into it. The job is named after the PDF and goes into the current
folder, unless -o names another; -o - sends it to standard output, and leaves the
pictures in the PDF. A file that is there already is left alone, unless --force is
given; a picture is never written over another file.

    underlay recover reading-nook.pdf
    underlay recover reading-nook.pdf -o nook-again/reading-nook.toml
    underlay recover reading-nook.pdf -o - | underlay fit -
`

// largestPDF is more than the most sheets a job may have take up.
const largestPDF = 1 << 30

// largestPipe is the most that is read of what is no file on a disk.
const largestPipe = 256 << 20

// recover writes the job file inside a PDF.
func (c *call) recover(args []string) error {
	fs := newFlags("recover")
	var job string
	textFlag(fs, &job, "output", "o", "JOB", "where to write; - is standard output")
	force := fs.Bool("force", false, "write over a file that is there already")
	if done, err := c.parse(fs, recoverHelp, args); done || err != nil {
		return err
	}
	switch {
	case fs.NArg() == 0:
		return usage("recover needs the PDF to look into; write underlay recover reading-nook.pdf")
	case fs.NArg() > 1:
		return usage("recover takes one PDF, and %d are given; name one, and put quotes round a name with spaces", fs.NArg())
	}
	name := fs.Arg(0)
	if name == "" {
		return usage("the name of the PDF is empty; write underlay recover reading-nook.pdf")
	}
	if job == "" {
		job = outputName(name, ".toml")
	}
	carried, err := carriedBy(name, job != "-")
	switch {
	case err != nil && carried.Job != nil:
		return fmt.Errorf("%w; or write -o - for the job alone", err)
	case err != nil:
		return err
	}
	if job == "-" {
		c.leavePictures(carried.Job)
		return c.print(string(carried.Job))
	}
	from := c.origin("the PDF", name)
	to, err := unusedPlace(job, from, *force, "job.toml")
	if err != nil {
		return err
	}
	drafts, there, err := pictureDrafts(filepath.Dir(job), from, filepath.Base(job), carried.Pictures)
	if err != nil {
		return err
	}
	if err := writeAll(append(drafts, draftOf(to, carried.Job)), nil); err != nil {
		return err
	}
	c.tell(recoveredWords(job, drafts, there))
	return nil
}

// unusedPlace refuses to write over any file, without force. Example is the name of a file to write
// where a folder is named.
func unusedPlace(name string, from origin, force bool, example string) (place, error) {
	if isFolder(name) {
		return place{}, fmt.Errorf("%s: this is a folder; write a file in it, such as -o %s", name, filepath.Join(name, example))
	}
	to, err := newPlace(name, from)
	if err == nil && to.there && !force {
		return to, to.problem("there is a file of this name; write another name after -o, or --force to write over it")
	}
	return to, err
}

// carriedBy returns what a PDF carries inside, of which only as much is read as that takes; of a
// pipe, and the like, all.
func carriedBy(name string, pictures bool) (found template.Carried, err error) {
	err = withFile(name, "check its name and folder", "write the name of a PDF in it", func(f *os.File, info fs.FileInfo) error {
		switch {
		case info.Size() > largestPDF:
			return errors.New("this file is larger than any that underlay draws; write the name of a PDF it drew")
		case info.Mode().IsRegular():
			found, err = template.Recover(f, info.Size(), pictures)
			return err
		}
		head := make([]byte, 5)
		n, err := io.ReadFull(f, head)
		file := head[:n]
		if err == nil && pdf.Begins(head) {
			rest, err := io.ReadAll(io.LimitReader(f, largestPipe))
			if err != nil {
				return err
			}
			file = append(file, rest...)
		}
		found, err = template.Recover(bytes.NewReader(file), int64(len(file)), pictures)
		return err
	})
	return found, err
}
