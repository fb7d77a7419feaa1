package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"encoding/ascii85"
	"encoding/base64"
	"fmt"
	"io/fs"
	"strings"
)

// web has the page: its HTML, and the style sheets, script modules and worker script that it is
// joined from.
//
//go:embed web
var web embed.FS

// assemble puts the page together: everything within one file, and a policy (Content Security Policy
// Level 3, W3C) that lets the browser run just that and ask for nothing.
func assemble(p program) ([]byte, error) {
	style, err := joinStyles()
	if err != nil {
		return nil, err
	}
	script, err := joinModules("page")
	if err != nil {
		return nil, err
	}
	worker, err := web.ReadFile("web/worker.js")
	if err != nil {
		return nil, err
	}
	packed, err := pack(p.wasm)
	if err != nil {
		return nil, err
	}
	page, err := web.ReadFile("web/page.html")
	if err != nil {
		return nil, err
	}
	policy := strings.Join([]string{
		"default-src 'none'",
		"script-src '" + hash(script) + "' 'wasm-unsafe-eval' blob:",
		"worker-src blob:",
		"style-src '" + hash(style) + "'",
		"img-src data: blob:",
		"base-uri 'none'",
		"form-action 'none'",
	}, "; ")
	for _, put := range []struct{ mark, text string }{
		{"{{policy}}", policy},
		{"{{style}}", style},
		{"{{script}}", script},
		{"{{notices}}", string(p.notices)},
		{"{{worker}}", string(p.glue) + "\n" + string(worker)},
		{"{{program}}", packed},
	} {
		if strings.Contains(strings.ToLower(put.text), "</script") || strings.Contains(strings.ToLower(put.text), "<!--") {
			return nil, fmt.Errorf("%s would end the script that it stands in", put.mark)
		}
		if n := bytes.Count(page, []byte(put.mark)); n != 1 {
			return nil, fmt.Errorf("page.html has %s %d times; once is needed", put.mark, n)
		}
		page = bytes.Replace(page, []byte(put.mark), []byte(put.text), 1)
	}
	return page, nil
}

// hash returns what a policy calls an inline script or style sheet.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// pack makes a program small enough to carry in a page's text: gzip (RFC 1952), five letters for four
// bytes (the Ascii85 of package ascii85), those that mean something in HTML changed for others.
func pack(wasm []byte) (string, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err := z.Write(wasm); err != nil {
		return "", err
	}
	if err := z.Close(); err != nil {
		return "", err
	}
	letters := make([]byte, ascii85.MaxEncodedLen(b.Len()))
	letters = letters[:ascii85.Encode(letters, b.Bytes())]
	return strings.NewReplacer("<", "v", "&", "w", `\`, "x").Replace(string(letters)), nil
}

// joinStyles returns the style sheets, one after the other in the order of their names.
func joinStyles() (string, error) {
	files, err := fs.Glob(web, "web/style/*.css")
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for _, name := range files {
		text, err := web.ReadFile(name)
		if err != nil {
			return "", err
		}
		b.Write(text)
	}
	return b.String(), nil
}
