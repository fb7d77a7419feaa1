// Package readback draws papers for tests and reads them back with pdfium: what stands on a page,
// and what a sheet at true size shows in the frame of the layout it is part of. All is in
// millimetres, pages from their top left corner. It knows nothing of jobs and plans, so that the
// tests of every room can use it.
package readback

import (
	"bytes"
	"slices"
	"sync"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/testdata/pdfread"
)

// Off is how far a mark may be from its place.
const Off = 0.01 * geometry.Millimetre

// Page is what stands on a page. Paths and Texts are read when first asked for: to read the
// paths of a page takes far longer than the rest.
type Page struct {
	Size  geometry.Size
	Paths func() []pdfread.Path // in the order of painting
	Texts func() []pdfread.Text
}

// Pages reads every page of a file.
func Pages(file *pdfread.Doc) []*Page {
	var all []*Page
	for _, p := range file.Pages() {
		all = append(all, &Page{p.SizeMM(), sync.OnceValue(p.Paths), sync.OnceValue(p.Texts)})
	}
	return all
}

// Open writes a document and opens it with pdfium.
func Open(t testing.TB, doc pdf.Document) (file []byte, read *pdfread.Doc) {
	t.Helper()
	var out bytes.Buffer
	if err := pdf.Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	return out.Bytes(), pdfread.Open(t, out.Bytes())
}

// Drawn draws pages as a document of their own and reads them.
func Drawn(t testing.TB, pages []paper.Page) []*Page {
	t.Helper()
	_, file := Open(t, pdf.Document{Parts: []paper.Part{{Name: "papers", Pages: pages}}})
	return Pages(file)
}

// Text returns all that is written on the page, a string after the other.
func (p *Page) Text() string {
	var all []byte
	for _, w := range p.Texts() {
		all = append(append(all, w.Text...), ' ')
	}
	return string(all)
}

// part returns what of a page lies in a part of it, where strips share a page.
func (p *Page) part(r geometry.Rect) *Page {
	r = r.Grow(Off)
	return &Page{p.Size,
		sync.OnceValue(func() []pdfread.Path {
			return slices.DeleteFunc(slices.Clone(p.Paths()), func(q pdfread.Path) bool { return !r.Holds(q.Lines.Bounds()) })
		}),
		sync.OnceValue(func() []pdfread.Text {
			return slices.DeleteFunc(slices.Clone(p.Texts()), func(w pdfread.Text) bool { return !r.Grow(w.Size / 64).Holds(w.Box) })
		}),
	}
}
