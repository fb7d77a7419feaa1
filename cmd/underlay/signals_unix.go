//go:build unix

package main

import (
	"errors"
	"os"
	"os/signal"
	"syscall"
)

// stopSignals are those that tell a program to stop.
func stopSignals() []os.Signal {
	return []os.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP}
}

// keepRunning lets the program go on where the reader of its output goes away: the write fails.
func keepRunning() { signal.Ignore(syscall.SIGPIPE) }

// readerGone tells that a write failed because nobody reads any more.
func readerGone(err error) bool { return errors.Is(err, syscall.EPIPE) }
