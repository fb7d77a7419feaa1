package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"underlay/template"
)

// TestReadme runs every command line of the README, in its order, and reads the job files that
// it shows.
func TestReadme(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	readme := string(data)
	files, err := filepath.Glob(filepath.Join("..", "..", "examples", "*.toml"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "examples"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		job, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, "examples", filepath.Base(file)), job, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)

	jobs := regexp.MustCompile("(?s)```toml\n(.*?)```").FindAllStringSubmatch(readme, -1)
	if len(jobs) == 0 {
		t.Fatal("no job file is shown")
	}
	for i, m := range jobs {
		text := m[1]
		if i > 0 { // passes, for the item of the first
			text = strings.Split(jobs[0][1], "  [[item.pass]]")[0] + text + "[[block]]\nname = \"pebble\"\nprint = \"28 x 28 mm\"\n"
		}
		job, err := template.ReadJob("README.toml", []byte(text))
		if err == nil {
			_, err = template.NewPlan(job)
		}
		if err != nil {
			t.Errorf("%v in\n%s", err, text)
		}
	}

	lines := regexp.MustCompile("(?m)go run ./cmd/underlay ([^`\n]+?)[`\n]").FindAllStringSubmatch(readme, -1)
	if len(lines) < 5 {
		t.Fatalf("%d command lines", len(lines))
	}
	for _, m := range lines {
		command, to, sent := strings.Cut(m[1], " > ")
		var out, errs bytes.Buffer
		if code := run(strings.Fields(command), nil, &out, &errs, noEnv); code != 0 || errs.Len() > 0 {
			t.Errorf("%s ends with %d: %s", m[1], code, errs.String())
		}
		if sent {
			if err := os.WriteFile(to, out.Bytes(), 0o644); err != nil {
				t.Error(err)
			}
		}
	}
}
