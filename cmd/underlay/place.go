package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// place is where a file is to be written.
type place struct {
	name   string      // as the user wrote it
	target string      // the file itself: no link, in a folder without any
	mode   fs.FileMode // permissions of the file there now, or of a new one
	there  bool        // there is a file now
	fresh  bool        // there is to be none when it is written
	sync   func(*os.File) error
}

// newMode is what a new file is given, less what the system's umask takes away.
const newMode fs.FileMode = 0o644

// origin is the file that another is made from; found is nil where there is none.
type origin struct {
	what  string // what it is to the user: "the job file"
	found fs.FileInfo
}

// newPlace checks that a file can be written under a name, and that it is not the
// origin.
// Nothing is written yet.
func newPlace(name string, from origin) (place, error) {
	p := place{name: name, target: name, mode: newMode, sync: syncFile}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return p, p.problem("this is a folder; write a file in it, such as -o %s", filepath.Join(name, "guide.pdf"))
	}
	var err error
	if p.target, err = p.follow(); err != nil {
		return p, err
	}
	info, err := os.Stat(p.target)
	if errors.Is(err, fs.ErrNotExist) {
		return p, nil
	}
	if err != nil {
		return p, p.problem("%s; write another name after -o", cause(err))
	}
	p.there, p.mode = true, info.Mode().Perm()
	if from.found != nil && os.SameFile(from.found, info) {
		return p, p.problem("this is %s itself, which would be lost; write another name after -o", from.what)
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

// follow returns the file that the name stands for. Where it is a link, that is the file it
// leads to, whether there is one or not. The folder is found as the system finds it: below a
// linked folder, ".." is the parent of where the link leads, so no path is shortened by its
// letters alone.
func (p place) follow() (string, error) {
	name := p.name
	for range longestChain {
		folder, base := filepath.Split(name)
		if base == "" || base == "." || base == ".." {
			return "", p.problem("there is no folder %s; write the name of a file after -o", name)
		}
		resolved, err := p.folder(folder)
		if err != nil {
			return "", err
		}
		file := filepath.Join(resolved, base)
		info, err := os.Lstat(file)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return file, nil
		}
		to, err := os.Readlink(file)
		if err != nil {
			return "", p.problem("%s; write another name after -o", cause(err))
		}
		if !filepath.IsAbs(to) {
			to = resolved + string(filepath.Separator) + to
		}
		name = to
	}
	return "", p.problem("this is a link that leads back to itself; write another name after -o")
}

// folder returns where a folder really is, all links followed.
func (p place) folder(name string) (string, error) {
	if name == "" {
		name = "."
	}
	shown := filepath.Clean(name)
	resolved, err := filepath.EvalSymlinks(name)
	var info fs.FileInfo
	if err == nil {
		info, err = os.Stat(resolved)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", p.problem("there is no folder %s; make it, or write another name after -o", shown)
	case err == nil && !info.IsDir(), errors.Is(err, syscall.ENOTDIR):
		return "", p.problem("%s is not a folder; write another name after -o", shown)
	case err != nil:
		return "", p.problem("the folder %s cannot be used: %s; write another name after -o", shown, cause(err))
	}
	return resolved, nil
}

func (p place) problem(format string, args ...any) error {
	return errors.New(p.name + ": " + fmt.Sprintf(format, args...))
}
