package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestOutputName(t *testing.T) {
	got := map[string]string{}
	want := map[string]string{
		"reading-nook.toml":                      "reading-nook.pdf",
		filepath.Join("a", "b", "nook.job.toml"): "nook.job.pdf",
		"nook":                                   "nook.pdf", "": "underlay.pdf", "-": "underlay.pdf", ".toml": "underlay.pdf", "..": "underlay.pdf",
	}
	for job := range want {
		got[job] = outputName(job, ".pdf")
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestCause(t *testing.T) {
	path := &os.PathError{Op: "open", Path: "x", Err: syscall.EACCES}
	link := &os.LinkError{Op: "rename", Old: "a", New: "b", Err: syscall.EACCES}
	for _, err := range []error{path, link, syscall.EACCES} {
		if got := cause(err); !errors.Is(got, syscall.EACCES) || got.Error() != syscall.EACCES.Error() {
			t.Errorf("%v: %v", err, got)
		}
	}
}

// TestOutputFull has a standard output that takes nothing.
func TestOutputFull(t *testing.T) {
	var stderr strings.Builder
	if code := run([]string{"start"}, nil, full{}, &stderr, noEnv); code != 1 {
		t.Errorf("ended with %d", code)
	}
	if want := "standard output cannot be written: " + syscall.ENOSPC.Error() + "; make room, or send it elsewhere\n"; stderr.String() != want {
		t.Errorf("said %q, want %q", stderr.String(), want)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) {
	return 0, &os.PathError{Op: "write", Path: "/dev/stdout", Err: syscall.ENOSPC}
}
