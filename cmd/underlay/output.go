package main

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// endingOf returns what a file is to be by its name, ".pdf" or ".svg", and refuses any other.
func endingOf(name string) (string, error) {
	switch ending := strings.ToLower(filepath.Ext(name)); {
	case name == "-":
		return ".pdf", nil
	case ending == ".pdf" || ending == ".svg":
		return ending, nil
	case isFolder(name):
		return ".pdf", nil // newPlace says so
	}
	return "", usage("%s: the name of the file says what to write; let it end in .pdf or .svg, as %s.pdf", name, strings.TrimSuffix(name, filepath.Ext(name)))
}

func isFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}

// output is a file to be written, and what is then said of it.
type output struct {
	name    string // "-": standard output
	from    origin
	content []byte       // of the file
	ready   func() error // see place.write
	words   string       // said once the file is there
}

// writeOut writes a file, or to standard output.
func (c *call) writeOut(o output) error {
	if o.name == "-" {
		return c.print(string(o.content))
	}
	to, err := newPlace(o.name, o.from)
	if err != nil {
		return err
	}
	err = to.write(func(w io.Writer) error {
		_, err := w.Write(o.content)
		return err
	}, o.ready)
	if err != nil {
		return err
	}
	c.tell(o.words)
	return nil
}

// origin is a file by its name, or standard input; what is what it is to the user.
func (c *call) origin(what, name string) origin {
	var found fs.FileInfo
	switch f, isFile := c.stdin.(*os.File); {
	case name == "":
	case name != "-":
		found, _ = os.Stat(name)
	case isFile:
		found, _ = f.Stat()
	}
	return origin{what, found}
}

// outputName is the file that is written where the user names none: the job file's name with
// another ending, in the current folder.
func outputName(job, ending string) string {
	base := filepath.Base(job)
	base = strings.TrimSuffix(base, filepath.Ext(base))
	if job == "" || job == "-" || strings.Trim(base, ".") == "" {
		base = "underlay"
	}
	return base + ending
}

// outputError says that something could not be written.
func outputError(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s cannot be written: %w; make room, or send it elsewhere", name, cause(err))
}
