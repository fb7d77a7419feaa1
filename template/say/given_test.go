package say

import (
	"testing"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// readJob reads a job that must be good.
func readJob(t testing.TB, text string) *job.Job {
	t.Helper()
	j, err := jobfile.Read("nook.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// planOf works out a job that must be good.
func planOf(t testing.TB, text string) *plan.Plan {
	t.Helper()
	p, err := plan.New(readJob(t, text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// readShelf works out a job of blocks and items only.
func readShelf(t testing.TB, text string) *plan.Shelf {
	t.Helper()
	shelf, err := plan.NewShelf(readJob(t, text), plan.ShelfGap)
	if err != nil {
		t.Fatal(err)
	}
	return shelf
}
