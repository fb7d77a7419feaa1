package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"underlay/template/jobfile"
	"underlay/template/picture"
	"underlay/template/words"
)

// picturesBeside reads the pictures that a job names: they are in the job file's folder; of a job on
// standard input, in the current one.
func picturesBeside(jobFile string) jobfile.Pictures {
	folder := filepath.Dir(jobFile) // "." of "-"
	return func(name string) (*picture.Picture, error) {
		missing := "put it beside the job file, or take this line out"
		if near := nearPicture(folder, name); near != "" {
			missing = "write " + words.Quote(near) + ", which is beside it"
		}
		file, err := readFile(filepath.Join(folder, name), picture.MostBytes+1, missing, "write the name of a picture")
		if err != nil {
			return nil, err
		}
		return picture.Read(name, file)
	}
}

// nearPicture finds, where there is no file of a name in a folder, a picture in it that was probably
// meant: with another ending, or with a slip in the name; "" where there is none.
func nearPicture(folder, name string) string {
	dir, err := os.Open(folder)
	if err != nil {
		return ""
	}
	defer dir.Close()
	found, _ := dir.ReadDir(mostBeside)
	var names, stems []string
	for _, f := range found {
		if n := f.Name(); !f.IsDir() && n != name && picture.CheckName(n) == nil {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	stem := func(n string) string { return strings.TrimSuffix(n, filepath.Ext(n)) }
	for _, n := range names {
		stems = append(stems, stem(n))
	}
	near, ok := words.Nearest(stem(name), stems)
	if !ok {
		return ""
	}
	return names[slices.Index(stems, near)]
}
