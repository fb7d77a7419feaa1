package template

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestBadJobs compares what is said about every testdata/bad/*.toml with
// testdata/bad/messages.txt.
func TestBadJobs(t *testing.T) {
	dir := filepath.Join("..", "testdata", "bad")
	files, err := filepath.Glob(filepath.Join(dir, "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no bad jobs: %v", err)
	}
	var got strings.Builder
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(f)
		_, err = ReadJob(name, data)
		if err == nil {
			t.Errorf("%s is taken for a good job", name)
			continue
		}
		got.WriteString("# " + name + "\n" + err.Error() + "\n\n")
		checkProblems(t, name, err)
		checkWords(t, strings.ReplaceAll(err.Error(), name, ""))
	}
	checkGolden(t, "messages.txt", got.String())
}

// readJob reads a job that must be good.
func readJob(t *testing.T, text string) *Job {
	t.Helper()
	job, err := ReadJob("nook.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// checkGolden compares messages with a file of testdata/bad, or writes it anew.
func checkGolden(t *testing.T, file, got string) {
	t.Helper()
	golden := filepath.Join("..", "testdata", "bad", file)
	if *update {
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

// checkProblems holds every message to what all of them promise: sorted by line, each once,
// one line, and what to write instead.
func checkProblems(t *testing.T, name string, err error) {
	t.Helper()
	var p Problems
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

// checkWords refuses the words of programmers.
func checkWords(t *testing.T, message string) {
	t.Helper()
	for _, word := range []string{"invalid", "toml: ", "struct", "float64", "int64", "interface", "%!", "U+"} {
		if strings.Contains(message, word) {
			t.Errorf("%q holds %q", message, word)
		}
	}
}

const goodTail = `
[[block]]
name = "fern"
print = "90 x 90 mm"

[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
`

func TestFileAsAWhole(t *testing.T) {
	long := strings.Repeat("# a long remark\n", 1<<16+1)
	for _, c := range []struct{ name, file, data, want string }{
		{"empty", "nook.toml", "", "nook.toml: the file is empty; begin with the one that underlay start prints"},
		{"blank", "nook.toml", " \r\n\t\n", "nook.toml: the file is empty; begin with the one that underlay start prints"},
		{"only a mark", "nook.toml", "\ufeff", "nook.toml: the file is empty; begin with the one that underlay start prints"},
		{"standard input", "-", "", "standard input: the file is empty; begin with the one that underlay start prints"},
		{"too large", "nook.toml", long, "nook.toml: the file is larger than 1 MiB, too large for a job file; write a smaller one"},
		{"Latin-1", "nook.toml", "# nook\ntitle = \"Caf\xe9\"\n", "nook.toml:2: this line is not UTF-8 text; save the file as UTF-8"},
		{"UTF-16", "nook.toml", "\xff\xfet\x00i\x00", "nook.toml:1: this line is not UTF-8 text; save the file as UTF-8"},
		{"remarks only", "nook.toml", "# nothing yet\n", "nook.toml: there is no block; add [[block]] with name = \"fern\" and print = \"90 x 90 mm\"\n" +
			"nook.toml: there is no item to print on; add [[item]] with name = \"cushion\", size = \"50 x 50 cm\" and border = \"25 mm\""},
		{"line kept behind a mark and CRLF", "nook.toml", "\ufeff# nook\r\ntitel = \"x\"\r\n" + strings.ReplaceAll(goodTail, "\n", "\r\n"),
			`nook.toml:2: unknown key "titel"; write "title"`},
		{"number too large", "nook.toml", "title = 99999999999999999999999\n" + goodTail,
			`nook.toml:1: title = 99999999999999999999999 is too large a number; write a smaller one`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := ReadJob(c.file, []byte(c.data))
			if err == nil {
				t.Fatal("taken for a good job")
			}
			if d := cmp.Diff(c.want, err.Error()); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestOddButGood reads files that look odd and say nothing wrong.
func TestOddButGood(t *testing.T) {
	long := strings.Repeat("n", longestName)
	for name, data := range map[string]string{
		"byte order mark": "\ufeff" + goodTail,
		"CRLF":            strings.ReplaceAll(goodTail, "\n", "\r\n"),
		"inline tables":   `block = [{name = "fern", print = "90 x 90 mm"}]` + "\n" + `item = [{name = "cushion", size = "50 x 50 cm", border = "25 mm", pass = [{block = "fern", gap = "1 mm"}]}]`,
		"dotted keys":     "paper.size = \"A4\"\npaper.margin = \"7 mm\"\n" + goodTail,
		"odd names":       strings.ReplaceAll(goodTail, `"fern"`, `"\tФерн\n\u0007"`),
		"longest name":    strings.ReplaceAll(goodTail, `"fern"`, `"`+long+`"`),
		"an edge in order": goodTail + "\n  [[item.pass]]\n  block = \"fern\"\n  gap = \"1 mm\"\n" +
			"[paper]\nsize = \"A4\"\n",
	} {
		t.Run(name, func(t *testing.T) {
			job := readJob(t, data)
			if string(job.Source) != data {
				t.Error("the source is not the file byte for byte")
			}
		})
	}
}

func TestTitle(t *testing.T) {
	for file, want := range map[string]string{
		"nook.toml": "nook", "dir/reading-nook.job.toml": "reading-nook.job", "-": "Untitled", ".toml": "Untitled", "nook": "nook",
	} {
		job, err := ReadJob(file, []byte(goodTail))
		if err != nil {
			t.Fatal(err)
		}
		if job.Title != want {
			t.Errorf("%s: title %q, want %q", file, job.Title, want)
		}
	}
}

func TestExamples(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "examples", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := ReadJob(filepath.Base(f), data); err != nil {
			t.Errorf("%v", err)
		}
	}
}
