package pdf

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

var onlyPage = pages(paper.Page{Size: geometry.Size{W: 50, H: 50}})

func TestAttachmentComesBack(t *testing.T) {
	for _, a := range []Attachment{
		{"nook.toml", []byte("title = \"Reading nook\"\n")},
		{"empty.toml", []byte{}},
		{"Lesekissen №1 🌿 (2).toml", []byte("\xEF\xBB\xBFa = 1\r\n%%EOF\nendstream endobj\nstartxref 7\n")},
		{"large.toml", bytes.Repeat([]byte("fern pebble wave acorn\n"), 5_000)},
	} {
		pdf := write(t, Document{Attachment: a, Parts: onlyPage})
		got, err := Recover(pdf)
		if err != nil {
			t.Errorf("%s: %v", a.Name, err)
		} else if d := cmp.Diff(a, got); d != "" {
			t.Errorf("%s: %s", a.Name, d)
		}
		if d := cmp.Diff([]pdfread.Attachment{{Name: a.Name, Content: a.Content}}, pdfread.Open(t, pdf).Attachments()); d != "" && len(a.Content) > 0 {
			t.Errorf("pdfium: %s", d)
		}
		list, err := api.ExtractAttachmentsRaw(bytes.NewReader(pdf), "", nil, pdfread.Config())
		if err != nil || len(list) != 1 {
			t.Errorf("pdfcpu: %v, %v", list, err)
			continue
		}
		content, err := io.ReadAll(list[0])
		if err != nil || !bytes.Equal(content, a.Content) || list[0].FileName != a.Name {
			t.Errorf("pdfcpu has %s with %d bytes, want %s with %d", list[0].FileName, len(content), a.Name, len(a.Content))
		}
	}
}

func TestRecoverSaysWhatIsWrong(t *testing.T) {
	job := Attachment{"nook.toml", []byte("title = \"Reading nook\"\n")}
	pdf := write(t, Document{Attachment: job, Parts: onlyPage})
	resaved := func(change func(*model.Configuration), save func(rs io.ReadSeeker, w io.Writer, conf *model.Configuration) error) []byte {
		conf := pdfread.Config()
		change(conf)
		var out bytes.Buffer
		if err := save(bytes.NewReader(pdf), &out, conf); err != nil {
			t.Fatal(err)
		}
		return out.Bytes()
	}
	plain := func(c *model.Configuration) { c.WriteObjectStream, c.WriteXRefStream = false, false }
	streams := func(*model.Configuration) {}
	locked := func(c *model.Configuration) { plain(c); c.UserPW, c.OwnerPW = "fern", "acorn" }
	at := bytes.LastIndex(pdf, []byte("/EmbeddedFile\n"))

	for name, c := range map[string]struct {
		pdf  []byte
		want string // "": it comes back
	}{
		"as written":         {pdf, ""},
		"saved again":        {resaved(plain, api.Optimize), ""},
		"saved with streams": {resaved(streams, api.Optimize), "saved again by another program"},
		"locked":             {resaved(locked, api.Encrypt), "password"},
		"empty":              {nil, "not a PDF"},
		"a job file":         {job.Content, "not a PDF"},
		"half":               {pdf[:len(pdf)/2], "cut off"},
		"only the beginning": {pdf[:9], "cut off"},
		"without its end":    {pdf[:len(pdf)-8], "cut off"},
		"without a job":      {write(t, Document{Parts: onlyPage}), "carries no file"},
		"shifted":            {append([]byte("%PDF-1.7\n"), pdf...), "cut off or damaged"},
		"damaged stream":     {bytes.Replace(pdf, pdf[at+120:at+130], []byte("0123456789"), 1), "cut off or damaged"},
		"too large inside": {write(t, Document{Attachment: Attachment{"a.toml", make([]byte, maxContent+1)}, Parts: onlyPage}),
			"larger than 2 MiB"},
	} {
		got, err := Recover(c.pdf)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", name, err)
		case c.want == "":
			if d := cmp.Diff(job, got); d != "" {
				t.Errorf("%s: %s", name, d)
			}
		case err == nil || !strings.Contains(err.Error(), c.want):
			t.Errorf("%s: got %v, want %q", name, err, c.want)
		}
	}
}

// Whatever is missing at the end, what comes back is the whole file or an error.
func TestRecoverFromCutOffFiles(t *testing.T) {
	job := Attachment{"nook.toml", []byte("title = \"Reading nook\"\n")}
	pdf := write(t, Document{Attachment: job, Parts: onlyPage})
	for n := range pdf {
		if got, err := Recover(pdf[:n]); err == nil && !cmp.Equal(got, job) {
			t.Fatalf("the first %d bytes gave %v", n, got)
		}
	}
}

// Tables that refer to each other in a ring, and the like, come to an end.
func TestRecoverFromPitfalls(t *testing.T) {
	head := "%PDF-1.4\n"
	table := func(trailer string) string {
		return fmt.Sprintf("%sxref\n0 1\n0000000000 65535 f \ntrailer\n<<%s>>\nstartxref\n%d\n%%%%EOF\n", head, trailer, len(head))
	}
	for name, pdf := range map[string]string{
		"ring":            table("/Prev 9"),
		"far away":        table("/Prev 999999999999"),
		"before":          table("/Prev -5"),
		"no root":         table(""),
		"root missing":    table("/Root 7 0 R"),
		"root is free":    table("/Root 0 0 R"),
		"many entries":    head + "xref\n0 99999999999\n\nstartxref\n9\n%%EOF\n",
		"trailer missing": head + "xref\n0 0\nstartxref\n9\n%%EOF\n",
	} {
		if a, err := Recover([]byte(pdf)); err == nil {
			t.Errorf("%s gave %v", name, a)
		}
	}
}

// handmade returns a small PDF file, spelled unlike ours, that carries the file a: its name
// tree has branches (ISO 32000-1, 7.9.6), its stream is not compressed.
func handmade() []byte {
	out := []byte("%PDF-1.4\n")
	table := []byte("xref\r\n0 1\r\n0000000000 65535 f\r\n1 5\r\n")
	for i, o := range []string{
		"<</Names<</EmbeddedFiles 5 0 R>>>>",
		"<</Limits[(a)(a)]/Names[(a)3 0 R]>>",
		"<</Type/F/F(dir/a\\))/EF<</F 4 0 R>>>>",
		"<</Length 6 % no filter\n>>stream\r\nhi\n\nho\r\nendstream",
		"<</Kids[2 0 R]>>",
	} {
		table = fmt.Appendf(table, "%010d 00000 n\r\n", len(out))
		out = fmt.Appendf(out, "%d 0 obj%s\rendobj\n", i+1, o)
	}
	start := len(out)
	return fmt.Appendf(append(out, table...), "trailer<</Size 6/Root 1 0 R>>startxref %d\r%%%%EOF", start)
}

func TestRecoverFromAnothersFile(t *testing.T) {
	got, err := Recover(handmade())
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(Attachment{"a)", []byte("hi\n\nho")}, got); d != "" {
		t.Error(d)
	}
}

func FuzzRecover(f *testing.F) {
	var out bytes.Buffer
	if err := Write(&out, Document{Attachment: Attachment{"a.toml", []byte("a = 1\n")}, Parts: onlyPage}); err != nil {
		f.Fatal(err)
	}
	f.Add(out.Bytes())
	f.Add(handmade())
	f.Fuzz(func(t *testing.T, pdf []byte) {
		a, err := Recover(pdf)
		if err == nil && len(a.Content) > maxContent {
			t.Errorf("%d bytes came out", len(a.Content))
		}
	})
}
