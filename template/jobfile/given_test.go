package jobfile

import (
	"testing"

	"underlay/paper"
	"underlay/template/job"
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

func stock(t *testing.T, name string) paper.Stock {
	t.Helper()
	s, err := paper.ParseStock(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
