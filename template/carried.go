package template

import (
	"fmt"
	"io"

	"underlay/paper/pdf"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/picture"
	"underlay/template/words"
)

// CarriedName is what the job file inside a PDF is called.
const CarriedName = "job.toml"

// attachments is what a PDF carries inside: the job, and the pictures it names, each once.
func attachments(j *job.Job) []pdf.Attachment {
	files := []pdf.Attachment{{Name: CarriedName, Type: "application/toml", Content: j.Source}}
	seen := map[string]bool{}
	for _, b := range j.Blocks {
		if p := b.Picture; p != nil && !seen[p.Name] {
			seen[p.Name] = true
			files = append(files, pdf.Attachment{Name: p.Name, Type: picture.MediaType(p.File), Content: p.File})
		}
	}
	return files
}

// Carried is what came back out of a PDF: a job file, and the pictures it names.
type Carried struct {
	Job      []byte
	Pictures []pdf.Attachment // by their plain names; none where they were not wanted
}

// The most that a job and all its pictures have: of the job a little more than is put in.
const (
	mostOfJob      = 2 << 20
	mostOfPictures = 128 << 20
)

// Recover brings back the job inside a PDF of so many bytes and, if they are wanted, the pictures it
// names: by the plain names that the job has for them, whatever path the PDF has. The error is a plain
// sentence, or the reader's; where it is one picture that is missing or damaged, the job is there.
func Recover(r io.ReaderAt, size int64, pictures bool) (Carried, error) {
	in, err := pdf.Open(r, size)
	if err != nil {
		return Carried{}, err
	}
	file, err := in.File(CarriedName, mostOfJob)
	if err != nil {
		return Carried{}, err
	}
	c := Carried{Job: file.Content}
	if !pictures {
		return c, nil
	}
	left := mostOfPictures
	for _, name := range jobfile.PictureNames(file.Content) {
		p, err := in.File(name, min(left, picture.MostBytes))
		if err != nil {
			return Carried{Job: c.Job}, fmt.Errorf("the picture %s: %w", words.Quote(name), err)
		}
		left -= len(p.Content)
		c.Pictures = append(c.Pictures, p)
	}
	return c, nil
}
