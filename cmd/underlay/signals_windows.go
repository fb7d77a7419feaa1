package main

import (
	"errors"
	"os"
	"syscall"
)

// stopSignals are those that tell a program to stop.
func stopSignals() []os.Signal { return []os.Signal{syscall.SIGINT, syscall.SIGTERM} }

// keepRunning has nothing to do here: a write to nobody fails.
func keepRunning() {}

// What Windows says where nobody reads any more: ERROR_BROKEN_PIPE and ERROR_NO_DATA.
const brokenPipe, noData = syscall.Errno(109), syscall.Errno(232)

// readerGone tells that a write failed because nobody reads any more.
func readerGone(err error) bool {
	return errors.Is(err, brokenPipe) || errors.Is(err, noData) || errors.Is(err, syscall.EPIPE)
}
