package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A file that is written to, or saved anew, between finding it and having read it is known to
// be another.
func TestChangedWhileRead(t *testing.T) {
	for name, c := range map[string]struct {
		meanwhile func(path string) error
		want      bool
	}{
		"left alone": {func(string) error { return nil }, false},
		"made longer": {func(path string) error {
			return os.WriteFile(path, []byte("title = \"Reading nook\"\n"), 0o644)
		}, true},
		"cut off":               {func(path string) error { return os.Truncate(path, 3) }, true},
		"saved at another time": {func(path string) error { return os.Chtimes(path, time.Time{}, time.Unix(1e9, 0)) }, true},
	} {
		path := filepath.Join(t.TempDir(), "nook.toml")
		if err := os.WriteFile(path, []byte("title = \"Nook\"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		found, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		f, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := c.meanwhile(path); err != nil {
			t.Fatal(err)
		}
		if got := changed(found, f); got != c.want {
			t.Errorf("%s: changed is %v", name, got)
		}
		f.Close()
	}
}
