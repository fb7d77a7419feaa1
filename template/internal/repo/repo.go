// Package repo finds files of this repository, for tests of any package.
package repo

import (
	"os"
	"path/filepath"
	"testing"
)

// Path returns the path of a file or folder, its names given from the top of the repository.
func Path(t testing.TB, names ...string) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return filepath.Join(append([]string{dir}, names...)...)
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the test")
		}
		dir = up
	}
}
