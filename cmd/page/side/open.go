package side

import (
	"bytes"
	"errors"
	"strings"
	"unicode/utf8"

	"underlay/paper/pdf"
	"underlay/template"
	"underlay/template/jobfile"
	"underlay/template/jobfile/toml"
	"underlay/template/picture"
)

// Opened is a job as it was found in a file.
type Opened struct {
	Text string `json:"text"`
	// Name is that of the file, without its ending: what the job is kept under.
	Name     string `json:"name"`
	Pictures []File `json:"pictures"` // that were with it
}

// File is a file by its plain name.
type File struct {
	Name    string `json:"name"`
	Content []byte `json:"content"`
}

// Open finds the job in a file: a job file, good or not, or a PDF that draw wrote, with the pictures it
// carries. The error says in a plain sentence why there is none in it.
func Open(file []byte, name string) (Opened, error) {
	name = plainName(name)
	if i := strings.LastIndexByte(name, '.'); i > 0 {
		name = name[:i]
	}
	switch {
	case pdf.Begins(file):
		carried, err := template.Recover(bytes.NewReader(file), int64(len(file)), true)
		if err != nil {
			return Opened{}, err
		}
		o, err := opened(carried.Job, name)
		for _, p := range carried.Pictures {
			o.Pictures = append(o.Pictures, File{p.Name, p.Content})
		}
		return o, err
	case picture.MediaType(file) != "":
		return Opened{}, errors.New("this is a picture, and not a job; give it to a block as its picture, or measure a block from it")
	}
	return opened(file, name)
}

// opened reads a job file as text.
func opened(file []byte, name string) (Opened, error) {
	if len(file) > jobfile.LargestJob {
		return Opened{}, errors.New("this file is larger than 1 MiB, too large for a job; open a job file, or a PDF that underlay drew")
	}
	data, err := toml.DecodeText(file)
	if err != nil {
		return Opened{}, err
	}
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return Opened{}, errors.New("this file is no text; open a job file, or a PDF that underlay drew")
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return Opened{}, errors.New("this file is empty; open a job file, or a PDF that underlay drew")
	}
	return Opened{Text: string(data), Name: name, Pictures: []File{}}, nil
}
