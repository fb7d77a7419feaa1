// Package notices gathers the licences of what a program is built from, which go wherever it goes.
package notices

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// Of returns the licences of Go and of the modules that a program of this module is built from, with
// settings of Go's such as GOOS=js on top of those in force. It runs go in the current folder.
func Of(program string, settings ...string) ([]byte, error) {
	const format = `{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{"\t"}}{{.Dir}}{{end}}{{end}}`
	list := exec.Command("go", "list", "-deps", "-f", format, program)
	list.Env = append(os.Environ(), settings...)
	listed, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("go env: %w", err)
	}
	modules := strings.Split(strings.TrimSpace(string(listed)), "\n")
	slices.Sort(modules)
	modules = append([]string{"Go and its standard library\t" + strings.TrimSpace(string(root))}, slices.Compact(modules)...)
	var b bytes.Buffer
	for _, m := range modules {
		name, dir, found := strings.Cut(m, "\t")
		if !found {
			continue
		}
		files, err := filepath.Glob(filepath.Join(dir, "LICEN[CS]E*"))
		if err != nil || len(files) == 0 {
			return nil, fmt.Errorf("%s has no licence in %s", name, dir)
		}
		text, err := os.ReadFile(files[0])
		if err != nil {
			return nil, err
		}
		text = bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))
		fmt.Fprintf(&b, "%s\n%s\n\n%s\n\n", name, strings.Repeat("-", len(name)), bytes.TrimSpace(text))
	}
	return b.Bytes(), nil
}
