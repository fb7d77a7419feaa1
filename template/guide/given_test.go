package guide

import (
	"testing"
	"underlay/paper"
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
	return workedOut(t, readJob(t, text))
}

func workedOut(t testing.TB, j *job.Job) *plan.Plan {
	t.Helper()
	p, err := plan.New(j)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

const fernOn = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n" +
	"[[item]]\nname = 'floor cushion'\nsize = '%s'\nborder = '25 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"

func stock(t *testing.T, name string) paper.Stock {
	t.Helper()
	s, err := paper.ParseStock(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
