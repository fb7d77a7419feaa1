package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"underlay/cmd/page/notices"
)

// program is the worker, built, and the glue that runs it in a browser.
type program struct {
	wasm    []byte
	glue    []byte // wasm_exec.js of the same Go
	notices []byte // the licences of what it is built from
}

// buildWorker builds the worker for WebAssembly; work is an empty folder to build in. The settings of
// whoever builds are left out, so that the bytes are the same everywhere.
func buildWorker(work string) (program, error) {
	name := filepath.Join(work, "underlay.wasm")
	const worker = "underlay/cmd/page/worker"
	settings := []string{"GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=", "GOWASM=", "GOEXPERIMENT="}
	build := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid=", "-o", name)
	build.Args = append(append(build.Args, inlining()...), worker)
	build.Env = append(os.Environ(), settings...)
	if said, err := build.CombinedOutput(); err != nil {
		return program{}, fmt.Errorf("building the worker: %w\n%s", err, bytes.TrimSpace(said))
	}
	wasm, err := os.ReadFile(name)
	if err != nil {
		return program{}, err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return program{}, fmt.Errorf("go env: %w", err)
	}
	glue, err := os.ReadFile(filepath.Join(string(bytes.TrimSpace(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return program{}, err
	}
	licences, err := notices.Of(worker, settings...)
	return program{wasm, glue, licences}, err
}

// inlining keeps the file small: only where most of the time goes are functions copied into those that
// call them. Without that everywhere the file is a tenth larger, and draws a PDF a sixth sooner.
func inlining() []string {
	flags := []string{"-gcflags=all=-l"}
	for _, hot := range []string{
		"underlay/geometry", "underlay/template/plan", "underlay/template/look", "underlay/template/motif", "underlay/paper", "underlay/paper/svg",
		"runtime", "internal/...", "math", "slices", "strconv", "bytes",
	} {
		flags = append(flags, "-gcflags="+hot+"=")
	}
	return flags
}
