package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
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
		p, err := newPlace(name, origin{})
		if err != nil {
			t.Fatal(err)
		}
		err = p.write(func(w io.Writer) error {
			if _, err := io.WriteString(w, "half"); err != nil {
				t.Fatal(err)
			}
			return &os.PathError{Op: "write", Path: "somewhere", Err: syscall.ENOSPC}
		}, nil)
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
	p, err := newPlace(name, origin{})
	if err != nil {
		t.Fatal(err)
	}
	err = p.write(func(io.Writer) error { return os.MkdirAll(filepath.Join(name, "deep"), 0o755) }, nil)
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
	p, err := newPlace(filepath.Join(dir, "new.pdf"), origin{})
	if err != nil {
		t.Fatal(err)
	}
	if err := p.write(func(w io.Writer) error { _, err := io.WriteString(w, "whole"); return err }, nil); err != nil {
		t.Fatal(err)
	}
	for name, stays := range files {
		if _, err := os.Lstat(filepath.Join(dir, name)); (err == nil) != stays {
			t.Errorf("%s: %v; it is to stay: %v", name, err, stays)
		}
	}
}

// TestWriteOrder holds the steps of writing to their order: the file beside its place is whole
// and on disk while the old one is still in place, and others may read no more of it than of
// the old one at any time.
func TestWriteOrder(t *testing.T) {
	dir := t.TempDir()
	name, half := filepath.Join(dir, "guide.pdf"), filepath.Join(dir, temporaryName(os.Getpid(), 1))
	if err := os.WriteFile(name, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	p, err := newPlace(name, origin{})
	if err != nil {
		t.Fatal(err)
	}
	var steps []string
	step := func(what string) {
		file, _ := os.ReadFile(name)
		beside, _ := os.ReadFile(half)
		info, err := os.Stat(half)
		if err != nil {
			t.Fatal(err)
		}
		steps = append(steps, fmt.Sprintf("%s: %s, beside it %q, %s", what, file, beside, info.Mode()))
	}
	p.sync = func(f *os.File) error {
		if f.Name() != half {
			t.Errorf("%s is brought to disk", f.Name())
		}
		step("sync")
		return syncFile(f)
	}
	content := func(w io.Writer) error { step("content"); _, err := io.WriteString(w, "new"); return err }
	if err := p.write(content, func() error { step("ready"); return nil }); err != nil {
		t.Fatal(err)
	}
	mode := fs.FileMode(0o600).String()
	want := []string{
		`content: old, beside it "", ` + mode,
		`sync: old, beside it "new", ` + mode,
		`ready: old, beside it "new", ` + mode,
	}
	if d := cmp.Diff(want, steps); d != "" {
		t.Error(d)
	}
	if file, _ := os.ReadFile(name); string(file) != "new" {
		t.Errorf("%q is in place", file)
	}
}

// TestWriteNotReady keeps the old file where the new one could not be brought to disk, or not be
// told of.
func TestWriteNotReady(t *testing.T) {
	lost := errors.New("input/output error")
	for _, c := range []struct {
		name        string
		sync, ready error
		want        string
	}{
		{"sync", lost, nil, "guide.pdf: this file cannot be written: input/output error; make room, or write another name after -o"},
		{"ready", nil, lost, "input/output error"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			if err := os.WriteFile("guide.pdf", []byte("old"), 0o644); err != nil {
				t.Fatal(err)
			}
			p, err := newPlace("guide.pdf", origin{})
			if err != nil {
				t.Fatal(err)
			}
			p.sync = func(*os.File) error { return c.sync }
			content := func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }
			if err := p.write(content, func() error { return c.ready }); err == nil || err.Error() != c.want {
				t.Errorf("got %v, want %s", err, c.want)
			}
			if file, _ := os.ReadFile("guide.pdf"); string(file) != "old" {
				t.Errorf("%q is in place", file)
			}
			if entries, _ := os.ReadDir("."); len(entries) != 1 {
				t.Errorf("files left: %v", entries)
			}
		})
	}
}
