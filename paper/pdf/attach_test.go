package pdf

import (
	"bytes"
	"crypto/md5"
	"encoding/hex"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/pdfcpu/pdfcpu/pkg/api"

	"underlay/testdata/pdfread"
)

// carried are files as a job carries them, in an order that is not that of their names.
func carried() []Attachment {
	noise := make([]byte, 40_000) // packed it would grow
	for i := range noise {
		noise[i] = byte(i*i>>3 ^ i*7)
	}
	return []Attachment{
		{"wave.jpg", "image/jpeg", append([]byte("\xff\xd8\xff"), noise...)},
		{"job.toml", "application/toml", []byte("title = \"Reading nook\"\n")},
		{"Ågren.png", "image/png", []byte("\x89PNG\r\n\x1a\nendstream\nendobj\n")},
		{"Fern.png", "image/png", noise[:100]},
		{"fern.png", "image/png", noise[:200]},
		{"шишка.jpeg", "image/jpeg", noise[:300]},
		{"Ωgren.png", "image/png", noise[:400]}, // in ASCII called as another
		{"(acorn) 2.png", "image/png", noise[:1]},
	}
}

// Files that a PDF carries come back whole, by name; other engines have the same, in the order of
// their names (ISO 32000-1, 7.9.6).
func TestAttachmentsComeBack(t *testing.T) {
	files := carried()
	pdf := write(t, Document{Attachments: files, Parts: onlyPage})
	in, err := Open(bytes.NewReader(pdf), int64(len(pdf)))
	if err != nil {
		t.Fatal(err)
	}
	var want []pdfread.Attachment
	for _, a := range files {
		got, err := in.File(a.Name, most)
		if d := cmp.Diff(a, got); err != nil || d != "" {
			t.Errorf("%s: %v %s", a.Name, err, d)
		}
		want = append(want, pdfread.Attachment{Name: a.Name, Content: a.Content})
	}
	listed := pdfread.Open(t, pdf).Attachments()
	byName := cmpopts.SortSlices(func(a, b pdfread.Attachment) bool { return a.Name < b.Name })
	if d := cmp.Diff(want, listed, byName); d != "" {
		t.Errorf("pdfium: %s", d)
	}
	if d := cmp.Diff(in.Names(), namesOf(listed)); d != "" {
		t.Errorf("pdfium lists them in another order: %s", d)
	}
	if !slices.IsSortedFunc(in.Names(), func(a, b string) int { return strings.Compare(textString(a), textString(b)) }) {
		t.Errorf("not in the order of their names: %q", in.Names())
	}
	all, err := api.ExtractAttachmentsRaw(bytes.NewReader(pdf), "", nil, pdfread.Config())
	if err != nil || len(all) != len(files) {
		t.Fatalf("pdfcpu has %d files, %v", len(all), err)
	}
	for _, a := range all {
		i := slices.IndexFunc(files, func(b Attachment) bool { return a.FileName == b.Name })
		if i < 0 {
			t.Errorf("pdfcpu has a file %s", a.FileName)
			continue
		}
		if content, err := io.ReadAll(a); err != nil || !bytes.Equal(content, files[i].Content) {
			t.Errorf("pdfcpu: %s has other bytes, %v", a.FileName, err)
		}
	}
}

func namesOf(files []pdfread.Attachment) []string {
	var names []string
	for _, f := range files {
		names = append(names, f.Name)
	}
	return names
}

// A picture is packed as it comes: it takes no more room inside than outside, and says what it is
// (ISO 32000-1, Tables 45 and 46).
func TestPicturesAreCarriedAsTheyAre(t *testing.T) {
	picture := carried()[0]
	pdf := write(t, Document{Attachments: []Attachment{picture}, Parts: onlyPage})
	if !bytes.Contains(pdf, picture.Content) {
		t.Error("the picture's bytes do not stand in the file as they are")
	}
	sum := md5.Sum(picture.Content)
	for _, want := range []string{"/Subtype /image#2Fjpeg", "/Size 40003", hex.EncodeToString(sum[:])} {
		if !bytes.Contains(pdf, []byte(want)) {
			t.Errorf("there is no %s", want)
		}
	}
	// One byte of it changed, and it is no longer what was put in.
	at := bytes.Index(pdf, picture.Content) + 1000
	pdf[at] ^= 1
	if a, err := recoverFirst(pdf); err != errBroken {
		t.Errorf("a picture that was changed comes back: %d bytes, %v", len(a.Content), err)
	}
}

// A file of more bytes than may come out is refused, however it is packed.
func TestFilesTooLarge(t *testing.T) {
	for _, kind := range []string{"image/png", ""} {
		pdf := write(t, Document{Attachments: []Attachment{{"fern.png", kind, make([]byte, 5000)}}, Parts: onlyPage})
		in, err := Open(bytes.NewReader(pdf), int64(len(pdf)))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := in.File("fern.png", 4999); err != errTooBig {
			t.Errorf("%q: %v", kind, err)
		}
		if a, err := in.File("fern.png", 5000); err != nil || len(a.Content) != 5000 {
			t.Errorf("%q: %v", kind, err)
		}
	}
}

// Whatever folders the name of a file inside leads through, it comes out without them.
func TestNamesHaveNoFolders(t *testing.T) {
	for name, want := range map[string]string{
		"../../fern.png": "fern.png", `..\fern.png`: "fern.png", "/etc/fern.png": "fern.png",
		`C:\nook\fern.png`: "fern.png", "a/b\\c/fern.png": "fern.png", "..": "..", "/": "",
	} {
		pdf := write(t, Document{Attachments: []Attachment{{name, "image/png", []byte("x")}}, Parts: onlyPage})
		in, err := Open(bytes.NewReader(pdf), int64(len(pdf)))
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff([]string{want}, in.Names()); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}
