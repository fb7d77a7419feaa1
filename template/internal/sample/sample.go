package sample

import (
	"os"
	"path/filepath"
	"testing"
	"underlay/template/internal/repo"
	"underlay/template/job"
	"underlay/template/jobfile"
)

// Examples reads every job file a user is given.
func Examples(t *testing.T) map[string]*job.Job {
	t.Helper()
	files, err := filepath.Glob(repo.Path(t, "examples", "*.toml"))
	if err != nil || len(files) < 2 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	jobs := map[string]*job.Job{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		job, err := jobfile.Read(filepath.Base(file), data)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(file)] = job
	}
	return jobs
}
