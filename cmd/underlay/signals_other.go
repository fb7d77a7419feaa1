//go:build !unix && !windows

package main

import (
	"os"
	"syscall"
)

// stopSignals are those that tell a program to stop.
func stopSignals() []os.Signal { return []os.Signal{syscall.SIGINT, syscall.SIGTERM} }

// keepRunning has nothing to do here.
func keepRunning() {}

// readerGone tells that a write failed because nobody reads any more.
func readerGone(error) bool { return false }
