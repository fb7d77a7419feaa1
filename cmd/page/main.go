// Page makes underlay for people who have no terminal: one HTML file that does the whole job in any
// browser, without a network, a server or an installation.
//
//	go run ./cmd/page -o underlay.html
//
// It builds the worker in cmd/page/worker for WebAssembly and packs it, the page of cmd/page/web and
// Go's own glue into one file. The same source and the same Go give the same bytes.
package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"
)

func main() {
	out := pflag.StringP("output", "o", "underlay.html", "the file to write")
	pflag.Parse()
	if pflag.NArg() > 0 {
		fmt.Fprintf(os.Stderr, "page takes no %q; write go run ./cmd/page -o FILE.html\n", pflag.Arg(0))
		os.Exit(2)
	}
	if err := write(*out); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Fprintf(os.Stderr, "wrote %s; open it in a browser\n", *out)
}

// write makes the page beside its place and renames it into it, so that a page there before is
// whole at any time.
func write(name string) error {
	work, err := os.MkdirTemp("", "underlay-page")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	program, err := buildWorker(work)
	if err != nil {
		return err
	}
	page, err := assemble(program)
	if err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".underlay-page-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // fails once it is renamed
	if _, err := f.Write(page); err != nil {
		f.Close()
		return err
	}
	if err := f.Chmod(0o644); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), name)
}
