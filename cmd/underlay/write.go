package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"
)

// draft is a file to be written, and what is to stand in it.
type draft struct {
	place
	content func(io.Writer) error
}

// write fills the file by calling content; see writeAll.
func (p place) write(content func(io.Writer) error, ready func() error) error {
	return writeAll([]draft{{p, content}}, ready)
}

// writeAll writes files, all or none; of several, all but the last are fresh. Each is written beside
// its place, brought safely to disk and renamed into it: where anything fails, or the program is told
// to stop, nothing is left and nothing changed. Once the files are whole, and before they are in their
// places, ready is called, if it is not nil; where that fails, they are not put there either.
func writeAll(drafts []draft, ready func() error) error {
	half := &unfinished{}
	defer half.watch()()
	defer half.remove()
	for _, d := range drafts {
		sweep(filepath.Dir(d.target))
	}
	var places []place
	for _, d := range drafts {
		if err := d.draft(half); err != nil {
			return err
		}
		places = append(places, d.place)
	}
	if ready != nil {
		if err := ready(); err != nil {
			return err
		}
	}
	if i, err := half.finish(places); err != nil {
		return places[i].unwritten(err)
	}
	for _, p := range places {
		syncFolder(filepath.Dir(p.target))
	}
	return nil
}

// draft writes the file beside its place.
func (d draft) draft(half *unfinished) error {
	f, err := d.temporary(half)
	if err != nil {
		folder := filepath.Dir(d.target)
		where := "the folder " + folder
		if folder == "." {
			where = "this folder"
		}
		return d.problem("nothing can be written in %s: %s; write the name of a file in another after -o", where, cause(err))
	}
	if err := d.fill(f, d.content); err != nil {
		return d.unwritten(err)
	}
	return nil
}

func (p place) unwritten(err error) error {
	return p.problem("this file cannot be written: %s; make room, or write another name after -o", cause(err))
}

// fill writes the content, its permissions, and all of it to disk, and closes the file.
func (p place) fill(f *os.File, content func(io.Writer) error) error {
	err := content(f)
	if err == nil && p.there {
		err = f.Chmod(p.mode) // the umask may have taken some away
		if errors.Is(err, errors.ErrUnsupported) {
			err = nil
		}
	}
	if err == nil {
		err = p.sync(f)
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}

// syncFile brings a file to disk. A disk that has no such thing to offer is let be.
func syncFile(f *os.File) error {
	err := f.Sync()
	if errors.Is(err, errors.ErrUnsupported) || errors.Is(err, syscall.EINVAL) {
		return nil
	}
	return err
}

// syncFolder brings the names in a folder to disk, where the system can: the file is in its
// place by now, and only a machine that loses its power this moment would still forget it.
func syncFolder(name string) {
	if f, err := os.Open(name); err == nil {
		f.Sync()
		f.Close()
	}
}

// temporary makes a new file in the folder of the place, with the permissions it is to have:
// what others may not read is never open to them.
func (p place) temporary(half *unfinished) (*os.File, error) {
	const tries = 1000
	for n := 1; ; n++ {
		name := filepath.Join(filepath.Dir(p.target), temporaryName(os.Getpid(), n))
		f, err := half.create(name, p.mode)
		if !errors.Is(err, fs.ErrExist) || n == tries {
			return f, err
		}
	}
}

func temporaryName(process, n int) string { return fmt.Sprintf(".underlay-%d-%d", process, n) }

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
