//go:build unix

package main

import (
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"
)

// TestInterrupted tells the program to stop while it writes: it ends as one that a shell would
// say was stopped, the old file stays and nothing lies beside it. 130 and 143 are 128 and the
// numbers of SIGINT and SIGTERM (POSIX.1-2017, kill, and 2.8.2 of its shell).
func TestInterrupted(t *testing.T) {
	if number, err := strconv.Atoi(os.Getenv("UNDERLAY_TEST_STOP")); err == nil {
		stopWhileWriting(syscall.Signal(number))
	}
	for _, c := range []struct {
		signal syscall.Signal
		want   int
	}{{syscall.SIGINT, 130}, {syscall.SIGTERM, 143}, {syscall.SIGHUP, 129}} {
		for _, before := range []string{"", "old"} {
			dir := t.TempDir()
			if before != "" {
				if err := os.WriteFile(filepath.Join(dir, "guide.pdf"), []byte(before), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			self, err := os.Executable()
			if err != nil {
				t.Fatal(err)
			}
			cmd := exec.Command(self, "-test.run", "^TestInterrupted$")
			cmd.Dir = dir
			cmd.Env = append(os.Environ(), "UNDERLAY_TEST_STOP="+strconv.Itoa(int(c.signal)))
			err = cmd.Run()
			var failed *exec.ExitError
			if !errors.As(err, &failed) || failed.ExitCode() != c.want {
				t.Errorf("%s: %v; want exit code %d", c.signal, err, c.want)
			}
			entries, _ := os.ReadDir(dir)
			file, _ := os.ReadFile(filepath.Join(dir, "guide.pdf"))
			if string(file) != before || len(entries) > 1 || before == "" && len(entries) > 0 {
				t.Errorf("%s: %q became %q; files left: %v", c.signal, before, file, entries)
			}
		}
	}
}

// stopWhileWriting sends the signal to its own process with a file half written, and waits.
func stopWhileWriting(s syscall.Signal) {
	p, err := newPlace("guide.pdf", origin{})
	if err == nil {
		err = p.write(func(w io.Writer) error {
			if _, err := io.WriteString(w, "half"); err != nil {
				return err
			}
			if err := syscall.Kill(os.Getpid(), s); err != nil {
				return err
			}
			select {}
		}, nil)
	}
	println(err.Error()) // nothing stopped it
	os.Exit(99)
}
