package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"underlay/paper/pdf"
	"underlay/template/jobfile"
	"underlay/template/words"
)

// draftOf is a file to be written, of that content.
func draftOf(to place, content []byte) draft {
	return draft{to, func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	}}
}

// pictureDrafts says where pictures are to be written: in a folder, beside a job of that name. Those
// that are there already, with the same bytes, are returned by name. One that would take the place of
// another file is refused.
func pictureDrafts(folder string, from origin, job string, pictures []pdf.Attachment) (drafts []draft, there []string, err error) {
	for _, p := range pictures {
		name := filepath.Join(folder, p.Name)
		if strings.EqualFold(p.Name, job) {
			return nil, nil, fmt.Errorf("%s: one of the job's pictures is called so; write another name after -o", name)
		}
		switch same, err := holds(name, p.Content); {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			return nil, nil, fmt.Errorf("%s: there is something else of this name where a picture of the job belongs: %w; move it away, or let -o name a job in another folder", name, cause(err))
		case same:
			there = append(there, p.Name)
			continue
		default:
			return nil, nil, fmt.Errorf("%s: there is another file of this name where a picture of the job belongs; move it away, or let -o name a job in another folder", name)
		}
		to, err := newPlace(name, from)
		if err != nil {
			return nil, nil, err
		}
		to.fresh = true
		drafts = append(drafts, draftOf(to, p.Content))
	}
	return drafts, there, nil
}

// holds tells whether a file has just that content. Of a link that leads nowhere, it is the link that
// is there.
func holds(name string, content []byte) (bool, error) {
	if _, err := os.Lstat(name); err != nil {
		return false, err
	}
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist), err == nil && (!info.Mode().IsRegular() || info.Size() != int64(len(content))):
		return false, nil
	case err != nil:
		return false, err
	}
	found, err := os.ReadFile(name)
	return err == nil && bytes.Equal(found, content), err
}

// recoveredWords says what was written, and which pictures were there before.
func recoveredWords(job string, drafts []draft, there []string) string {
	var names []string
	for _, d := range drafts {
		names = append(names, filepath.Base(d.name))
	}
	text := "wrote " + job
	if len(names) > 0 {
		text += ", and beside it " + words.InWords(names)
	}
	if len(there) > 0 {
		text += "; " + words.InWords(there) + " was there already"
		if len(there) > 1 {
			text = strings.TrimSuffix(text, " was there already") + " were there already"
		}
	}
	return text + "\n"
}

// leavePictures says which pictures of a job stay in its PDF.
func (c *call) leavePictures(job []byte) {
	if names := jobfile.PictureNames(job); len(names) > 0 {
		c.note("left in the PDF: " + words.InWords(names) + "; to have pictures too, write -o JOB")
	}
}
