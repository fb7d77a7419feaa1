package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// TestWriteFails breaks off in the middle of writing.
func TestWriteFails(t *testing.T) {
	for _, before := range []string{"", "what was there"} {
		dir := t.TempDir()
		name := filepath.Join(dir, "guide.pdf")
		if before != "" {
			if err := os.WriteFile(name, []byte(before), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		p, err := newPlace(name, "job.toml")
		if err != nil {
			t.Fatal(err)
		}
		err = p.write(func(w io.Writer) error {
			if _, err := io.WriteString(w, "half"); err != nil {
				t.Fatal(err)
			}
			return &os.PathError{Op: "write", Path: "somewhere", Err: syscall.ENOSPC}
		})
		want := name + ": this file cannot be written: " + syscall.ENOSPC.Error() + "; make room, or write another name after -o"
		if err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		if before == "" && len(entries) > 0 || before != "" && len(entries) != 1 {
			t.Errorf("files left: %v", entries)
		}
		if data, _ := os.ReadFile(name); string(data) != before {
			t.Errorf("%q became %q", before, data)
		}
	}
}

// TestWriteMovedAway takes the place away while the file is written.
func TestWriteMovedAway(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "guide.pdf")
	p, err := newPlace(name, "job.toml")
	if err != nil {
		t.Fatal(err)
	}
	err = p.write(func(io.Writer) error { return os.MkdirAll(filepath.Join(name, "deep"), 0o755) })
	if err == nil || !strings.Contains(err.Error(), "cannot be written") {
		t.Errorf("got %v", err)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != 1 || entries[0].Name() != "guide.pdf" {
		t.Errorf("files left: %v", entries)
	}
}

// TestSweep leaves in a folder what killed calls may have left, and what only looks like it.
func TestSweep(t *testing.T) {
	dir := t.TempDir()
	ended := exec.Command(os.Args[0], "-test.run", "^$")
	if err := ended.Run(); err != nil {
		t.Fatal(err)
	}
	dead, old := ended.Process.Pid, time.Now().Add(-time.Hour)
	files := map[string]bool{ // whether they are to stay
		temporaryName(dead, 1):                   false,
		temporaryName(dead, 2):                   false,
		temporaryName(os.Getpid(), 1):            false,
		temporaryName(os.Getppid(), 1):           true, // still running
		temporaryName(dead, 3) + ".pdf":          true,
		fmt.Sprintf(".underlay-%d-0%d", dead, 4): true,
		"guide.pdf":                              true,
		"x" + temporaryName(dead, 5):             true,
		temporaryName(dead, 6):                   true, // just written
	}
	for name := range files {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte("half"), 0o644); err != nil {
			t.Fatal(err)
		}
		if name == temporaryName(dead, 6) {
			continue
		}
		if err := os.Chtimes(path, old, old); err != nil {
			t.Fatal(err)
		}
	}
	p, err := newPlace(filepath.Join(dir, "new.pdf"), "job.toml")
	if err != nil {
		t.Fatal(err)
	}
	if err := p.write(func(w io.Writer) error { _, err := io.WriteString(w, "whole"); return err }); err != nil {
		t.Fatal(err)
	}
	for name, stays := range files {
		if _, err := os.Lstat(filepath.Join(dir, name)); (err == nil) != stays {
			t.Errorf("%s: %v; it is to stay: %v", name, err, stays)
		}
	}
}

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
