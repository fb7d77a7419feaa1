package sample

import (
	"os"
	"path/filepath"
	"testing"

	"underlay/template/internal/repo"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/picture"
)

// Pictures finds the pictures that lie beside the job files a user is given.
func Pictures(t testing.TB) jobfile.Pictures {
	return func(name string) (*picture.Picture, error) {
		file, err := os.ReadFile(repo.Path(t, "examples", name))
		if err != nil {
			return nil, err
		}
		return picture.Read(name, file)
	}
}

// Example reads one of the job files a user is given, by its name without ".toml".
func Example(t testing.TB, name string) *job.Job {
	t.Helper()
	name += ".toml"
	data, err := os.ReadFile(repo.Path(t, "examples", name))
	if err != nil {
		t.Fatal(err)
	}
	j, err := jobfile.ReadWith(name, data, Pictures(t))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// Examples reads every job file a user is given.
func Examples(t testing.TB) map[string]*job.Job {
	t.Helper()
	files, err := filepath.Glob(repo.Path(t, "examples", "*.toml"))
	if err != nil || len(files) < 2 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	jobs := map[string]*job.Job{}
	for _, file := range files {
		name := filepath.Base(file)
		jobs[name] = Example(t, name[:len(name)-len(".toml")])
	}
	return jobs
}
