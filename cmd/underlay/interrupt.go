package main

import (
	"errors"
	"io/fs"
	"os"
	"os/signal"
	"sync"
	"syscall"
)

// unfinished are half-written files, each beside its place.
type unfinished struct {
	mu    sync.Mutex
	names []string
}

// create makes a file.
func (u *unfinished) create(name string, mode fs.FileMode) (*os.File, error) {
	u.mu.Lock()
	defer u.mu.Unlock()
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err == nil {
		u.names = append(u.names, name)
	}
	return f, err
}

// finish puts the files into their places, in the order they were made, all or none: where one cannot
// be put there, those before it are taken away again. New ones take the place of nothing; only the
// last may be of another kind. It returns which could not be put there.
func (u *unfinished) finish(places []place) (int, error) {
	u.mu.Lock()
	defer u.mu.Unlock()
	for i, p := range places {
		put := os.Rename
		if p.fresh {
			put = putNew
		}
		if err := put(u.names[i], p.target); err != nil {
			for _, done := range places[:i] {
				os.Remove(done.target)
			}
			return i, err
		}
	}
	u.names = nil
	return 0, nil
}

// putNew renames a file, over no other; a disk that knows no second names for a file is asked first.
func putNew(name, target string) error {
	err := os.Link(name, target)
	if err == nil {
		os.Remove(name) // sweep has it where this cannot
		return nil
	}
	if _, there := os.Lstat(target); errors.Is(err, fs.ErrExist) || !errors.Is(there, fs.ErrNotExist) {
		return fs.ErrExist
	}
	return os.Rename(name, target)
}

// remove takes away what is not finished.
func (u *unfinished) remove() {
	for _, name := range u.names {
		os.Remove(name)
	}
}

// watch removes the files and ends the program where it is told to stop, by Ctrl-C or otherwise,
// before stop is called. What the program was started to take no notice of is left so.
func (u *unfinished) watch() (stop func()) {
	told, done := make(chan os.Signal, 1), make(chan struct{})
	for _, s := range stopSignals() {
		if !signal.Ignored(s) {
			signal.Notify(told, s)
		}
	}
	go func() {
		select {
		case <-done:
		case s := <-told:
			u.mu.Lock() // for good: nothing is created or finished any more
			u.remove()
			os.Exit(stoppedBy(s))
		}
	}()
	return func() {
		signal.Stop(told)
		close(done)
	}
}

// stoppedBy is the exit code of a program told to stop: 128 and the number of the signal, as
// shells have it, 130 for Ctrl-C and 143 for TERM.
func stoppedBy(s os.Signal) int {
	if n, ok := s.(syscall.Signal); ok {
		return 128 + int(n)
	}
	return 1
}
