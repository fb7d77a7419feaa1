package side

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

const examples = "../../../examples"

// jobs are texts to try things on: the beginnings and the examples.
func jobs(t testing.TB) map[string]string {
	all := map[string]string{}
	for _, name := range Starts() {
		all[name], _ = Start(name)
	}
	files, err := filepath.Glob(filepath.Join(examples, "*.toml"))
	if err != nil || len(files) < 15 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all[strings.TrimSuffix(filepath.Base(file), ".toml")] = string(text)
	}
	return all
}

// pictures are those beside the examples, read once.
var pictures = sync.OnceValue(func() map[string]given {
	s := New()
	files, _ := filepath.Glob(filepath.Join(examples, "*.png"))
	for _, file := range files {
		content, err := os.ReadFile(file)
		if err == nil {
			err = s.Picture(filepath.Base(file), content)
		}
		if err != nil {
			panic(err)
		}
	}
	return s.pictures
})

// sideWithPictures is a side that has been given the pictures beside the examples.
func sideWithPictures() *Side {
	s := New()
	s.pictures = maps.Clone(pictures())
	return s
}
