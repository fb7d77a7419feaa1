package main

import (
	"io/fs"
	"os"
	"os/signal"
	"sync"
	"syscall"
)

// unfinished is the half-written file beside its place, if there is one.
type unfinished struct {
	mu   sync.Mutex
	name string // "": none
}

// create makes the file.
func (u *unfinished) create(name string, mode fs.FileMode) (*os.File, error) {
	u.mu.Lock()
	defer u.mu.Unlock()
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err == nil {
		u.name = name
	}
	return f, err
}

// finish renames the file into its place.
func (u *unfinished) finish(target string) error {
	u.mu.Lock()
	defer u.mu.Unlock()
	err := os.Rename(u.name, target)
	if err == nil {
		u.name = ""
	}
	return err
}

// watch removes the file and ends the program where it is told to stop, by Ctrl-C or otherwise,
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
			if u.name != "" {
				os.Remove(u.name)
			}
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
