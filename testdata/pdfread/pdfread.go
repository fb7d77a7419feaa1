// Package pdfread reads back, in tests, what a PDF file shows: with pdfium, a PDF engine that
// shares no code with the program that wrote the file. Everything comes out in millimetres from
// the page's top left corner, x to the right, y down.
package pdfread

import (
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"underlay/geometry"
)

// engine is pdfium. It starts once a test program, from machine code that the first program to
// need it leaves for the others: to compile it takes several seconds.
var engine = sync.OnceValues(func() (pdfium.Pdfium, error) {
	config := webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1}
	if cache, err := compiled(); err == nil {
		config.RuntimeConfig = wazero.NewRuntimeConfig().
			WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling).
			WithCompilationCache(cache)
	}
	pool, err := webassembly.Init(config)
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(0)
})

// compiled is where machine code is kept, in the user's cache folder; wazero keeps that of its
// versions apart. An error where there is no such folder, as in a bare container.
func compiled() (wazero.CompilationCache, error) {
	dir, err := os.UserCacheDir()
	if err != nil {
		return nil, err
	}
	return wazero.NewCompilationCacheWithDir(filepath.Join(dir, "underlay-tests"))
}

// must ends the test where pdfium fails.
func must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatalf("pdfium: %v", err)
		}
		return v
	}
}

// Doc is an open PDF file.
type Doc struct {
	t   testing.TB
	pdf pdfium.Pdfium
	doc references.FPDF_DOCUMENT
	// userUnit tells the user unit of a page, which pdfium knows nothing of.
	userUnit func(page int) float64
}

// Open opens a PDF file until the test ends. A file pdfium cannot read ends it at once.
func Open(t testing.TB, pdf []byte) *Doc {
	t.Helper()
	d := &Doc{t: t, pdf: must[pdfium.Pdfium](t)(engine()), userUnit: userUnits(t, pdf)}
	d.doc = must[*responses.OpenDocument](t)(d.pdf.OpenDocument(&requests.OpenDocument{File: &pdf})).Document
	t.Cleanup(func() { d.pdf.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: d.doc}) })
	return d
}

// Pages returns the pages in their order.
func (d *Doc) Pages() []*Page {
	d.t.Helper()
	n := must[*responses.FPDF_GetPageCount](d.t)(
		d.pdf.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: d.doc})).PageCount
	pages := make([]*Page, n)
	for i := range pages {
		pages[i] = &Page{doc: d, index: i}
	}
	return pages
}

// Meta returns an entry of the document information: "Title", "Producer", "CreationDate" and
// so on; "" where there is none.
func (d *Doc) Meta(tag string) string {
	d.t.Helper()
	return must[*responses.FPDF_GetMetaText](d.t)(
		d.pdf.FPDF_GetMetaText(&requests.FPDF_GetMetaText{Document: d.doc, Tag: tag})).Value
}

// ScalesToFit tells whether a print dialog is to begin with the pages scaled to the paper:
// false where the viewer preferences say /PrintScaling /None.
func (d *Doc) ScalesToFit() bool {
	d.t.Helper()
	return must[*responses.FPDF_VIEWERREF_GetPrintScaling](d.t)(
		d.pdf.FPDF_VIEWERREF_GetPrintScaling(&requests.FPDF_VIEWERREF_GetPrintScaling{Document: d.doc})).PreferPrintScaling
}

// Bookmark is a line of the list of contents. Page is the index of the page it leads to, Down
// how far below the top of that page.
type Bookmark struct {
	Title    string
	Page     int
	Down     geometry.Length
	Children []Bookmark
}

// Bookmarks returns the list of contents.
func (d *Doc) Bookmarks() []Bookmark {
	d.t.Helper()
	list := must[*responses.GetBookmarks](d.t)(d.pdf.GetBookmarks(&requests.GetBookmarks{Document: d.doc})).Bookmarks
	return d.bookmarks(list)
}

func (d *Doc) bookmarks(list []responses.GetBookmarksBookmark) []Bookmark {
	var out []Bookmark
	for _, b := range list {
		m := Bookmark{Title: b.Title, Page: -1, Children: d.bookmarks(b.Children)}
		if b.DestInfo != nil {
			m.Page = b.DestInfo.PageIndex
			at := must[*responses.FPDFDest_GetLocationInPage](d.t)(
				d.pdf.FPDFDest_GetLocationInPage(&requests.FPDFDest_GetLocationInPage{Dest: b.DestInfo.Reference}))
			if p := (Page{doc: d, index: m.Page}); at.Y != nil {
				m.Down = p.SizeMM().H - p.unit()*geometry.Length(*at.Y)
			}
		}
		out = append(out, m)
	}
	return out
}

// Attachment is a file carried inside.
type Attachment struct {
	Name    string
	Content []byte
}

// Attachments returns the files carried inside.
func (d *Doc) Attachments() []Attachment {
	d.t.Helper()
	n := must[*responses.FPDFDoc_GetAttachmentCount](d.t)(
		d.pdf.FPDFDoc_GetAttachmentCount(&requests.FPDFDoc_GetAttachmentCount{Document: d.doc})).AttachmentCount
	var out []Attachment
	for i := range n {
		a := must[*responses.FPDFDoc_GetAttachment](d.t)(
			d.pdf.FPDFDoc_GetAttachment(&requests.FPDFDoc_GetAttachment{Document: d.doc, Index: i})).Attachment
		out = append(out, Attachment{
			Name: must[*responses.FPDFAttachment_GetName](d.t)(
				d.pdf.FPDFAttachment_GetName(&requests.FPDFAttachment_GetName{Attachment: a})).Name,
			Content: must[*responses.FPDFAttachment_GetFile](d.t)(
				d.pdf.FPDFAttachment_GetFile(&requests.FPDFAttachment_GetFile{Attachment: a})).Contents,
		})
	}
	return out
}
