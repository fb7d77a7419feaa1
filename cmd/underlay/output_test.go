package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

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
