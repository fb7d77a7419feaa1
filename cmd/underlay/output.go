package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"
)

// place is where a file is to be written.
type place struct {
	name   string      // as the user wrote it
	target string      // the file itself, links followed
	mode   fs.FileMode // permissions of the file there now, or of a new one
	there  bool        // there is a file now
}

// newMode is what a new file is given, less what the system's umask takes away.
const newMode fs.FileMode = 0o644

// newPlace checks that a file can be written under a name, and that it is not the job file.
// Nothing is written yet.
func newPlace(name, job string) (place, error) {
	p := place{name: name, target: name, mode: newMode}
	info, err := os.Stat(name)
	if err == nil && info.IsDir() {
		return p, p.problem("this is a folder; write a file in it, such as -o %s", filepath.Join(name, "guide.pdf"))
	}
	if p.target, err = follow(name); err != nil {
		return p, p.problem("%s; write another name after -o", err)
	}
	folder := filepath.Dir(p.target)
	switch info, err := os.Stat(folder); {
	case errors.Is(err, fs.ErrNotExist):
		return p, p.problem("there is no folder %s; make it, or write another name after -o", folder)
	case err == nil && !info.IsDir():
		return p, p.problem("%s is not a folder; write another name after -o", folder)
	case err != nil:
		return p, p.problem("the folder %s cannot be used: %s; write another name after -o", folder, cause(err))
	}
	info, err = os.Stat(p.target)
	if errors.Is(err, fs.ErrNotExist) {
		return p, nil
	}
	if err != nil {
		return p, p.problem("%s; write another name after -o", cause(err))
	}
	p.there, p.mode = true, info.Mode().Perm()
	if from, err := os.Stat(job); err == nil && os.SameFile(from, info) {
		return p, p.problem("this is the job file itself, which would be lost; write another name after -o")
	}
	if !info.Mode().IsRegular() {
		return p, p.problem("this is not an ordinary file; write another name after -o, or -o - for standard output")
	}
	return p, p.checkWritable()
}

// checkWritable refuses a file that may only be read. To the system it could still be
// replaced, and to its superuser be written; but somebody has protected it.
func (p place) checkWritable() error {
	if p.mode&0o222 != 0 {
		f, err := os.OpenFile(p.target, os.O_WRONLY, 0)
		if err == nil {
			return f.Close()
		}
	}
	return p.problem("this file may only be read; write another name after -o, or allow writing to it")
}

// longestChain is how many links are followed, each to the next.
const longestChain = 40

// follow returns the file that a name stands for. Where it is a link, that is the file it leads
// to, whether there is one or not.
func follow(name string) (string, error) {
	for range longestChain {
		info, err := os.Lstat(name)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return name, nil
		}
		to, err := os.Readlink(name)
		if err != nil {
			return "", cause(err)
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(name), to)
		}
		name = to
	}
	return "", errors.New("this is a link that leads back to itself")
}

func (p place) problem(format string, args ...any) error {
	return errors.New(p.name + ": " + fmt.Sprintf(format, args...))
}

// write fills the file by calling content. It is written beside its place and renamed into it:
// where anything fails, nothing is left and nothing changed.
func (p place) write(content func(io.Writer) error) (err error) {
	sweep(filepath.Dir(p.target))
	f, err := p.temporary()
	if err != nil {
		folder := "the folder " + filepath.Dir(p.target)
		if folder == "the folder ." {
			folder = "this folder"
		}
		return p.problem("nothing can be written in %s: %s; write the name of a file in another after -o", folder, cause(err))
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	err = content(f)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil && p.there {
		err = os.Chmod(f.Name(), p.mode)
	}
	if err == nil {
		err = os.Rename(f.Name(), p.target)
	}
	if err != nil {
		return p.problem("this file cannot be written: %s; make room, or write another name after -o", cause(err))
	}
	return nil
}

// leftFor is how long a half-written file lies untouched before it is taken for litter: it may
// be another machine's that writes into the same folder, where process numbers say nothing.
const leftFor = time.Minute

// sweep removes from a folder what calls that were killed while they wrote have left there.
// What cannot be removed stays: it is in nobody's way.
func sweep(folder string) {
	entries, _ := os.ReadDir(folder)
	for _, entry := range entries {
		var process, n int
		base, name := entry.Name(), filepath.Join(folder, entry.Name())
		if _, err := fmt.Sscanf(base, ".underlay-%d-%d", &process, &n); err != nil || base != temporaryName(process, n) {
			continue
		}
		info, err := entry.Info()
		if err != nil || !info.Mode().IsRegular() || time.Since(info.ModTime()) < leftFor {
			continue
		}
		if process == os.Getpid() || gone(process) {
			os.Remove(name)
		}
	}
}

// gone tells that there surely is no process of a number.
func gone(process int) bool {
	p, err := os.FindProcess(process)
	if err != nil {
		return false
	}
	return errors.Is(p.Signal(syscall.Signal(0)), os.ErrProcessDone)
}

func temporaryName(process, n int) string { return fmt.Sprintf(".underlay-%d-%d", process, n) }

// temporary makes a new file in the folder of the place.
func (p place) temporary() (*os.File, error) {
	const tries = 1000
	for n := 1; ; n++ {
		name := filepath.Join(filepath.Dir(p.target), temporaryName(os.Getpid(), n))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, newMode)
		if !errors.Is(err, fs.ErrExist) || n == tries {
			return f, err
		}
	}
}

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

// writeOut writes a file that was made from another, or to standard output.
func (c *call) writeOut(output, from string, content []byte) error {
	if output == "-" {
		return c.print(string(content))
	}
	to, err := newPlace(output, from)
	if err != nil {
		return err
	}
	return to.write(func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	})
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
