package messages

import (
	"errors"
	"flag"
	"os"
	"strings"
	"testing"

	"underlay/template/internal/repo"

	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

var Update = flag.Bool("update", false, "write the golden files anew")

// Golden compares messages with a file of testdata/bad, or writes it anew.
func Golden(t *testing.T, file, got string) {
	t.Helper()
	golden := repo.Path(t, "testdata", "bad", file)
	if *Update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("messages differ (-want +got):\n%s", d)
	}
}

// Check holds every message to what all of them promise: sorted by line, each once,
// one line, and what to write instead.
func Check(t *testing.T, name string, err error) {
	t.Helper()
	var p job.Problems
	if !errors.As(err, &p) {
		t.Errorf("%s: the error is no list of problems: %v", name, err)
		return
	}
	seen := map[string]bool{}
	for i, q := range p {
		s := q.String()
		if i > 0 && q.Line < p[i-1].Line {
			t.Errorf("%s: line %d comes after line %d", name, q.Line, p[i-1].Line)
		}
		if seen[s] {
			t.Errorf("%s: said twice: %s", name, s)
		}
		seen[s] = true
		if strings.ContainsAny(s, "\n\r") || !strings.Contains(s, "; ") && !strings.Contains(s, ", so ") {
			t.Errorf("%s: no advice, or not one line: %q", name, s)
		}
	}
}

// Words refuses the words of programmers.
func Words(t *testing.T, message string) {
	t.Helper()
	for _, word := range []string{"invalid", "toml: ", "struct", "float64", "int64", "interface", "%!", "U+"} {
		if strings.Contains(message, word) {
			t.Errorf("%q holds %q", message, word)
		}
	}
}
