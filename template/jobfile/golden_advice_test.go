package jobfile

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"underlay/template/internal/repo"
	"underlay/template/job"
)

var (
	writesKey   = regexp.MustCompile(`^unknown key "([^"]*)"( here)?; write "([a-z-]+)"$`)
	writesLine  = regexp.MustCompile(`; write (?:straight ones: )?([a-z-]+ = (?:".*"|'.*'|\[.*\]|[0-9.]+))$`)
	writesValue = regexp.MustCompile(`; write (".*"|'.*')( or more)?$`)
	addsLine    = regexp.MustCompile(`; add ([a-z-]+ = (?:"[^"]*"|\[.*\]))`)
)

// advised puts what a problem says to write into the lines of a job; false where the message leaves
// it to the maker, or names several things to choose from.
func advised(lines []string, p job.Problem) bool {
	at := &lines[p.Line-1]
	indent := (*at)[:len(*at)-len(strings.TrimLeft(*at, " "))]
	key, value, pair := strings.Cut(strings.TrimSpace(*at), "=")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	if m := writesKey.FindStringSubmatch(p.Text); m != nil && pair {
		if m[1] != key { // in braces
			*at = strings.Replace(*at, " "+m[1]+" =", " "+m[3]+" =", 1)
			return true
		}
		*at = indent + m[3] + " = " + value
		return true
	}
	if m := writesLine.FindStringSubmatch(p.Text); m != nil && pair && lineKey(m[1]) == key {
		*at = indent + m[1]
		return true
	}
	if m := writesValue.FindStringSubmatch(p.Text); m != nil && p.Key == key && !strings.HasPrefix(value, "[") && strings.Count(m[1], `"`) <= 2 {
		*at = indent + key + " = " + m[1]
		return true
	}
	// The name in an example may be that of another thing here.
	if m := addsLine.FindStringSubmatch(p.Text); m != nil && strings.HasPrefix(key, "[") && lineKey(m[1]) != "name" {
		*at += "\n" + indent + m[1]
		return true
	}
	return false
}

// TestAdviceOfGoldenMessages follows the advice of every message about every bad job that names one
// thing to write: nothing is said of that line again.
func TestAdviceOfGoldenMessages(t *testing.T) {
	files, err := filepath.Glob(repo.Path(t, "testdata", "bad", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no bad jobs: %v", err)
	}
	tried := 0
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var problems job.Problems
		if _, err := ReadWith("bad.toml", data, picturesIn(filepath.Dir(f))); !errors.As(err, &problems) {
			t.Fatalf("%s: %v", f, err)
		}
		for _, p := range problems {
			if p.Line == 0 {
				continue
			}
			lines := strings.Split(string(data), "\n")
			if !advised(lines, p) {
				continue
			}
			tried++
			var again job.Problems
			_, err := ReadWith("bad.toml", []byte(strings.Join(lines, "\n")), picturesIn(filepath.Dir(f)))
			errors.As(err, &again)
			added := strings.Count(lines[p.Line-1], "\n")
			for _, q := range again {
				if q.Line >= p.Line && q.Line <= p.Line+added && (added == 0 || q.Line > p.Line || q.Text == p.Text) && !saidBefore(problems, q) {
					t.Errorf("%s: %s\nwith %q it says: %s", filepath.Base(f), p, strings.TrimSpace(lines[p.Line-1]), q)
				}
				if q == p {
					t.Errorf("%s: %s\nis said again with %q", filepath.Base(f), p, strings.TrimSpace(lines[p.Line-1]))
				}
			}
		}
	}
	if tried < 55 {
		t.Errorf("only %d messages were followed", tried)
	}
}

// saidBefore tells whether a problem was there before.
func saidBefore(problems job.Problems, q job.Problem) bool {
	for _, p := range problems {
		if p == q {
			return true
		}
	}
	return false
}
