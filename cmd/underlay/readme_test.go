package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestReadme does what the README says, from top to bottom: it writes each job that is shown to
// a file and draws it, runs every command line, and looks for the words that fit is said to print.
func TestReadme(t *testing.T) {
	root, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	readme := string(data)
	t.Chdir(t.TempDir())
	examples := copyExamples(t, root)
	// Each recipe's job lies beside its pictures, as the examples do.
	recipe := filepath.Join("examples", "recipe.toml")

	// After the first, which the maker types in, each job is an example too,
	// so that the picture below it is a picture of it.
	jobs := regexp.MustCompile("(?s)```toml\n(.*?)```").FindAllStringSubmatch(readme, -1)
	if len(jobs) < 2 {
		t.Fatalf("%d jobs are shown", len(jobs))
	}
	for i, m := range jobs {
		if err := os.WriteFile(recipe, []byte(m[1]), 0o644); err != nil {
			t.Fatal(err)
		}
		for _, args := range [][]string{{"fit", recipe}, {"draw", recipe}} {
			var out, errs bytes.Buffer
			// What a crowded reach leaves unnamed is said, and no fault of the job.
			code := run(args, nil, &out, &errs, noEnv)
			if said := regexp.MustCompile(`item ".+": the guide has no room for the words .+\n`).ReplaceAllString(errs.String(), ""); code != 0 || said != "" {
				t.Errorf("%s ends with %d: %sin\n%s", args[0], code, errs.String(), m[1])
			}
		}
		if i > 0 && !strings.Contains(examples, m[1]) {
			t.Errorf("no example is the job\n%s", m[1])
		}
	}

	if err := os.WriteFile("cushion.toml", []byte(jobs[0][1]), 0o644); err != nil {
		t.Fatal(err)
	}
	lines := regexp.MustCompile("(?m)go run ./cmd/underlay ([^`\n]+?)[`\n]").FindAllStringSubmatch(readme, -1)
	if len(lines) < 5 {
		t.Fatalf("%d command lines", len(lines))
	}
	var said strings.Builder
	for _, m := range lines {
		var out, errs bytes.Buffer
		if code := run(strings.Fields(m[1]), nil, &out, &errs, noEnv); code != 0 || errs.Len() > 0 && !strings.HasPrefix(errs.String(), "wrote fern.png, ") {
			t.Errorf("%s ends with %d: %s", m[1], code, errs.String())
		}
		said.Write(out.Bytes())
	}
	for _, m := range regexp.MustCompile("(?s)```text\n(.*?)```").FindAllStringSubmatch(readme, -1) {
		if !strings.Contains(said.String(), m[1]) {
			t.Errorf("no command prints\n%s", m[1])
		}
	}

	for _, m := range regexp.MustCompile(`\]\(([^):]+)\)`).FindAllStringSubmatch(readme, -1) {
		if _, err := os.Stat(filepath.Join(root, filepath.FromSlash(m[1]))); err != nil {
			t.Errorf("there is no %s to show", m[1])
		}
	}
}

// copyExamples copies the example jobs below root, and their pictures, into the current folder's own
// folder of examples; it returns the text of all jobs.
func copyExamples(t *testing.T, root string) string {
	t.Helper()
	if err := os.Mkdir("examples", 0o755); err != nil {
		t.Fatal(err)
	}
	for _, pictures := range []string{"*.png", "*.jpg"} {
		copyFiles(t, filepath.Join(root, "examples", pictures), "examples")
	}
	return copyFiles(t, filepath.Join(root, "examples", "*.toml"), "examples")
}

// copyFiles copies the files that a pattern names into a folder, and returns all that is in them.
func copyFiles(t *testing.T, pattern, folder string) string {
	t.Helper()
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: %d files, %v", pattern, len(files), err)
	}
	var all strings.Builder
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, filepath.Base(file)), data, 0o644); err != nil {
			t.Fatal(err)
		}
		all.Write(data)
	}
	return all.String()
}
