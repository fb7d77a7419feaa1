package jobfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underlay/template/internal/messages"
	"underlay/template/internal/repo"

	"github.com/google/go-cmp/cmp"
)

// TestBadJobs compares what is said about every testdata/bad/*.toml with
// testdata/bad/messages.txt.
func TestBadJobs(t *testing.T) {
	dir := repo.Path(t, "testdata", "bad")
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
		_, err = ReadWith(name, data, picturesIn(dir))
		if err == nil {
			t.Errorf("%s is taken for a good job", name)
			continue
		}
		got.WriteString("# " + name + "\n" + err.Error() + "\n\n")
		messages.Check(t, name, err)
		messages.Words(t, strings.ReplaceAll(err.Error(), name, ""))
	}
	messages.Golden(t, "messages.txt", got.String())
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
		{"UTF-16", "nook.toml", "\xff\xfet\x00i\x00", `nook.toml:1: "ti" cannot be read here; write key = "value", [table], or # before a remark`},
		{"remarks only", "nook.toml", "# nothing yet\n", "nook.toml: there is no block; add [[block]] with name = \"fern\" and print = \"90 x 90 mm\"\n" +
			"nook.toml: there is no item to print on; add [[item]] with name = \"cushion\", size = \"50 x 50 cm\" and border = \"25 mm\""},
		{"line kept behind a mark and CRLF", "nook.toml", "\ufeff# nook\r\ntitel = \"x\"\r\n" + strings.ReplaceAll(goodTail, "\n", "\r\n"),
			`nook.toml:2: unknown key "titel"; write "title"`},
		{"number too large", "nook.toml", "title = 99999999999999999999999\n" + goodTail,
			`nook.toml:1: title = 99999999999999999999999 is too large a number; write a smaller one`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read(c.file, []byte(c.data))
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
		job, err := Read(file, []byte(goodTail))
		if err != nil {
			t.Fatal(err)
		}
		if job.Title != want {
			t.Errorf("%s: title %q, want %q", file, job.Title, want)
		}
	}
}

func TestExamples(t *testing.T) {
	files, err := filepath.Glob(repo.Path(t, "examples", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := ReadWith(filepath.Base(f), data, examplePictures); err != nil {
			t.Errorf("%v", err)
		}
	}
}
