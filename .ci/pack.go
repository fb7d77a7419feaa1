// Pack zips a built underlay with what goes along: a page to read first, the licence, and the
// notices of the modules it is built from. It prints the zip's SHA-256 sum as sha256sum does.
//
//	pack FILE.zip PROGRAM
//
// It runs in the folder of the module, with GOOS and GOARCH as the program was built for.
package main

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"log"
	"os"
	"path/filepath"
	"strings"
	"time"

	"underlay/cmd/page/notices"
)

func main() {
	log.SetFlags(0)
	if len(os.Args) != 3 {
		log.Fatal("usage: pack FILE.zip PROGRAM")
	}
	if err := pack(os.Args[1], os.Args[2]); err != nil {
		log.Fatal(err)
	}
}

func pack(name, program string) error {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) { return flate.NewWriter(w, flate.BestCompression) })
	notices, err := notices.Of("./cmd/underlay")
	if err != nil {
		return err
	}
	folder := strings.TrimSuffix(filepath.Base(name), ".zip")
	for _, f := range []struct {
		name, from string
		content    []byte // read from a file where nil
		mode       fs.FileMode
	}{
		{"read-me.txt", ".ci/read-me.txt", nil, 0o644},
		{filepath.Base(program), program, nil, 0o755},
		{"LICENSE", "LICENSE", nil, 0o644},
		{"NOTICES.txt", "", notices, 0o644},
	} {
		if f.content == nil {
			if f.content, err = os.ReadFile(f.from); err != nil {
				return err
			}
		}
		if os.Getenv("GOOS") == "windows" && f.mode == 0o644 {
			f.content = bytes.ReplaceAll(f.content, []byte("\n"), []byte("\r\n"))
		}
		// The first time a zip can name: that of the build would make other bytes every time.
		h := &zip.FileHeader{Name: folder + "/" + f.name, Method: zip.Deflate, Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)}
		h.SetMode(f.mode)
		w, err := z.CreateHeader(h)
		if err != nil {
			return err
		}
		if _, err := w.Write(f.content); err != nil {
			return err
		}
	}
	if err := z.Close(); err != nil {
		return err
	}
	fmt.Printf("%x  %s\n", sha256.Sum256(out.Bytes()), filepath.Base(name))
	return os.WriteFile(name, out.Bytes(), 0o644)
}
