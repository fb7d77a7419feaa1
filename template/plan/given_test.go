package plan

import (
	"testing"
	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/picture"
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
func planOf(t testing.TB, text string) *Plan {
	t.Helper()
	p, err := New(readJob(t, text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// tryText works out a job that may not be good.
func tryText(text string) (*Plan, error) {
	unseen := func(name string) (*picture.Picture, error) { return &picture.Picture{Name: name}, nil }
	j, err := jobfile.ReadWith("nook.toml", []byte(text), unseen)
	if err != nil {
		return nil, err
	}
	return New(j)
}

// readShelf works out a job of blocks and items only.
func readShelf(t testing.TB, text string) *Shelf {
	t.Helper()
	j := readJob(t, text)
	if !IsShelf(j) {
		t.Fatal("a job without a pass is not taken for a shelf")
	}
	shelf, err := NewShelf(j, ShelfGap)
	if err != nil {
		t.Fatal(err)
	}
	return shelf
}

// near tells whether two lengths are the same but for rounding.
func near(a, b geometry.Length) bool { return (a - b).Abs() <= 1e-9 }
