package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// TestHolds: a file holds a picture where every byte is the same, not only as many of them.
func TestHolds(t *testing.T) {
	name := filepath.Join(t.TempDir(), "fern.png")
	if _, err := holds(name, []byte("fern")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	if err := os.WriteFile(name, []byte("fern"), 0o600); err != nil {
		t.Fatal(err)
	}
	for content, want := range map[string]bool{"fern": true, "ferm": false, "fer": false, "ferns": false, "": false} {
		if same, err := holds(name, []byte(content)); err != nil || same != want {
			t.Errorf("%q: %v, %v", content, same, err)
		}
	}
}
