package jobfile

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"underlay/paper"
	"underlay/template/job"
	"underlay/template/picture"
)

// readJob reads a job that must be good.
func readJob(t testing.TB, text string) *job.Job {
	t.Helper()
	j, err := Read("nook.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// picturesIn reads the pictures of a folder.
func picturesIn(folder string) Pictures {
	return func(name string) (*picture.Picture, error) {
		file, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			return nil, fmt.Errorf("there is no file %s; put it beside the job file", name)
		}
		return picture.Read(name, file)
	}
}

func stock(t *testing.T, name string) paper.Stock {
	t.Helper()
	s, err := paper.ParseStock(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
