package jobfile

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"underlay/paper"
	"underlay/template/job"
	"underlay/template/picture"
)

// readJob reads a job that must be good; its pictures are those of the examples.
func readJob(t testing.TB, text string) *job.Job {
	t.Helper()
	j, err := ReadWith("nook.toml", []byte(text), examplePictures)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// examplePictures reads the pictures that lie beside the examples, each once: whoever asks again gets
// the same.
var examplePictures = func() Pictures {
	read := picturesIn(filepath.Join("..", "..", "examples"))
	var all sync.Map
	return func(name string) (*picture.Picture, error) {
		known, _ := all.LoadOrStore(name, sync.OnceValues(func() (*picture.Picture, error) { return read(name) }))
		return known.(func() (*picture.Picture, error))()
	}
}()

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
