package main

import (
	"os"
	"path/filepath"
	"strings"

	"underlay/template/words"
)

// mostBeside is how many files of a folder are looked at for a name.
const mostBeside = 10_000

// nearFile finds, where there is no file of a name, one beside it that was probably meant: with an
// ending put on or left out, as some editors and desktops do, or with a slip in the name.
func nearFile(name string) string {
	if _, err := os.Stat(name); err == nil {
		return ""
	}
	folder, base := filepath.Split(name)
	for _, other := range []string{base + ".txt", base + ".toml", strings.TrimSuffix(base, ".txt"), strings.TrimSuffix(base, ".toml")} {
		if info, err := os.Stat(folder + other); err == nil && info.Mode().IsRegular() && other != "" {
			return folder + other
		}
	}
	dir, err := os.Open(filepath.Clean(folder + "."))
	if err != nil {
		return ""
	}
	defer dir.Close()
	found, _ := dir.ReadDir(mostBeside)
	var jobs []string
	for _, f := range found {
		if ending := filepath.Ext(f.Name()); !f.IsDir() && (ending == ".toml" || ending == ".txt") {
			jobs = append(jobs, f.Name())
		}
	}
	if near, ok := words.Nearest(base, jobs); ok {
		return folder + near
	}
	return ""
}
